"""Tables that come back from the ward: columns by name, numbers checked, nothing trusted."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from signage.ground.errors import UnreadableInputError
from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem, Reading
from signage.load.suggestion import nearest, shorten, suggest
from signage.load.table_file import Row, read_table
from signage.model.copy_number import read_copy_number, slips_of
from signage.trials import ward_faults as faults

MOST_FAULTS = 100
"""Faults that are told of one table; rows after them are not read."""

_LEARNER = re.compile(r"[A-Za-z][A-Za-z0-9._-]{0,14}[0-9]|[0-9]{1,15}")
_LONGEST_NOTE = 300
_PERSONAL = re.compile(
    r"\b(name|names|surname|forename|initials|patient|person|staff|nurse|victim|injured|birth|dob|age|sex|"
    r"gender|address|phone|mobile|e?mail|diagnosis|symptoms?|injury|illness|infection|temperature|fever|"
    r"test result|blood|vaccin\w*|health|medical|mrn|nhs|insurance|exposure)\b"
)
"""Words of columns that hold what this tool must not keep (common practice, no source)."""


@dataclass(frozen=True)
class Columns:
    """The names of the columns of a table, in lower case: those that it must have, and those that it may."""

    needed: tuple[str, ...]
    optional: tuple[str, ...] = ()

    @property
    def known(self) -> tuple[str, ...]:
        """All of them."""
        return (*self.needed, *self.optional)


@dataclass(frozen=True)
class Filled:
    """A row by the names of its columns; a column that is not there is empty."""

    values: Mapping[str, str]
    places: Mapping[str, Place]
    place: Place = NOWHERE

    def __getitem__(self, name: str) -> str:
        return self.values.get(name, "")

    def at(self, name: str) -> Place:
        """Where a field stands, else the row."""
        return self.places.get(name, self.place)


def typed(**values: str) -> Filled:
    """What was typed on the command line, as a row without a place."""
    return Filled(values, {})


def read_ward_table(path: Path, columns: Columns) -> tuple[Filled, ...]:
    """The rows of a table; raises UnreadableInputError with every problem of its columns and rows."""
    header, *rows = read_table(path, faults.TABLE)
    names = [name.casefold() for name in header.fields]
    problems = list(_column_problems(header, names, columns))
    if not problems:
        for row in rows:
            if len(row.fields) != len(names):
                message = f"This row has {len(row.fields)} fields; the first line has {len(names)}."
                problems.append(faults.FIELDS.problem(message, row.place))
        if not rows:
            problems.append(faults.TABLE.problem(f"{header.place.path} has no row below the first line."))
    if problems:
        raise UnreadableInputError(problems[:MOST_FAULTS])
    return tuple(_filled(names, row) for row in rows)


def _filled(names: Sequence[str], row: Row) -> Filled:
    places = {name: row.at(index) for index, name in enumerate(names)}
    return Filled(dict(zip(names, row.fields, strict=True)), places, row.place)


def _column_problems(header: Row, names: Sequence[str], columns: Columns) -> Iterator[Problem]:
    for name in columns.needed:
        if name not in names:
            message = f"The column '{name}' is missing."
            hint = f"Columns are {', '.join(columns.known)}."
            yield faults.COLUMN.problem(message, header.place, hint=hint)
    for name in dict.fromkeys(names):
        place = header.at(names.index(name))
        if names.count(name) > 1:
            yield faults.COLUMN.problem(f"The column '{shorten(name)}' is there twice.", place)
        if name in columns.known:
            continue
        if _PERSONAL.search(re.sub(r"[\W_]+", " ", name)):
            yield faults.PERSONAL.problem(
                f"The column '{shorten(name)}' may hold names, contacts or health data.", place
            )
        else:
            hint = suggest(name, columns.known, "Columns are")
            yield faults.COLUMN.problem(f"The column '{shorten(name)}' is unknown.", place, hint=hint)


def read_number(row: Filled, column: str, known: Collection[str]) -> Reading[str | None]:
    """The copy number in a field; None, with a problem that suggests what was meant, where it is none."""
    text, place = row[column], row.at(column)
    if not text:
        yield faults.MISTYPED.problem("The copy number is empty.", place)
        return None
    number = read_copy_number(text)
    if number in known:
        return number
    meant = sorted(slips_of(text) & set(known))
    if len(meant) > 3:
        meant = []
    hint = f"Did you mean {' or '.join(meant)}? Look at the sheet." if meant else ""
    if number is None:
        message = f"'{shorten(text)}' is no copy number: its check character does not agree."
        yield faults.MISTYPED.problem(message, place, hint=hint)
    else:
        yield faults.UNKNOWN.problem(f"No copy {number} was printed for this library.", place, hint=hint)
    return None


def read_learner(row: Filled, column: str) -> Reading[str]:
    """The number of a learner; empty where none stands there."""
    learner = row[column]
    if learner and _LEARNER.fullmatch(learner) is None:
        message = f"'{shorten(learner)}' is not the number of a learner, such as L07."
        yield faults.PLACE.problem(message, row.at(column), hint="Write the number, and no name.")
        return ""
    return learner


def read_day(row: Filled, column: str, otherwise: date) -> Reading[date]:
    """The day in a field (ISO 8601), not after ``otherwise``, which is the day of an empty field."""
    text = row[column]
    if not text:
        return otherwise
    try:
        day = date.fromisoformat(text)
    except ValueError:
        day = None
    if day is None or day > otherwise or len(text) != 10:
        message = f"'{shorten(text)}' is no day until today, such as {otherwise.isoformat()}."
        yield faults.VALUE.problem(message, row.at(column), hint="Write year, month and day with hyphens.")
        return otherwise
    return day


def read_word(row: Filled, column: str, words: Collection[str], *, is_needed: bool = True) -> Reading[str]:
    """One of a few words, in lower case; empty, with a problem, where it is another."""
    text = row[column].casefold()
    if text in words or (not text and not is_needed):
        return text
    match = nearest(text, words) if text else None
    hint = f"Did you mean '{match}'?" if match else f"Write one of: {', '.join(words)}."
    message = f"The {column} '{shorten(row[column])}' is unknown." if text else f"The {column} is empty."
    yield faults.VALUE.problem(message, row.at(column), hint=hint)
    return ""


def read_note(row: Filled, column: str = "note") -> Reading[str]:
    """A short text on one line."""
    text = " ".join(row[column].split())
    if len(text) > _LONGEST_NOTE:
        message = f"The {column} has {len(text)} characters; at most {_LONGEST_NOTE} were wanted."
        yield faults.VALUE.problem(message, row.at(column), hint="Shorten it.")
    return text[:_LONGEST_NOTE]
