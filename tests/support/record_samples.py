"""Records of sign-offs for tests."""

from datetime import date

from signage.control.approvals import NO_RECORDS, Ledger, with_record
from signage.control.records import BEFORE_ALL, Record, RecordKind

DAY = date(2026, 12, 1)


def record(kind: RecordKind, subject: str = "P1", locale: str | None = None, **changes: object) -> Record:
    """A record that is not chained yet."""
    is_sign_off = kind in {RecordKind.PROTOCOL, RecordKind.LANGUAGE}
    values = {
        "n": 1,
        "previous": BEFORE_ALL,
        "content": "a" * 64 if is_sign_off else None,
        "binds": "b" * 64 if is_sign_off else None,
        "code": "3YH6" if is_sign_off else None,
        "by": "ward-lead",
        "author": "icn" if is_sign_off else None,
        "on": DAY,
        "review_by": date(2027, 5, 31) if is_sign_off else None,
        "reason": None if is_sign_off else "Ünclear: «two» steps",
    }
    return Record(kind=kind, protocol=subject, locale=locale, **{**values, **changes})


def ledger_of(*records: Record) -> Ledger:
    """The records one after another, chained."""
    ledger = NO_RECORDS
    for each in records:
        ledger, _ = with_record(ledger, each)
    return ledger


SAMPLE = ledger_of(
    record(RecordKind.PROTOCOL),
    record(RecordKind.LANGUAGE, locale="en", author=None, waivers=("HH-2 in step rub",)),
    record(RecordKind.LANGUAGE, locale="ar", by="ipc-doctor", author="language-lead"),
    record(RecordKind.WITHDRAWAL),
)
"""Two sign-offs of words after one of steps, and a withdrawal at the end."""
