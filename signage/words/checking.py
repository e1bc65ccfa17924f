"""Which texts of a protocol a second person has checked, and the mark that says so."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem
from signage.model.library import Library, Protocol
from signage.model.messages import Message, contexts_of_protocol
from signage.words.catalogue import Entry, EntryState, catalogue_path, kinds_of, refuse_lossy
from signage.words.fixed.interface import OTHER_CONTEXTS
from signage.words.marks import checked_mark, is_of_machine, read_marks
from signage.words.po.reader import read_catalogue_file
from signage.words.po.writer import write_catalogue
from signage.words.update import FileChange, file_change


@dataclass(frozen=True)
class Check:
    """A text with who translated it and who has checked it as it is, None where nobody has said so."""

    context: str
    translator: str | None
    checker: str | None
    state: EntryState
    place: Place = NOWHERE


def is_of_protocol(context: str, known: frozenset[str]) -> bool:
    """Whether a text stands on sheets or pages of a protocol; fixed words stand on all."""
    return context in known or (context.startswith("interface/") and context not in OTHER_CONTEXTS)


def checks_of(
    library: Library, messages: Sequence[Message], locales: Path, tag: str, protocol: Protocol
) -> tuple[Check, ...]:
    """The texts of a protocol in a language, in the order of its files."""
    known = contexts_of_protocol(protocol, messages)
    found: list[Check] = []
    for kind in kinds_of(library, tag):
        path = catalogue_path(locales, tag, kind)
        if path.exists():
            entries = read_catalogue_file(path, tag).catalogue.entries
            found += (_check(entry) for entry in entries if is_of_protocol(entry.context, known))
    return tuple(found)


def _check(entry: Entry) -> Check:
    marks = entry.marks
    checker = marks.checked.person if marks.checked and entry.state is EntryState.CHECKED else None
    translator = marks.translated.person if marks.translated else None
    return Check(entry.context, translator, checker, entry.state, entry.place)


@dataclass(frozen=True)
class CheckedOff:
    """What a check would change: the files, how many texts get the mark, and which cannot and why."""

    changes: tuple[FileChange, ...]
    marked: int
    already: int
    left: tuple[tuple[Check, str], ...]


def check_off(
    library: Library,
    messages: Sequence[Message],
    locales: Path,
    tag: str,
    protocol: Protocol,
    by: str,
    on: date,
    translators: Sequence[str],
) -> CheckedOff:
    """The catalogues with the mark of ``by`` on every text of a protocol that can be checked.

    A text that is missing or doubtful gets none, nor one that ``by`` has translated: who that was says the
    comment of the entry, and where it says nothing, all ``translators`` of the language. The comment that a
    machine made a text goes with the check. Raises UnreadableInputError where a file could lose a text.
    """
    known = contexts_of_protocol(protocol, messages)
    problems: list[Problem] = []
    changes: list[FileChange] = []
    left: list[tuple[Check, str]] = []
    marked = already = 0
    for kind in kinds_of(library, tag):
        path = catalogue_path(locales, tag, kind)
        if not path.exists():
            continue
        result = read_catalogue_file(path, tag)
        problems += result.problems
        entries: list[Entry] = []
        for entry in result.catalogue.entries:
            check = _check(entry)
            if not is_of_protocol(entry.context, known) or check.checker == by:
                already += check.checker == by
                entries.append(entry)
                continue
            lack = _why_not(check, by, translators)
            if lack:
                left.append((check, lack))
            marked += not lack
            entries.append(entry if lack else _marked(entry, by, on))
        changes.append(file_change(path, write_catalogue(replace(result.catalogue, entries=tuple(entries)))))
    refuse_lossy(problems)
    return CheckedOff(tuple(changes), marked, already, tuple(left))


def _why_not(check: Check, by: str, translators: Sequence[str]) -> str:
    if check.state in {EntryState.MISSING, EntryState.DOUBTFUL}:
        return f"is {check.state.value}"
    if by == check.translator or (check.translator is None and by in translators):
        return "was translated by the same role"
    return ""


def _marked(entry: Entry, by: str, on: date) -> Entry:
    kept = [
        comment
        for comment in entry.comments
        if read_marks([comment]).checked is None and not is_of_machine(comment)
    ]
    mark = checked_mark(by, on, entry.source, entry.translation)
    return replace(entry, comments=(*kept, mark))
