"""A CSV table that somebody has filled in: bytes to rows, with nothing trusted."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from signage.ground.errors import UnreadableInputError
from signage.ground.files import read_ordinary
from signage.ground.place import Place
from signage.ground.rule import Rule
from signage.load.file_text import describe, forbidden_in, place_of, shown_path

LARGEST_TABLE = 2_000_000
"""Bytes; a hundred readers of forty pictures make some 400 000."""

_SEPARATORS = ",;\t"
_BYTE_ORDER_MARK = "\ufeff"
_LONGEST_FIELD = 2_000
_LINE_END = re.compile(r"\r\n|\r|\n")


@dataclass(frozen=True, slots=True)
class Row:
    """The fields of a row, stripped of spaces, the line on which it begins, and the column of each field.

    Columns are known where the row stands on one line; else they are 0.
    """

    fields: tuple[str, ...]
    place: Place
    columns: tuple[int, ...] = ()

    @property
    def is_blank(self) -> bool:
        """Whether nothing stands in it."""
        return not any(self.fields)

    def at(self, index: int) -> Place:
        """Where a field stands."""
        column = self.columns[index] if index < len(self.columns) else 0
        return Place(self.place.path, self.place.line, column)


def read_table(path: Path, rule: Rule) -> tuple[Row, ...]:
    """The rows of a table with commas, semicolons or tabs; the first is that of the column names.

    Raises UnreadableInputError, with a problem of the rule, where the file is no such table.
    """
    place = Place(shown_path(path))
    try:
        text = _text(_bytes(path, place), place)
        rows = tuple(_rows(text, place.path))
        if not rows:
            raise _empty(place)
    except _RefusedTableError as refused:
        raise UnreadableInputError([rule.problem(*refused.told, hint=refused.hint)]) from None
    return rows


class _RefusedTableError(Exception):
    """The file is no table: the sentence with its place, and what to do."""

    def __init__(self, place: Place, message: str, hint: str = "") -> None:
        super().__init__(message)
        self.told = (message, place)
        self.hint = hint


def _refuse(place: Place, message: str, hint: str = "") -> _RefusedTableError:
    return _RefusedTableError(place, message, hint)


def _empty(place: Place) -> _RefusedTableError:
    return _refuse(place, f"{place} is empty.", "Fill in the table that came with the form.")


def _bytes(path: Path, place: Place) -> bytes:
    try:
        if path.is_dir():
            raise _refuse(place, f"{place} is a folder; a CSV file was wanted.")
        data = read_ordinary(path, LARGEST_TABLE + 1)
    except FileNotFoundError:
        raise _refuse(place, f"{place} is missing.", "Name the table that was filled in.") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise _refuse(
            place, f"{place} could not be read: {reason}.", "Check the name and your rights."
        ) from None
    if len(data) > LARGEST_TABLE:
        raise _refuse(place, f"{place} is larger than 2 MB.", "Split it, or delete columns of notes.")
    return data


def _text(data: bytes, place: Place) -> str:
    if data[:2] in {b"\xff\xfe", b"\xfe\xff"}:
        raise _refuse(place, f"{place} is UTF-16; UTF-8 was wanted.")
    try:
        text = data.decode("utf-8").removeprefix(_BYTE_ORDER_MARK)
    except UnicodeDecodeError as error:
        line = len(re.findall(rb"\r\n|\r|\n", data[: error.start])) + 1
        where = Place(place.path, line)
        message = f"The byte 0x{data[error.start]:02X} belongs to no character; UTF-8 was wanted."
        raise _refuse(where, message) from None
    found = forbidden_in(text)
    if found:
        index, character = found[0]
        where = place_of(text, index, place.path)
        raise _refuse(where, f"Here stands {describe(character)}.", "Delete the character.")
    if not text.strip():
        raise _empty(place)
    return text


def _rows(text: str, path: str) -> Iterator[Row]:
    header = text.lstrip().splitlines()[0]
    separator = max(_SEPARATORS, key=header.count)
    lines = _LINE_END.split(text)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True)
    begin = 1
    while True:
        try:
            fields = next(reader)
        except StopIteration:
            return
        except csv.Error as error:
            where = Place(path, begin)
            hint = "Look for a quotation mark that is opened and not closed."
            raise _refuse(where, f"This row is no CSV: {error}.", hint) from None
        columns = _columns(lines[begin - 1], separator) if reader.line_num == begin else ()
        row = Row(tuple(field.strip() for field in fields), Place(path, begin), columns)
        if any(len(field) > _LONGEST_FIELD for field in row.fields):
            raise _refuse(row.place, f"A field of this row is longer than {_LONGEST_FIELD} characters.")
        begin = reader.line_num + 1
        if not row.is_blank:
            yield row


def _columns(line: str, separator: str) -> tuple[int, ...]:
    """The column, counted from 1, at which each field of a line begins."""
    columns, is_quoted = [1], False
    for index, sign in enumerate(line, start=1):
        is_quoted ^= sign == '"'
        if sign == separator and not is_quoted:
            columns.append(index + 1)
    return tuple(columns)
