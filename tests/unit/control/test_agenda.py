"""What needs whom: each row is where a library stands, and the duty that must come first."""

from dataclasses import replace
from datetime import date, timedelta

from signage.control.agenda import REVIEW_NOTICE, tasks_of
from signage.model.mark import Mark
from signage.model.people import Role
from signage.model.status import (
    FindingCount,
    LanguageStatus,
    LibraryStatus,
    ProtocolStatus,
    SheetStatus,
    WordCount,
)

DAY = date(2026, 11, 26)
CHECKED = WordCount(checked=9)
PEOPLE = {
    "icn": Role(id="icn", initials="IN", writes=("hands",), signs=True),
    "lead": Role(id="lead", initials="WL", signs=True, mounts=True),
    "reader": Role(id="reader", initials="LR", checks=("ar",)),
    "linguist": Role(id="linguist", initials="LL", translates=("ar",)),
}
SIGNED = SheetStatus(
    locale="en", words=CHECKED, mark=Mark.NONE, is_order_signed=True, are_words_signed=True, mounted=3
)
UNSIGNED = SheetStatus(locale="en", words=CHECKED, mark=Mark.DRAFT)


def _status(sheet=SIGNED, words=CHECKED, **fields):
    protocol = ProtocolStatus(
        **{
            "id": "hands", "code": "P3", "title": "Clean hands", "owner": "nurse", "path": "p.yaml",
            "review_by": DAY + timedelta(days=400), "findings": FindingCount(), "sheets": (sheet,),
            **{name: value for name, value in fields.items() if name in ProtocolStatus.__dataclass_fields__},
        }
    )  # fmt: skip
    languages = (
        LanguageStatus(
            tag=sheet.locale, name="n", owner="o", is_in_use=sheet.is_in_use, words=words, path="x.po"
        ),
    )
    more = {name: value for name, value in fields.items() if name in LibraryStatus.__dataclass_fields__}
    return LibraryStatus(
        name="h", source="en", day=DAY, is_demo=False, protocols=(protocol,), languages=languages, **more
    )


def _arabic(words, **fields):
    return SheetStatus(locale="ar", words=words, **{"mark": Mark.DRAFT, **fields})


GAP, UNREAD = WordCount(missing=2, doubtful=1, checked=6), WordCount(translated=4, checked=5)
ROWS = (
    ("nothing waits", _status(), None),
    ("records", _status(fault="a line was changed"), ("icn or lead", "signage approvals list")),
    ("recall", _status(replace(SIGNED, obsolete=2)), ("lead", "signage recall P3")),
    ("stray copies", _status(strays={"old-protocol": 1}), ("lead", "signage recall old-protocol")),
    ("grave", _status(UNSIGNED, findings=FindingCount(s1=1)), ("icn", "signage check")),
    ("overdue", _status(review_by=DAY - timedelta(days=1)), ("icn", "")),
    ("standing", _status(UNSIGNED, findings=FindingCount(s2=1)), ("icn", "signage check")),
    ("warned", _status(findings=FindingCount(s3=1)), None),
    ("gaps", _status(_arabic(GAP, mark=Mark.PROOF), GAP), ("linguist", "")),
    ("progress", _status(_arabic(GAP, mark=Mark.PROOF, is_in_use=False), GAP), ("linguist", "")),
    ("unread", _status(_arabic(UNREAD), UNREAD),
     ("reader", "signage words check-off ar --protocol P3 --as reader")),
    ("unsigned", _status(UNSIGNED), ("lead", "signage approve P3 --as lead")),
    ("words unsigned", _status(_arabic(CHECKED, is_order_signed=True)),
     ("lead", "signage approve P3 --locale ar --as lead")),
    ("changed", _status(replace(SIGNED, mark=Mark.DRAFT, has_changed=True)),
     ("lead", "signage approve P3 --as lead")),
    ("due today", _status(review_by=DAY), ("icn", "")),
    ("due soon", _status(review_by=DAY + REVIEW_NOTICE), ("icn", "")),
    ("not due", _status(review_by=DAY + REVIEW_NOTICE + timedelta(days=1)), None),
    ("unseen", _status(unseen=4), ("icn", "signage check")),
)  # fmt: skip


def test_each_state_asks_the_role_that_may_with_the_command_that_does_it():
    for name, status, wanted in ROWS:
        tasks = tasks_of(status, PEOPLE)
        told = [(task.role, task.command) for task in tasks]
        assert told == ([wanted] if wanted else []), name


def test_what_hangs_wrong_comes_before_what_cannot_be_printed_and_that_before_what_is_due():
    everything = _status(
        replace(_arabic(GAP, mark=Mark.PROOF), obsolete=1, mounted=1),
        GAP,
        unseen=1,
        review_by=DAY,
        findings=FindingCount(s1=1, s2=1),
    )
    whats = [task.what for task in tasks_of(everything, PEOPLE)]
    order = (
        "out and obsolete",
        "that can hurt",
        "to waive",
        "missing",
        "review due",
        "no check",
    )
    places = [next(place for place, what in enumerate(whats) if part in what) for part in order]
    assert places == sorted(places)
    assert len(whats) == len(order)
    assert not any("obsolete" in task.what for task in tasks_of(replace(everything, fault="cut"), PEOPLE))


def test_where_nobody_may_the_owner_is_asked_or_the_file_of_roles_named():
    assert tasks_of(_status(UNSIGNED, findings=FindingCount(s1=1)), {})[0].role == "nurse"
    assert "people.yaml" in tasks_of(_status(UNSIGNED), {})[0].role
