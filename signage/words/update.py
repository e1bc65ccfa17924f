"""Keeps the catalogues in step with the library: templates, merging, new locales and progress.

Everything here plans: it reads files and returns the bytes that should stand in them. ``write_changes``
alone writes.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from signage.ground.errors import WrongUsageError
from signage.ground.files import write_whole
from signage.ground.language import canonical_tag, is_well_formed
from signage.ground.place import Place
from signage.ground.problem import Problem, Reading
from signage.ground.quotation import quoted
from signage.model.library import Library
from signage.model.messages import Message, MessageRole
from signage.text.font_set import FontSet
from signage.words.briefing import Briefing
from signage.words.catalogue import (
    FUZZY,
    Catalogue,
    CatalogueKind,
    Entry,
    EntryState,
    catalogue_path,
    kinds_of,
    refuse_lossy,
    template_path,
)
from signage.words.fixed.interface import FIXED_TEXTS
from signage.words.marks import end_checks, is_mark, withdraw_checks
from signage.words.numerals import autonym, cldr_locale
from signage.words.offers import Donors, without_offer
from signage.words.po.reader import read_catalogue_file
from signage.words.po.writer import MARK_LEGEND, complete_header, write_catalogue
from signage.words.rules import RULE_OF
from signage.words.script_font import script_without_font
from signage.words.shipped import shipped_entries
from signage.words.standin import STAND_INS

_TITLES = {
    CatalogueKind.CONTENT: "Texts of the content",
    CatalogueKind.INTERFACE: "Fixed words of the sheets",
}


@dataclass(frozen=True, slots=True)
class FileChange:
    """What a file should hold; ``is_new_content`` is False where it holds it already."""

    path: Path
    data: bytes
    is_new_content: bool


@dataclass(frozen=True, slots=True)
class LocaleProgress:
    """Counts of one locale: the four states add up to ``messages``; ``stale`` is part of ``doubtful``."""

    messages: int
    missing: int
    doubtful: int
    translated: int
    checked: int
    stale: int

    def as_json(self) -> dict[str, int]:
        """The counts by their names."""
        return {
            "messages": self.messages,
            "missing": self.missing,
            "doubtful": self.doubtful,
            "translated": self.translated,
            "checked": self.checked,
            "stale": self.stale,
        }


def collect(library: Library, messages: Sequence[Message], locales: Path) -> list[FileChange]:
    """The templates of all locales: every text of the library and every fixed word, untranslated."""
    changes = []
    for kind in CatalogueKind:
        catalogue = Catalogue(
            entries=tuple(blank_entries(library, messages, kind, None).values()),
            header=complete_header(kind, None, {}),
            header_comments=(f" {_TITLES[kind]}: template of every locale.",),
        )
        changes.append(file_change(template_path(locales, kind), write_catalogue(catalogue)))
    return changes


def update(library: Library, messages: Sequence[Message], locales: Path) -> list[FileChange]:
    """The catalogues of every locale merged with the library; a second run changes no byte.

    Locales are those of the library and those that have a folder. A catalogue that is not there yet is
    made. Raises UnreadableInputError if a fault in any file could lose a text: then nothing is planned.
    """
    problems: list[Problem] = []
    merged: list[tuple[Path, Catalogue]] = []
    for tag in locale_tags(library, locales):
        for kind in kinds_of(library, tag):
            path = catalogue_path(locales, tag, kind)
            present = Catalogue()
            if path.exists():
                result = read_catalogue_file(path, tag)
                problems.extend(result.problems)
                present = result.catalogue
            wanted = blank_entries(library, messages, kind, tag)
            merged.append((path, merge(present, wanted, kind, tag)))
    refuse_lossy(problems)
    return [file_change(path, write_catalogue(catalogue)) for path, catalogue in merged]


def add_locale(
    library: Library, messages: Sequence[Message], locales: Path, tag: str, fonts: FontSet
) -> Reading[list[FileChange]]:
    """The catalogues of a new locale; its problems are warnings: CLDR knows it not, no font has its script.

    They are empty but for the words that the programme brings in the language, marked as a machine's.
    Raises WrongUsageError for an ill-formed tag, one in unusual letters, a stand-in, the source language and
    a locale that is there.
    """
    refuse_unusual(tag)
    kinds = kinds_of(library, tag)
    if not kinds:
        raise WrongUsageError(f"'{tag}' is the language of the source texts and needs no catalogue")
    there = [path for kind in kinds if (path := catalogue_path(locales, tag, kind)).exists()]
    if there:
        raise WrongUsageError(f"{there[0]} is there already; run 'signage words update' to refresh it")
    if cldr_locale(tag) is None:
        folder = Place((locales / tag).as_posix())
        yield RULE_OF["WD-18"].problem(f"CLDR has no data for '{tag}'", folder, locale=tag)
    unseen = script_without_font(tag, fonts)
    if unseen is not None:
        yield RULE_OF["WD-39"].problem(unseen, Place((locales / tag).as_posix()), locale=tag)
    changes = []
    for kind in kinds:
        wanted = blank_entries(library, messages, kind, tag)
        catalogue = merge(_brought(wanted, tag), wanted, kind, tag)
        changes.append(file_change(catalogue_path(locales, tag, kind), write_catalogue(catalogue)))
    return changes


def refuse_unusual(tag: str) -> None:
    """Raise WrongUsageError for what cannot be the tag of a new language, with the tag that was meant."""
    usual = canonical_tag(tag.replace("_", "-"))
    if not is_well_formed(tag):
        meant = (
            f"did you mean {usual}?" if is_well_formed(usual) else "write one such as bn, pt-BR or sr-Latn"
        )
        raise WrongUsageError(f"{quoted(tag, 40)} is no language tag (BCP 47); {meant}")
    if tag != usual and usual not in STAND_INS:
        raise WrongUsageError(f"'{tag}' is written '{usual}'; write it so, that no language is there twice")
    if usual in STAND_INS:
        raise WrongUsageError(f"'{tag}' is a stand-in locale; it is made in memory and has no files")


def _brought(wanted: Mapping[str, Entry], tag: str) -> Catalogue:
    """The words that the programme brings for the wanted texts."""
    shipped = shipped_entries(tag)
    return Catalogue(
        entries=tuple(
            shipped[context]
            for context, entry in wanted.items()
            if context in shipped and shipped[context].source == entry.source
        )
    )


def progress(library: Library, messages: Sequence[Message], locales: Path) -> dict[str, LocaleProgress]:
    """How far each locale has come. Raises UnreadableInputError for faults that could lose a text."""
    problems: list[Problem] = []
    counts: dict[str, LocaleProgress] = {}
    for tag in locale_tags(library, locales):
        states: list[tuple[EntryState, bool]] = []
        for kind in kinds_of(library, tag):
            path = catalogue_path(locales, tag, kind)
            entries: dict[str, Entry] = {}
            if path.exists():
                result = read_catalogue_file(path, tag)
                problems.extend(result.problems)
                entries = result.catalogue.by_context
            for context, wanted in blank_entries(library, messages, kind, tag).items():
                states.append(_state(entries.get(context), wanted.source))
        found = [state for state, _ in states]
        counts[tag] = LocaleProgress(
            messages=len(states),
            missing=found.count(EntryState.MISSING),
            doubtful=found.count(EntryState.DOUBTFUL),
            translated=found.count(EntryState.TRANSLATED),
            checked=found.count(EntryState.CHECKED),
            stale=sum(is_stale for _, is_stale in states),
        )
    refuse_lossy(problems)
    return counts


def _state(entry: Entry | None, source: str) -> tuple[EntryState, bool]:
    """State of the entry of a text, and whether the source text has changed under it."""
    if entry is None or not entry.translation.strip():
        return EntryState.MISSING, False
    if entry.source != source:
        return EntryState.DOUBTFUL, True
    return entry.state, entry.is_stale


def progress_json(counts: Mapping[str, LocaleProgress]) -> dict[str, dict[str, dict[str, int]]]:
    """The answer of ``words progress`` to programs."""
    return {"locales": {tag: count.as_json() for tag, count in counts.items()}}


def write_changes(changes: Sequence[FileChange]) -> int:
    """Write the files whose content is new, each whole; returns how many."""
    new = [change for change in changes if change.is_new_content]
    for change in new:
        write_whole(change.path, change.data)
    return len(new)


def locale_tags(library: Library, locales: Path) -> list[str]:
    """The locales that need a catalogue: those of the library in its order, then further folders."""
    tags = [tag for tag in library.locales if kinds_of(library, tag)]
    if locales.is_dir():
        folders = sorted(path.name for path in locales.iterdir() if (path / "LC_MESSAGES").is_dir())
        tags.extend(
            name
            for name in folders
            if name not in library.locales and is_well_formed(name) and kinds_of(library, name)
        )
    return tags


def blank_entries(
    library: Library, messages: Sequence[Message], kind: CatalogueKind, tag: str | None
) -> dict[str, Entry]:
    """The untranslated entries of a catalogue with their notes, by context, in the order of the library."""
    captions = {
        message.picture: message.source
        for message in messages
        if message.role is MessageRole.PICTURE and message.picture is not None
    }
    briefing = Briefing(library, tag, captions)
    if kind is CatalogueKind.CONTENT:
        blank = [
            Entry(context=message.context, source=message.source, notes=briefing.of_message(message))
            for message in messages
        ]
    else:
        blank = [
            Entry(context=f"interface/{text.id}", source=text.source, notes=briefing.of_fixed_text(text))
            for text in FIXED_TEXTS.values()
        ]
    return {entry.context: entry for entry in blank}


def merge(present: Catalogue, wanted: Mapping[str, Entry], kind: CatalogueKind, tag: str) -> Catalogue:
    """The catalogue with exactly the wanted entries; what is no longer wanted becomes obsolete.

    No translation and no comment of a translator is lost. A translation whose source has changed becomes
    doubtful and keeps the source it was made for. An obsolete entry that is wanted again comes back. A text
    without a translation is offered one of the same source text, as doubtful (``signage.words.offers``).
    """
    live = present.by_context
    retired = {entry.context: entry for entry in present.obsolete}
    retired |= {entry.context: entry for entry in present.obsolete if _fits(entry, wanted)}
    entries = []
    for context, blank in wanted.items():
        old = live.get(context, retired.get(context))
        entries.append(blank if old is None else _merged(old, blank))
    vanished = [entry for entry in (*present.entries, *present.obsolete) if entry.context not in wanted]
    known = [entry for entry in present.entries if entry.context in wanted]
    donors = Donors(vanished, known, shipped_entries(tag))
    entries = [entry if entry.translation else donors.offer(entry) for entry in entries]
    revived = {id(retired[context]) for context in wanted if context in retired and context not in live}
    left = [entry for entry in present.entries if entry.context not in wanted and _is_worth_keeping(entry)]
    obsolete = [entry for entry in present.obsolete if id(entry) not in revived]
    kept = {
        (entry.context, entry.source, entry.translation, entry.comments): _retired(entry)
        for entry in (*obsolete, *left)
    }
    comments = present.header_comments or (f" {_TITLES[kind]} in {autonym(tag)} ({tag}).", *MARK_LEGEND)
    return Catalogue(
        entries=tuple(entries),
        header=complete_header(kind, tag, present.header),
        header_comments=comments,
        obsolete=tuple(
            sorted(kept.values(), key=lambda entry: (entry.context, entry.source, entry.translation))
        ),
        closing_comments=present.closing_comments,
    )


def _fits(entry: Entry, wanted: Mapping[str, Entry]) -> bool:
    return entry.context in wanted and wanted[entry.context].source == entry.source


def _is_worth_keeping(entry: Entry) -> bool:
    return bool(entry.translation) or not all(is_mark(comment) for comment in entry.comments)


def _retired(entry: Entry) -> Entry:
    return replace(entry, notes=(), references=())


def _merged(old: Entry, blank: Entry) -> Entry:
    """The old translation under the wanted source text."""
    translation = unicodedata.normalize("NFC", old.translation)
    flags = tuple(dict.fromkeys(old.flags))
    previous, comments = old.previous, old.comments
    if not translation:
        return replace(blank, comments=comments, flags=tuple(flag for flag in flags if flag != FUZZY))
    if old.source != blank.source:
        previous = previous if old.is_stale else old.source
        flags = flags if FUZZY in flags else (FUZZY, *flags)
        comments = withdraw_checks(comments)
    if FUZZY not in flags:
        comments = without_offer(comments)
        previous, comments = None, end_checks(comments, blank.source, translation)
    elif previous == blank.source:
        previous = None
    return replace(blank, translation=translation, comments=comments, flags=flags, previous=previous)


def file_change(path: Path, data: bytes) -> FileChange:
    """What a file should hold, and whether it holds it already."""
    return FileChange(path, data, not path.is_file() or path.read_bytes() != data)
