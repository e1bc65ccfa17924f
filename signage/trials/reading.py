"""A filled table of ratings to answers: every fault of every row is gathered before anything is counted."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from signage.ground.errors import UnreadableInputError
from signage.ground.place import Place
from signage.ground.problem import Problem, Reading, read_each, with_problems
from signage.load.suggestion import nearest, shorten, suggest
from signage.load.table_file import Row, read_table
from signage.model.picture_trial import AGREED, COLUMNS, FORMS, Category
from signage.trials import faults as trial_faults

REMARKS = ("answer", "note")
"""Columns that a table may have as well; they are not read."""

_MOST_FAULTS = 100
_ID = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,15}")
_NUMBER = re.compile(r"[1-9][0-9]{0,3}")


@dataclass(frozen=True, slots=True)
class Rating:
    """What one rater says of one answer, and where."""

    form: str
    number: int
    picture: str
    reader: str
    rater: str
    category: Category
    place: Place


@dataclass(frozen=True, slots=True)
class Answer:
    """One reader's answer to one picture with the ratings of both raters; ``agreed`` settles a difference."""

    picture: str
    reader: str
    first: Rating
    second: Rating
    agreed: Rating | None = None


@dataclass(frozen=True, slots=True)
class Trial:
    """All answers of a table, in the order of its rows, and the two raters."""

    answers: tuple[Answer, ...]
    raters: tuple[str, str]
    blank_rows: int


@dataclass
class _Table:
    """What has been read so far."""

    pictures: Collection[str]
    ratings: dict[tuple[str, str, str], Rating] = field(default_factory=dict)
    numbers: dict[tuple[str, int], Rating] = field(default_factory=dict)
    blank_rows: int = 0


def read_trial(path: Path, pictures: Collection[str]) -> Trial:
    """The answers of a table; ``pictures`` are the names that the library knows.

    Raises UnreadableInputError with every problem of every row.
    """
    header, *rows = read_table(path, trial_faults.TABLE)
    problems = list(_column_problems(header))
    if problems:
        raise UnreadableInputError(problems)
    trial, found = with_problems(_read(header, rows, pictures))
    if trial is None or found:
        raise UnreadableInputError(sorted(found, key=lambda problem: (problem.place, problem.code)))
    return trial


def _read(header: Row, rows: Sequence[Row], pictures: Collection[str]) -> Reading[Trial | None]:
    """The same for rows; None where there are too many faults or no two raters."""
    table = _Table(pictures)
    names = [name.casefold() for name in header.fields]
    told = 0
    for row in rows:
        for problem in _read_row(table, names, row):
            told += 1
            yield problem
        if told >= _MOST_FAULTS:
            message = f"More than {_MOST_FAULTS} faults: the rows after this one were not read."
            yield trial_faults.TABLE.problem(message, row.place, hint="Mend these first.")
            return None
    raters = yield from _raters(table, header.place, is_empty_for_faults=bool(told))
    if raters is None:
        return None
    pairs = dict.fromkeys(key[:2] for key in table.ratings)
    answers = yield from read_each(_answer(table, picture, reader, raters) for picture, reader in pairs)
    return Trial(tuple(answer for answer in answers if answer is not None), raters, table.blank_rows)


def _column_problems(header: Row) -> Iterator[Problem]:
    names = [name.casefold() for name in header.fields]
    known = (*COLUMNS, *REMARKS)
    for name in COLUMNS:
        if name not in names:
            yield trial_faults.COLUMN.problem(f"The column '{name}' is missing.", header.place)
    for name in dict.fromkeys(names):
        if names.count(name) > 1:
            yield trial_faults.COLUMN.problem(f"The column '{shorten(name)}' is there twice.", header.place)
        if name not in known:
            hint = suggest(name, known, "Columns are")
            yield trial_faults.COLUMN.problem(
                f"The column '{shorten(name)}' is unknown.", header.place, hint=hint
            )


