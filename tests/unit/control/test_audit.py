from dataclasses import replace
from datetime import date

import demo
from register_samples import DAY

from signage.control.audit import AUDIT_COLUMNS, blank_rows, events_of, overdue, read_round
from signage.ground.problem import with_problems
from signage.model.copies import Copy, Event, EventKind, Spot, states_of
from signage.model.copy_number import copy_number
from signage.model.library import PolicyValue
from signage.trials.ward_table import read_ward_table, typed

NUMBERS = [number for number in (copy_number("LB", running) for running in range(1, 12)) if number][:6]
A, B, C, GONE, D, CARD = NUMBERS
TODAY = date(2026, 12, 4)


def _states():
    copies = [
        Copy(n, "poster rub", "clean-hands", "en", "AAAA-BBBB", "h", "none", DAY, "icn") for n in NUMBERS
    ]
    spots = ["s4", "s1", "s2", "s3", "s1", ""]
    events = [
        Event(place, number, EventKind.MOUNTED, DAY, "icn", "", Spot("lantern-bay", slot))
        if slot
        else Event(place, number, EventKind.MOUNTED, DAY, "icn", "", Spot(learner="L1"))
        for place, (number, slot) in enumerate(zip(NUMBERS, spots, strict=True), start=1)
    ]
    events.append(Event(9, GONE, EventKind.REMOVED, DAY, "icn"))
    events.append(Event(10, D, EventKind.AUDITED, date(2026, 12, 1), "icn", "all right"))
    return states_of(copies, events)


def _row(number, answers="yyyyy", **more):
    words = {"y": "yes", "n": "no", " ": ""}
    checks = dict(zip(AUDIT_COLUMNS.needed[1:], (words[sign] for sign in answers), strict=True))
    return typed(number=number, **checks, **more)


def _read(*rows):
    return with_problems(read_round(rows, _states(), DAY))


def test_a_round_is_scored_by_what_is_expected():
    audit, problems = _read(
        _row(A), _row(B, "ynyyn", remark="wet"), _row(C, "n    "), _row(D, "     "),
        _row(GONE, "yyyyy", where="behind the door"),
        _row("", "     ", where="kitchen", remark="home-made"),
    )  # fmt: skip
    assert problems == ()
    assert (len(audit.expected), audit.score) == (5, 0.2)
    assert audit.failures == {"present": 1, "revision": 1, "place": 1}
    assert audit.not_looked_at == (D, CARD)
    assert [(each.number, each.where) for each in audit.strangers] == [
        (GONE, "behind the door"),
        ("", "kitchen"),
    ]
    notes = {event.number: event.note for event in events_of(audit, "icn")}
    assert notes == {
        A: "all right", B: "not revision, not place: wet", C: "not present",
        GONE: "found on a wall (behind the door)",
    }  # fmt: skip


def test_what_contradicts_itself_is_told_and_not_counted():
    for row, words in (
        (_row(A, "n   y"), "is not there, and yet its column 'place' is filled"),
        (_row(A, "yyyy "), "The place is empty"),
        (_row("", "yyyyy"), "nothing says where it hangs"),
        (typed(number=A, present="perhaps"), "The present 'perhaps' is unknown."),
        (_row("LB-9999-Z"), "is no copy number"),
    ):
        _, problems = _read(row)
        assert any(words in problem.message for problem in problems), words
    _, problems = _read(_row(A), _row(A))
    assert "two rows" in problems[0].message


def test_the_blank_table_can_be_filled_and_read(tmp_path):
    states = [state for state in _states() if state.is_out]
    rows = list(blank_rows(states, {("clean-hands", "en"): "AAAA-BBBB"}))
    path = tmp_path / "audit.csv"
    filled = [rows[0], *((*row[:4], "yes", "yes", "yes", "yes", "yes", "") for row in rows[1:])]
    path.write_text("\n".join(";".join(row) for row in filled))
    audit, problems = with_problems(read_round(read_ward_table(path, AUDIT_COLUMNS), _states(), DAY))
    assert problems == ()
    assert audit.score == 1.0


def test_copies_that_nobody_looked_at_are_overdue_in_walking_order():
    library = demo.project().library
    late = overdue(library, _states(), TODAY)
    assert [each.state.copy.number for each in late] == [B, C, A]
    assert late[0].due == date(2026, 12, 3)
    month = PolicyValue(id="audit-days", value=30, source="local", owner="nurse")
    assert overdue(replace(library, policy={**library.policy, month.id: month}), _states(), TODAY) == ()
