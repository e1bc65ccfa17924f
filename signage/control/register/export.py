"""The whole register as one table: a row for every print and for everything that happened."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator

from signage.model.copies import PRINTED, Copy, Event

COLUMNS = (
    "number",
    "happened",
    "day",
    "by",
    "ward",
    "slot",
    "learner",
    "sheet",
    "protocol",
    "locale",
    "code",
    "note",
)
_FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""What makes a spreadsheet take a text for a formula; a quotation mark before it ends that."""


def history_csv(copies: Iterable[Copy], events: Iterable[Event]) -> str:
    """Rows by copy, then by time, with the names of the columns first."""
    by_number: dict[str, list[Event]] = {}
    for event in events:
        by_number.setdefault(event.number, []).append(event)
    return as_csv((COLUMNS, *(row for copy in copies for row in _rows(copy, by_number.get(copy.number, ())))))


def as_csv(rows: Iterable[Iterable[object]]) -> str:
    """Rows as CSV (RFC 4180, with plain line ends) of which a spreadsheet takes nothing for a formula."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    for row in rows:
        writer.writerow([f"'{text}" if text.startswith(_FORMULA) else text for text in map(str, row)])
    return out.getvalue()


def _rows(copy: Copy, events: Iterable[Event]) -> Iterator[tuple[object, ...]]:
    what = (copy.sheet, copy.subject, copy.locale, copy.code)
    yield (copy.number, PRINTED, copy.printed_on, copy.by_role, "", "", "", *what, "")
    for event in events:
        spot = event.spot
        yield (
            copy.number,
            event.kind.value,
            event.on,
            event.by_role,
            spot.ward,
            spot.slot,
            spot.learner,
            *what,
            event.note,
        )