def _read_row(table: _Table, names: Sequence[str], row: Row) -> Iterator[Problem]:
    if len(row.fields) != len(names):
        message = f"This row has {len(row.fields)} fields; the first line has {len(names)}."
        yield trial_faults.FIELDS.problem(message, row.place)
        return
    values = dict(zip(names, row.fields, strict=True))
    if not values["reader"] and not values["category"]:
        table.blank_rows += 1
        return
    problems = list(_value_problems(values, row.place, table.pictures))
    if problems:
        yield from problems
        return
    rating = Rating(
        values["form"].upper(),
        int(values["number"]),
        values["picture"],
        values["reader"],
        values["rater"],
        Category(values["category"].casefold()),
        row.place,
    )
    yield from _keep(table, rating)


def _value_problems(values: Mapping[str, str], place: Place, pictures: Collection[str]) -> Iterator[Problem]:
    if values["form"].upper() not in FORMS:
        yield trial_faults.VALUE.problem(f"The form '{shorten(values['form'])}' is neither A nor B.", place)
    if _NUMBER.fullmatch(values["number"]) is None:
        yield trial_faults.VALUE.problem(
            f"'{shorten(values['number'])}' is not the number of a picture.", place
        )
    if values["picture"] not in pictures:
        match = nearest(values["picture"], pictures)
        hint = f"Did you mean '{match}'?" if match else ""
        message = f"There is no picture '{shorten(values['picture'])}'."
        yield trial_faults.PICTURE.problem(message, place, hint=hint)
    if values["category"].casefold() not in set(Category):
        hint = suggest(values["category"], list(Category), "Categories are")
        message = f"The category '{shorten(values['category'])}' is unknown."
        if not values["category"]:
            message, hint = "The category is empty.", "Write none for an answer that was left empty."
        yield trial_faults.VALUE.problem(message, place, hint=hint)
    reader, rater = values["reader"], values["rater"]
    if _ID.fullmatch(reader) is None or not any(sign.isdigit() for sign in reader):
        yield trial_faults.PERSON.problem(
            f"The reader '{shorten(reader)}' is not an id with a number.", place
        )
    if _ID.fullmatch(rater) is None:
        yield trial_faults.PERSON.problem(f"The rater '{shorten(rater)}' is not an id.", place)


def _keep(table: _Table, rating: Rating) -> Iterator[Problem]:
    """Store a rating, unless it repeats or contradicts an earlier one."""
    key = (rating.picture, rating.reader, rating.rater)
    earlier = table.ratings.setdefault(key, rating)
    if earlier is not rating:
        message = (
            f"Rater {rating.rater} has rated {rating.picture}, reader {rating.reader} in line "
            f"{earlier.place.line} already."
        )
        yield trial_faults.REPEATED.problem(message, rating.place)
    first = table.numbers.setdefault((rating.form, rating.number), rating)
    if first.picture != rating.picture:
        message = (
            f"Number {rating.number} of form {rating.form} is {first.picture} in line {first.place.line} "
            f"and {rating.picture} here."
        )
        yield trial_faults.NUMBER.problem(message, rating.place)


def _raters(table: _Table, place: Place, *, is_empty_for_faults: bool) -> Reading[tuple[str, str] | None]:
    """The two raters in alphabetical order; None where there are not two."""
    found = sorted({rater for _, _, rater in table.ratings} - {AGREED})
    if len(found) == 2:
        return found[0], found[1]
    if found:
        message = f"Two raters were wanted; this table has {', '.join(found)}."
        yield trial_faults.RATERS.problem(message, place)
    elif not is_empty_for_faults:
        message = "No row of this table has a reader and a category yet."
        hint = "Fill in the rows of one form for each reader, for both raters."
        yield trial_faults.TABLE.problem(message, place, hint=hint)
    return None


def _answer(table: _Table, picture: str, reader: str, raters: tuple[str, str]) -> Reading[Answer | None]:
    """What both raters make of an answer; None where one of them has not rated it."""
    ratings = [table.ratings.get((picture, reader, rater)) for rater in (*raters, AGREED)]
    first, second, agreed = ratings
    if first is not None and second is not None:
        return Answer(picture, reader, first, second, agreed)
    missing = " and ".join(rater for rater, rating in zip(raters, ratings, strict=False) if rating is None)
    place = next(rating.place for rating in ratings if rating is not None)
    message = f"{picture}, reader {reader} has no rating of rater {missing}."
    yield trial_faults.ONCE.problem(message, place)
    return None
