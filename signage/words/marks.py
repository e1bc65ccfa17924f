"""The marks that people leave in the translator comments of an entry: who did what, and when.

A mark is a comment line of its own::

    # translated: ROLE-OR-ID 2026-11-25
    # checked: ROLE-OR-ID 2026-11-26
    # origin: machine
    # same as source

``words check-off`` writes a ``checked`` mark with the seal of source and translation, ``(K7M2PQ)``. A mark
without a seal, as somebody types it by hand, does not count, nor does one of a text that has changed since.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from signage.ground.fingerprint import fingerprint, revision_code

SEAL_LENGTH = 6
WITHDRAWN = "was checked"
MACHINE = " origin: machine"
"""The comment of a translation that nobody has looked at yet."""
SAME_AS_SOURCE = " same as source"

_MARK = re.compile(r"\s*(translated|checked|origin|same as source)\b(.*)", re.DOTALL)
_SIGNED = re.compile(r":\s*([\w.-]+)\s+(\d{4}-\d{2}-\d{2})(?:\s+\((\w+)\))?\s*")
_MACHINE = re.compile(r":\s*machine\s*")


@dataclass(frozen=True, slots=True)
class Signature:
    """Who, as a role or an id, and when. ``seal`` is of the text signed, or None where not yet sealed."""

    person: str
    day: date
    seal: str | None = None


@dataclass(frozen=True, slots=True)
class Marks:
    """The marks of one entry; ``unreadable`` are the comments that look like marks and are none."""

    translated: Signature | None = None
    checked: Signature | None = None
    is_machine: bool = False
    is_same_as_source: bool = False
    unreadable: tuple[str, ...] = ()


def seal(source: str, translation: str) -> str:
    """Six signs that change with the source text and with the translation."""
    return revision_code(fingerprint([source, translation]), SEAL_LENGTH)


def read_marks(comments: Iterable[str]) -> Marks:
    """The marks among the translator comments; the last of a kind counts."""
    translated: Signature | None = None
    checked: Signature | None = None
    is_machine = is_same_as_source = False
    unreadable: list[str] = []
    for comment in comments:
        match = _MARK.fullmatch(comment)
        if match is None:
            continue
        kind, rest = match.groups()
        if kind == "same as source" and not rest.strip(" .\t"):
            is_same_as_source = True
        elif kind == "origin" and _MACHINE.fullmatch(rest):
            is_machine = True
        elif kind in {"translated", "checked"} and (signature := _read_signature(rest)) is not None:
            translated, checked = (signature, checked) if kind == "translated" else (translated, signature)
        elif rest.lstrip().startswith(":"):
            unreadable.append(comment.strip())
    return Marks(translated, checked, is_machine, is_same_as_source, tuple(unreadable))


def checked_mark(person: str, day: date, source: str, translation: str) -> str:
    """The comment that says who has checked a text as it is, and when."""
    return f" checked: {person} {day.isoformat()} ({seal(source, translation)})"


def is_of_machine(comment: str) -> bool:
    """Whether a comment says that a machine made the text and nobody has looked at it."""
    return read_marks([comment]).is_machine


def is_mark(comment: str) -> bool:
    """Whether a comment says only who did what, and nothing about the text."""
    return not comment.strip() or read_marks([comment]) != Marks()


def _read_signature(rest: str) -> Signature | None:
    match = _SIGNED.fullmatch(rest)
    if match is None:
        return None
    try:
        day = date.fromisoformat(match.group(2))
    except ValueError:
        return None
    return Signature(match.group(1), day, match.group(3))


def end_checks(comments: Iterable[str], source: str, translation: str) -> tuple[str, ...]:
    """The comments with each ``checked`` mark whose seal is of another text turned into ``was checked``.

    It is kept to be read and no longer counted; a mark without a seal stays as it is and counts for nothing.
    """
    current = seal(source, translation)
    sealed: list[str] = []
    for comment in comments:
        signature = read_marks([comment]).checked
        is_of_other = signature is not None and signature.seal not in {None, current}
        sealed.append(_withdrawn(comment) if is_of_other else comment)
    return tuple(sealed)


def withdraw_checks(comments: Iterable[str]) -> tuple[str, ...]:
    """The comments with every ``checked`` mark turned into ``was checked``, for a source that changed."""
    return tuple(
        _withdrawn(comment) if read_marks([comment]).checked is not None else comment for comment in comments
    )


def _withdrawn(comment: str) -> str:
    return comment.replace("checked", WITHDRAWN, 1)
