"""Due dates as an iCalendar file: read by somebody else's reader, and held to RFC 5545 line by line."""

import re
from dataclasses import replace
from datetime import date, timedelta

import demo
from outside_readers import outside
from register_samples import DAY

from signage.control.due_dates import calendar_of, due_dates
from signage.model.copies import Copy, Event, EventKind, Spot, states_of
from signage.model.library import PolicyValue

vobject = outside("vobject")


def _library():
    library = demo.project().library
    days = PolicyValue(id="refresher-days", value=90, source="local", owner="trainer")
    protocols = dict(library.protocols)
    long = replace(
        protocols["clean-hands"], title="Hände waschen; gründlich, immer — " + "日本語のとても長い名前" * 9
    )
    return replace(
        library, policy={**library.policy, days.id: days}, protocols={**protocols, "clean-hands": long}
    )


def _states():
    copies = [
        Copy(n, "poster rub", "clean-hands", "en", "A-B", "h", "none", DAY, "icn") for n in ("LB-1", "LB-2")
    ]
    events = [
        Event(1, "LB-1", EventKind.MOUNTED, DAY, "icn", "", Spot("lantern-bay", "s1")),
        Event(2, "LB-2", EventKind.MOUNTED, DAY, "icn", "", Spot(learner="L07")),
    ]
    return states_of(copies, events)


def test_another_reader_finds_every_date_with_its_words():
    library = _library()
    dates = due_dates(library, _states())
    read = vobject.readOne(calendar_of(library, dates, DAY).decode())
    found = {(event.dtstart.value, event.dtend.value, event.summary.value) for event in read.vevent_list}
    assert found == {(due.on, due.on + timedelta(days=1), due.what) for due in dates}
    assert {due.what for due in dates} >= {
        "Audit round: Lantern Bay Isolation Area", "Refresher P3: learner L07",
        f"Review P3 {library.protocols['clean-hands'].title} (infection-control nurse)",
    }  # fmt: skip
    assert {due.on for due in dates if due.what.startswith("Refresher")} == {date(2027, 2, 24)}


def test_the_file_keeps_to_the_rules_of_rfc_5545():
    data = calendar_of(_library(), due_dates(_library(), _states()), DAY)
    assert data.endswith(b"\r\n")
    lines = data.split(b"\r\n")[:-1]
    assert not [line for line in lines if b"\n" in line or b"\r" in line]  # 3.1: lines end with CRLF
    assert max(map(len, lines)) <= 75  # 3.1: lines of at most 75 octets
    unfolded = re.sub(rb"\r\n[ \t]", b"", data).decode().split("\r\n")  # 3.1: each unfolds to whole letters
    assert unfolded[0] == "BEGIN:VCALENDAR"
    assert [line for line in unfolded if line.startswith(("PRODID:", "VERSION:"))] == [
        "VERSION:2.0",
        "PRODID:-//signage//review dates//EN",
    ]  # fmt: skip  (3.6: both once)
    events = "\n".join(unfolded).split("BEGIN:VEVENT")[1:]
    for event in events:
        for name in ("UID", "DTSTAMP", "DTSTART;VALUE=DATE", "DTEND;VALUE=DATE", "SUMMARY"):
            assert len(re.findall(rf"^{name}:", event, re.MULTILINE)) == 1, name  # 3.6.1
        assert re.search(r"^DTSTAMP:\d{8}T\d{6}Z$", event, re.MULTILINE)  # 3.8.7.2: in UTC
    assert "Hände waschen\\; gründlich\\, immer" in "\n".join(unfolded)  # 3.3.11: escaped text
    uids = re.findall(r"^UID:(.+)$", "\n".join(unfolded), re.MULTILINE)
    assert len(set(uids)) == len(events)


def test_an_event_keeps_its_name_when_its_day_moves_and_the_same_dates_give_the_same_bytes():
    library = demo.project().library
    later = replace(library.protocols["clean-hands"], review_by=date(2028, 1, 1))
    moved = replace(library, protocols={**library.protocols, "clean-hands": later})

    def uid(of):
        events = vobject.readOne(calendar_of(of, due_dates(of, ()), DAY).decode()).vevent_list
        return next(event.uid.value for event in events if event.summary.value.startswith("Review P3"))

    assert uid(library) == uid(moved)
    made = [calendar_of(library, due_dates(library, ()), DAY) for _ in range(2)]
    assert made[0] == made[1]
