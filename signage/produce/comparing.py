"""Two states of a library opened, looked at and compared."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from signage.control.comparison.comparison import Comparison, changed_sheets, compare
from signage.control.comparison.edition import Edition
from signage.ground.errors import UnreadableInputError
from signage.ground.kept import Kept
from signage.ground.problem import Problem
from signage.load.file_text import shown_path
from signage.model.copies import CopyState
from signage.model.messages import contexts_of_protocol
from signage.produce.check import Progress, look_at_all, standing_problems
from signage.produce.kept import KeptResults
from signage.produce.release import Releases
from signage.produce.requests import SheetRequest, Wanted, requests_for
from signage.project import Project, open_project
from signage.words.coverage import counted_problems

_MISSING = "WD-1"


@dataclass(frozen=True)
class Side:
    """A library to compare. ``label`` replaces its folder in messages where that is a passing one."""

    name: str
    content: Path
    locales: Path
    label: str = ""

    def told(self, problems: Iterable[Problem]) -> tuple[Problem, ...]:
        """Problems as the person knows their places."""
        if not self.label:
            return tuple(problems)
        folder = shown_path(self.content.parent)
        return tuple(
            replace(
                each,
                place=replace(each.place, path=each.place.path.replace(folder, self.label)),
                message=each.message.replace(folder, self.label),
                hint=each.hint.replace(folder, self.label),
            )
            for each in problems
        )


@dataclass(frozen=True)
class Compared:
    """A comparison with the projects that it is about, for those who draw it."""

    comparison: Comparison
    old: Project
    new: Project


def compare_sides(
    sides: tuple[Side, Side],
    kept: Kept,
    today: date,
    states: Sequence[CopyState] = (),
    progress: Progress | None = None,
) -> Compared:
    """Compare two libraries. Sheets are looked at where their content differs, with every rule."""
    opened = [_Opened.of(side, kept, today) for side in sides]
    keys = changed_sheets(opened[0].edition, opened[1].edition)
    old, new = (replace(each.edition, findings=each.findings(keys, progress)) for each in opened)
    return Compared(compare(old, new, states), opened[0].project, opened[1].project)


@dataclass(frozen=True)
class _Opened:
    """A side with its project, and what is known of it before its sheets are looked at."""

    side: Side
    project: Project
    releases: Releases
    results: KeptResults
    today: date
    edition: Edition

    @classmethod
    def of(cls, side: Side, kept: Kept, today: date) -> _Opened:
        """Open a side. Raises UnreadableInputError whose places name it."""
        try:
            project = open_project(side.content, side.locales, kept)
            results = KeptResults(project)
            releases = Releases(project, today, results)
            return cls(side, project, releases, results, today, edition_of(releases, project, side.name))
        except UnreadableInputError as unreadable:
            raise UnreadableInputError(side.told(unreadable.problems)) from unreadable

    def findings(self, keys: Collection[tuple[str, str]], progress: Progress | None) -> tuple[Problem, ...]:
        """Of words, content and orders, and of the sheets of the protocols and languages in ``keys``."""
        project, releases = self.project, self.releases
        words = counted_problems(project.library, project.messages, releases.words_problems)
        drawn = look_at_all(self.results, self._requests(keys), progress)
        found = standing_problems(project, self.today, releases, [*words, *drawn.problems])
        return self.side.told(found)

    def _requests(self, keys: Collection[tuple[str, str]]) -> tuple[SheetRequest, ...]:
        library = self.project.library
        return tuple(
            request
            for protocol, tag in keys
            if protocol in library.protocols and tag in library.locales
            if self.releases.of(protocol, tag).is_worded
            for request in requests_for(self.project, Wanted(protocols=(protocol,), locales=(tag,)))
        )


def edition_of(releases: Releases, project: Project, name: str) -> Edition:
    """A project as a side of a comparison, without findings."""
    library = project.library
    protocols = library.protocols.values()
    words = {tag: project.wording(tag).texts for tag in library.locales}
    return Edition(
        name=name,
        library=library,
        words=words,
        missing={tag: _missing(releases.words_problems(tag)) for tag in words},
        contexts={each.id: contexts_of_protocol(each, project.messages) for each in protocols},
        contents={each.id: project.content_of(each) for each in protocols},
        hashes={(each.id, tag): project.content_hash(each, tag) for each in protocols for tag in words},
        pictures=project.picture_fingerprints,
    )


def _missing(problems: Iterable[Problem]) -> frozenset[str]:
    return frozenset(each.text for each in problems if each.code == _MISSING and each.text)
