"""What earlier runs made and found, where it was made from exactly the same."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, replace

from signage.compose.proof import Faulty
from signage.control.binding import ShownOnSheet
from signage.drawing.marks import Sheet
from signage.ground.kept import Kept
from signage.ground.place import Place
from signage.ground.problem import Problem, problem_from_json
from signage.model.mark import Mark
from signage.pages.publication import Publication
from signage.produce.fingerprints import Fingerprints
from signage.produce.requests import SheetRequest
from signage.project import Project
from signage.words.coverage import locale_problems

NO_FAULTS = Faulty()


@dataclass(frozen=True)
class SheetFacts:
    """What is told of a composed sheet, beside what was found on it."""

    file_stem: str
    kind: str
    pages: int
    revision: str
    mark: Mark

    @classmethod
    def of(cls, sheet: Sheet) -> SheetFacts:
        """The facts of a sheet."""
        return cls(sheet.file_stem, sheet.kind, len(sheet.pages), sheet.revision, Mark(sheet.mark))


class KeptResults:
    """The results of a project, by what they are made from; what is not kept is None.

    What may be printed is never among them: it is decided in every run.
    """

    def __init__(self, project: Project, kept: Kept | None = None) -> None:
        self.project = project
        self.kept = kept or project.picture_set.kept
        self._fingerprints = Fingerprints(project)
        self._words: dict[str, tuple[Problem, ...]] = {}

    def words_problems(self, tag: str) -> tuple[Problem, ...]:
        """Every fault of the words of a language."""
        if tag not in self._words:
            self._words[tag] = self._words_problems(tag)
        return self._words[tag]

    def _words_problems(self, tag: str) -> tuple[Problem, ...]:
        project = self.project

        def find() -> Iterable[Problem]:
            return locale_problems(project.library, project.messages, project.locales, tag, project.fonts)

        return (
            tuple(find()) if self.kept.folder is None else self._problems(self._fingerprints.words(tag), find)
        )

    def link_problems(
        self, links: Sequence[str], publication: Publication, find: Callable[[], Iterable[Problem]]
    ) -> tuple[Problem, ...]:
        """The codes of a language that lead nowhere."""
        if self.kept.folder is None:
            return tuple(find())
        return self._problems(self._fingerprints.pages(("links", *links), publication), find)

    def picture_problems(self, name: str) -> tuple[Problem, ...] | None:
        """The findings on a picture, where they are kept."""
        return None if self.kept.folder is None else self._known(self._fingerprints.picture(name))

    def keep_picture_problems(self, name: str, found: Iterable[Problem]) -> None:
        """Keep the findings on a picture."""
        if self.kept.folder is not None:
            self.kept.keep_json(self._fingerprints.picture(name), [each.as_json() for each in found])

    def sheet_problems(self, request: SheetRequest) -> tuple[Problem, ...] | None:
        """All findings on the draft of a request, where they are kept."""
        return self._sheet_problems(request, Mark.DRAFT, NO_FAULTS, "all")

    def keep_sheet_problems(self, request: SheetRequest, found: Iterable[Problem]) -> None:
        """Keep all findings on the draft of a request."""
        self._keep_sheet_problems(request, Mark.DRAFT, NO_FAULTS, "all", found)

    def _sheet_problems(
        self, request: SheetRequest, mark: Mark, faulty: Faulty, which: str
    ) -> tuple[Problem, ...] | None:
        key = self._verdict(request, mark, faulty, which)
        found = None if key is None else self._known(key)
        return None if found is None else tuple(self._placed(each, request) for each in found)

    def _keep_sheet_problems(
        self, request: SheetRequest, mark: Mark, faulty: Faulty, which: str, found: Iterable[Problem]
    ) -> None:
        key = self._verdict(request, mark, faulty, which)
        if key is not None:
            self.kept.keep_json(key, [each.as_json() for each in found])

    def grave_problems(self, request: SheetRequest, mark: Mark, faulty: Faulty) -> tuple[Problem, ...] | None:
        """What was found on a sheet that can hurt, where it is kept."""
        return self._sheet_problems(request, mark, faulty, "grave")

    def keep_grave_problems(
        self, request: SheetRequest, mark: Mark, faulty: Faulty, found: Iterable[Problem]
    ) -> None:
        """Keep what was found on a sheet that can hurt."""
        self._keep_sheet_problems(request, mark, faulty, "grave", found)

    def released(self, request: SheetRequest, mark: Mark) -> tuple[tuple[Problem, ...], ShownOnSheet] | None:
        """What was found on a released sheet beside what can hurt, and what it shows, where they are kept."""
        found = self._sheet_problems(request, mark, NO_FAULTS, "lesser")
        key = self._verdict(request, mark, NO_FAULTS, "shown")
        value = None if key is None else self.kept.find_json(key)
        try:
            return None if found is None or value is None else (found, ShownOnSheet.from_json(value))
        except (KeyError, TypeError, ValueError):
            return None

    def keep_released(
        self, request: SheetRequest, mark: Mark, found: Iterable[Problem], shown: ShownOnSheet
    ) -> None:
        """Keep what was found on a released sheet beside what can hurt, and what it shows."""
        self._keep_sheet_problems(request, mark, NO_FAULTS, "lesser", found)
        key = self._verdict(request, mark, NO_FAULTS, "shown")
        if key is not None:
            self.kept.keep_json(key, shown.as_json())

    def sheet_facts(self, request: SheetRequest, mark: Mark, faulty: Faulty) -> SheetFacts | None:
        """What is told of a sheet, where it is kept."""
        key = self._verdict(request, mark, faulty, "facts")
        value = None if key is None else self.kept.find_json(key)
        try:
            return None if value is None else SheetFacts(**{**value, "mark": Mark(value["mark"])})
        except (KeyError, TypeError, ValueError):
            return None

    def keep_sheet_facts(self, request: SheetRequest, mark: Mark, faulty: Faulty, facts: SheetFacts) -> None:
        """Keep what is told of a sheet."""
        key = self._verdict(request, mark, faulty, "facts")
        if key is not None:
            self.kept.keep_json(key, asdict(facts))

    def painted(
        self, request: SheetRequest, mark: Mark, faulty: Faulty, what: str, make: Callable[[], bytes]
    ) -> bytes:
        """What is painted of a sheet, from an earlier run or made now."""
        sheet = self._sheet(request, mark, faulty)
        return make() if sheet is None else self.kept.made_once(self._fingerprints.painted(sheet, what), make)

    def painted_files(
        self,
        request: SheetRequest,
        mark: Mark,
        faulty: Faulty,
        what: str,
        make: Callable[[], Mapping[str, bytes]],
    ) -> Mapping[str, bytes]:
        """Several files that are painted of a sheet, from an earlier run or made now."""
        sheet = self._sheet(request, mark, faulty)
        return make() if sheet is None else self._files(self._fingerprints.painted(sheet, what), make)

    def page_files(
        self, about: Sequence[str], publication: Publication, make: Callable[[], Mapping[str, bytes]]
    ) -> Mapping[str, bytes]:
        """Files of the training site, from an earlier run or made now."""
        if self.kept.folder is None:
            return make()
        return self._files(self._fingerprints.pages(about, publication), make)

    def _files(self, key: str, make: Callable[[], Mapping[str, bytes]]) -> Mapping[str, bytes]:
        return _unpacked(self.kept.made_once(key, lambda: _packed(make())))

    def _problems(self, key: str, find: Callable[[], Iterable[Problem]]) -> tuple[Problem, ...]:
        known = self._known(key)
        if known is None:
            known = tuple(find())
            self.kept.keep_json(key, [each.as_json() for each in known])
        return known

    def _known(self, key: str) -> tuple[Problem, ...] | None:
        value = self.kept.find_json(key)
        try:
            return None if value is None else tuple(problem_from_json(each) for each in value)
        except (KeyError, TypeError, ValueError):
            return None

    def _verdict(self, request: SheetRequest, mark: Mark, faulty: Faulty, which: str) -> str | None:
        sheet = self._sheet(request, mark, faulty)
        return None if sheet is None else self._fingerprints.verdict(sheet, which)

    def _sheet(self, request: SheetRequest, mark: Mark, faulty: Faulty) -> str | None:
        """The fingerprint of a sheet; None where nothing is kept.

        A kind from outside the programme is composed by code that no fingerprint knows.
        """
        compose = self.project.kinds.of(request.kind).compose
        if self.kept.folder is None or not compose.__module__.startswith("signage."):
            return None
        return self._fingerprints.sheet(request, mark, faulty)

    def _placed(self, problem: Problem, request: SheetRequest) -> Problem:
        """The finding where its text, its step or its protocol stands now."""
        protocol = self.project.library.protocols.get(request.protocol)
        if protocol is None:
            return problem
        place = self.project.wording(request.locale).place_of(problem.text) if problem.text else Place("")
        step = next((step for step in protocol.steps if step.id == problem.step), protocol)
        return replace(problem, place=place if place.path else step.place)


def _packed(files: Mapping[str, bytes]) -> bytes:
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as archive:
        for name, data in files.items():
            archive.writestr(zipfile.ZipInfo(name), data)
    return target.getvalue()


def _unpacked(data: bytes) -> dict[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        return {name: archive.read(name) for name in archive.namelist()}
