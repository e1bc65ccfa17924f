"""The marks that people leave in the translator comments of an entry: who did what, and when.

A mark is a comment line of its own::

    # translated: ROLE-OR-ID 2026-11-25
    # checked: ROLE-OR-ID 2026-11-26
    # origin: machine
    # same as source

``words update`` adds to a ``checked`` mark the seal of the text that was checked, ``(K7M2PQ)``; only from
then on does it count, and a text that has changed since no longer does.
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


def seal_checks(comments: Iterable[str], source: str, translation: str) -> tuple[str, ...]:
    """The comments with the seal added to each ``checked`` mark that has none.

    A mark whose seal is of another text becomes ``was checked``: kept to be read, no longer counted.
    """
    current = seal(source, translation)
    sealed: list[str] = []
    for comment in comments:
        signature = read_marks([comment]).checked
        if signature is None:
            sealed.append(comment)
        elif signature.seal is None:
            sealed.append(f"{comment.rstrip()} ({current})")
        else:
            sealed.append(comment if signature.seal == current else _withdrawn(comment))
    return tuple(sealed)


def withdraw_checks(comments: Iterable[str]) -> tuple[str, ...]:
    """The comments with every ``checked`` mark turned into ``was checked``, for a source that changed."""
    return tuple(
        _withdrawn(comment) if read_marks([comment]).checked is not None else comment for comment in comments
    )


def _withdrawn(comment: str) -> str:
    return comment.replace("checked", WITHDRAWN, 1)
