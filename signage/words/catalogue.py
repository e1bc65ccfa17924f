"""Gettext catalogues of a locale: entries, their states, and the files they stand in."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from pathlib import Path
from types import MappingProxyType

from signage.ground.errors import UnreadableInputError
from signage.ground.language import language_of
from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem, Severity
from signage.model.library import Library
from signage.words.marks import Marks, read_marks, seal

FUZZY = "fuzzy"
INTERFACE_LANGUAGE = "en"
"""The language in which the fixed words of the sheets are written."""


class CatalogueKind(StrEnum):
    """``content``: the texts of content/. ``interface``: the fixed words of the sheets."""

    CONTENT = "content"
    INTERFACE = "interface"


class EntryState(StrEnum):
    """How far a translation has come. Only ``translated`` and ``checked`` may be printed."""

    MISSING = "missing"
    DOUBTFUL = "doubtful"
    TRANSLATED = "translated"
    CHECKED = "checked"


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One text with its translation, as a PO file holds it.

    ``comments`` are the translator's lines after their ``#``, as they stand; ``notes`` those of the
    programme; ``previous`` is the older source text that the translation was made for.
    """

    context: str
    source: str
    translation: str = ""
    comments: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    references: tuple[str, ...] = ()
    flags: tuple[str, ...] = ()
    previous: str | None = None
    place: Place = field(default=NOWHERE, compare=False)

    @property
    def marks(self) -> Marks:
        """Who translated and who checked the entry."""
        return read_marks(self.comments)

    @property
    def is_doubtful(self) -> bool:
        """Whether the entry carries the flag fuzzy."""
        return FUZZY in self.flags

    @property
    def is_stale(self) -> bool:
        """Whether the translation was made for an older source text."""
        return self.is_doubtful and self.previous is not None and self.previous != self.source

    @property
    def state(self) -> EntryState:
        """The state; a check counts if another person made it and the text is still the one checked.

        That is known from the seal, which ``words check-off`` writes: a mark without one does not count.
        """
        if not self.translation:
            return EntryState.MISSING
        if self.is_doubtful:
            return EntryState.DOUBTFUL
        marks = self.marks
        checked = marks.checked
        if checked is None or (marks.translated is not None and marks.translated.person == checked.person):
            return EntryState.TRANSLATED
        if checked.seal != seal(self.source, self.translation):
            return EntryState.TRANSLATED
        return EntryState.CHECKED


@dataclass(frozen=True, slots=True, kw_only=True)
class Catalogue:
    """The entries of one PO file in their order, its header, and the entries no longer used."""

    entries: tuple[Entry, ...] = ()
    header: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    header_comments: tuple[str, ...] = ()
    obsolete: tuple[Entry, ...] = ()
    closing_comments: tuple[str, ...] = ()

    @property
    def by_context(self) -> dict[str, Entry]:
        """The entries in use by their context."""
        return {entry.context: entry for entry in self.entries}


def catalogue_path(locales: Path, tag: str, kind: CatalogueKind) -> Path:
    """Where the catalogue of a locale lies."""
    return locales / tag / "LC_MESSAGES" / f"{kind}.po"


def template_path(locales: Path, kind: CatalogueKind) -> Path:
    """Where the template of all locales lies."""
    return locales / f"{kind}.pot"


def kinds_of(library: Library, tag: str) -> tuple[CatalogueKind, ...]:
    """The catalogues a locale needs: none for texts that are written in its own language.

    The source locale has no content catalogue; English has no interface catalogue.
    """
    needed: list[CatalogueKind] = []
    if tag != library.source_locale:
        needed.append(CatalogueKind.CONTENT)
    if language_of(tag) != INTERFACE_LANGUAGE:
        needed.append(CatalogueKind.INTERFACE)
    return tuple(needed)


def is_lossy(problem: Problem) -> bool:
    """Whether a problem is a fault of a file by which a text could be lost or changed."""
    return problem.code.startswith("PO-") and problem.severity is Severity.S1


def refuse_lossy(problems: Sequence[Problem]) -> None:
    """Raise UnreadableInputError if a fault of a file could lose or change a text; lesser ones pass."""
    if any(is_lossy(problem) for problem in problems):
        raise UnreadableInputError(problems)
