"""A comprehension trial of pictures: the orders of its two forms, and the table of ratings it ends in.

In the spirit of ISO 9186-1: pictures without words, an open question, answers put into categories by people
who work apart from each other.
"""

from __future__ import annotations

import csv
import hashlib
import io
from collections.abc import Iterable, Mapping
from enum import StrEnum

FORMS = ("A", "B")
"""Two orders of the same pictures, so that no picture always follows another."""

COLUMNS = ("form", "number", "picture", "reader", "rater", "category")
"""The columns of the table of ratings."""

RATERS = ("1", "2")
"""The raters that a new table has rows for."""

AGREED = "agreed"
"""Stands in place of a rater in the row that settles an answer on which the two did not agree."""


class Category(StrEnum):
    """What an answer is worth, from what the picture says to no answer at all."""

    CORRECT = "correct"
    PARTLY = "partly"
    WRONG = "wrong"
    OPPOSITE = "opposite"
    NONE = "none"


def trial_forms(pictures: Iterable[str], seed: int) -> dict[str, tuple[str, ...]]:
    """The pictures of each form in their order; the place in it, from 1, is the number of a picture.

    The order follows SHA-256 of seed, form and name, so it is the same on every machine, and a picture that
    is added or removed leaves the order of the others as it was.
    """
    names = sorted(set(pictures))
    forms = {form: tuple(sorted(names, key=lambda name: _rank(seed, form, name))) for form in FORMS}
    first, second = FORMS
    if len(names) > 1 and forms[first] == forms[second]:
        forms[second] = forms[second][::-1]
    return forms


def _rank(seed: int, form: str, name: str) -> str:
    return hashlib.sha256(f"{seed}/{form}/{name}".encode()).hexdigest()


def empty_table(forms: Mapping[str, tuple[str, ...]]) -> str:
    """The table of ratings as CSV with one block of rows for each form and rater, reader and category empty.

    The block is copied for each reader; rows without reader and category count for nothing.
    """
    stream = io.StringIO()
    writer = csv.writer(stream, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    for form, pictures in forms.items():
        for rater in RATERS:
            writer.writerows([form, number, name, "", rater, ""] for number, name in enumerate(pictures, 1))
    return stream.getvalue()
