"""The file of sign-offs as a chain: each record carries the hash of the line before and one of its own.

What this shows: that nobody has edited, reordered, added or removed a record without making every later
one anew, and, beside a remembered head, that nobody has cut or replaced the end. What it does not show: who
wrote a record. Whoever may write the file may add one in the name of any role; only signatures
(``signatures``) tie a record to a key, and nothing here ties a key to a person.
"""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass, replace

from signage.control.records import BEFORE_ALL, NoRecordError, Record, read_record
from signage.ground.place import NOWHERE, Place

RESTORE = (
    "Restore the file from a copy that is whole, such as the last commit or backup; never mend it by hand. "
    "Until then every sheet is a draft."
)
MOST_BYTES = 64_000_000
"""A hundred thousand records; a larger file is something else. Common practice, no source."""


@dataclass(frozen=True)
class LedgerFault:
    """Why no record counts: what was found, where, and what to do."""

    message: str
    place: Place = NOWHERE
    hint: str = RESTORE

    def __str__(self) -> str:
        """The sentences behind their place."""
        told = f"{self.message} {self.hint}"
        return f"{self.place}: {told}" if self.place.path else told


@dataclass(frozen=True)
class Head:
    """The end of the chain as somebody saw it: how many records, and the own hash of the last."""

    n: int
    hash: str


@dataclass(frozen=True)
class Ledger:
    """All records of a file that is whole, or the fault for which none of them counts."""

    records: tuple[Record, ...] = ()
    fault: LedgerFault | None = None

    @property
    def head(self) -> Head:
        """Its end; an empty file ends at 0."""
        return Head(len(self.records), self.records[-1].own_hash if self.records else BEFORE_ALL)


NO_RECORDS = Ledger()


def read_ledger(data: bytes, path: str) -> Ledger:
    """The records of a file, or the fault at its first bad line; ``path`` is how messages call the file."""
    records: list[Record] = []
    previous = BEFORE_ALL
    *lines, rest = data.split(b"\n")
    for number, line in enumerate(lines, start=1):
        place = Place(path, number, 1)
        try:
            record = read_record(line)
        except NoRecordError as why:
            cure = _line_end_cure(line)
            return Ledger(fault=LedgerFault(f"This line {why}.", place, cure))
        if record.n != number:
            message = f"This line holds record {record.n}; record {number} was wanted."
            return Ledger(fault=LedgerFault(message, place))
        if record.previous != previous:
            message = f"Record {number} does not follow from the line before it: one of the two was changed."
            return Ledger(fault=LedgerFault(message, place))
        records.append(record)
        previous = hashlib.sha256(line).hexdigest()
    if rest:
        place = Place(path, len(lines) + 1, 1)
        return Ledger(fault=LedgerFault("The file ends in the middle of a line.", place))
    return Ledger(tuple(records))


def _line_end_cure(line: bytes) -> str:
    if not line.endswith(b"\r"):
        return RESTORE
    return (
        "The ends of its lines were changed, as some programmes do when they copy text. "
        f"Keep the file as it is (in git: '*.jsonl -text' in .gitattributes). {RESTORE}"
    )


def with_record(ledger: Ledger, record: Record) -> tuple[Ledger, Record]:
    """The ledger with a new record at its end, which is given its number, the hash before and its own.

    Raises ValueError for a ledger with a fault: what follows from nothing proves nothing.
    """
    if ledger.fault is not None:
        raise ValueError(str(ledger.fault))
    added = chained(ledger, record).sealed()
    return Ledger((*ledger.records, added)), added


def chained(ledger: Ledger, record: Record) -> Record:
    """The record as it would follow, to be signed before it is sealed."""
    previous = hashlib.sha256(ledger.records[-1].line()).hexdigest() if ledger.records else BEFORE_ALL
    return replace(record, n=len(ledger.records) + 1, previous=previous)


def written(records: Sequence[Record]) -> bytes:
    """The file that holds these records."""
    return b"".join(record.line() + b"\n" for record in records)


def held_against(ledger: Ledger, seen: Head | None, path: str) -> Ledger:
    """The ledger, with a fault where its end is not known, was cut, or is not the one that was seen.

    A head that lies further on than the one seen is taken: records are added on other machines too.
    """
    if ledger.fault is not None:
        return ledger
    there = len(ledger.records)
    if seen is None:
        if not there:
            return ledger
        message = f"Nobody has confirmed on this library that record {there} is the last one."
        hint = (
            "A file whose end was cut looks the same. Ask the role that signed last, then run "
            "'signage approvals confirm --as ROLE'."
        )
        return Ledger(fault=LedgerFault(message, Place(path, there, 1), hint))
    if there < seen.n:
        message = f"{seen.n} records were seen, and the file holds {there}: its end was cut."
        return Ledger(fault=LedgerFault(message, Place(path, there + 1, 1)))
    if seen.n and ledger.records[seen.n - 1].own_hash != seen.hash:
        message = f"Record {seen.n} is not the one that was seen before: the file was replaced."
        return Ledger(fault=LedgerFault(message, Place(path, seen.n, 1)))
    return ledger
