"""One document on its way: composed and looked at, or taken from an earlier run, until it is decided."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from signage.check.blockers import reasons_not_to_print
from signage.check.registry import all_sheet_rules
from signage.check.rule import SheetSubject
from signage.compose.proof import Faulty
from signage.control.binding import ShownOnSheet, losses, shown_on
from signage.control.waiving import beyond_rehearsal, excuse
from signage.drawing.marks import Sheet
from signage.ground.errors import SignageError
from signage.ground.problem import Problem, Severity
from signage.model.mark import Mark
from signage.produce.kept import NO_FAULTS, KeptResults, SheetFacts
from signage.produce.release import Release
from signage.produce.requests import SheetRequest, bound_copies, compose_request, context_of
from signage.project import Project

_OBSTACLES = frozenset({"SH-1", "SH-2"})
"""Rules about text that cannot be printed as it is; ``reasons_not_to_print`` tells of it in full."""


_MOST_LOSSES = 3


class NotKeptError(Exception):
    """A sheet would have to be composed."""


@dataclass(frozen=True)
class Outcome:
    """What is to be printed of a document, and all that was found; no facts where it is refused.

    ``mark`` and ``faulty`` are those that it is composed with.
    """

    facts: SheetFacts | None
    mark: Mark
    faulty: Faulty
    release: Release


class Making:
    """The making of one document. ``may_compose`` is False where only kept results will do.

    Then every method raises NotKeptError for what is not kept.
    """

    def __init__(self, results: KeptResults, request: SheetRequest, *, may_compose: bool = True) -> None:
        self._results = results
        self._request = request
        self._may_compose = may_compose
        self._sheets: dict[tuple[Mark, Faulty], Sheet] = {}
        self._copies = tuple(
            Making(results, replace(request, copies=(number,)), may_compose=may_compose)
            for number in (request.copies if len(request.copies) > 1 else ())
        )

    @property
    def project(self) -> Project:
        """The project that the document belongs to."""
        return self._results.project

    def outcome(self, release: Release, *, wants_proof: bool = False) -> Outcome:
        """Decide with what is found on the sheet itself.

        A sheet may be composed twice: as what it would be, to be looked at, then as the draft or the proof
        that it is. What nobody has accepted, and what it showed when it was signed, is asked only where it
        would else be released.
        """
        mark = release.decision.granted(wants_proof=wants_proof)
        faulty = release.faulty if mark is Mark.PROOF else NO_FAULTS
        if mark is Mark.REFUSED:
            return Outcome(None, mark, faulty, release)
        try:
            found, obstacles = self._found(mark, faulty)
        except SignageError as refusal:
            found, obstacles = (), (str(refusal),)
        if found or obstacles:
            release = release.with_sheet(found, obstacles)
            before, mark = mark, release.decision.granted(wants_proof=wants_proof)
            if mark is Mark.REFUSED:
                return Outcome(None, mark, faulty, release)
            if mark is not before:
                faulty = release.faulty if mark is Mark.PROOF else NO_FAULTS
        if mark.is_released:
            release = self._looked_at_again(release, mark)
            mark = release.decision.mark
        return Outcome(self._facts(mark, faulty), mark, faulty, release)

    def sheet(self, mark: Mark, faulty: Faulty) -> Sheet:
        """The composed sheet. Raises RefusedError where a text is missing or does not fit."""
        if (mark, faulty) not in self._sheets:
            if not self._may_compose:
                raise NotKeptError
            self._sheets[mark, faulty] = self._composed(mark, faulty)
        return self._sheets[mark, faulty]

    def _composed(self, mark: Mark, faulty: Faulty) -> Sheet:
        if self._copies:
            sheets = [each.sheet(mark, faulty) for each in self._copies]
            return bound_copies(sheets, self._request.copies)
        return compose_request(self.project, self._request, mark, faulty)

    def pdf(self, mark: Mark, faulty: Faulty) -> bytes:
        """The painted sheet."""
        from signage.paint.pdf.document import paint_pdf  # noqa: PLC0415 - the PDF library is slow to load

        return self._results.painted(
            self._request, mark, faulty, "pdf", lambda: paint_pdf(self.sheet(mark, faulty))
        )

    def files(
        self, what: str, outcome: Outcome, make: Callable[[], Mapping[str, bytes]]
    ) -> Mapping[str, bytes]:
        """Several files that are painted of the sheet, such as pictures of its pages."""

        def make_now() -> Mapping[str, bytes]:
            if not self._may_compose:
                raise NotKeptError
            return make()

        return self._results.painted_files(self._request, outcome.mark, outcome.faulty, what, make_now)

    def _found(self, mark: Mark, faulty: Faulty) -> tuple[tuple[Problem, ...], tuple[str, ...]]:
        """What can hurt, and obstacles; these name places, so a sheet with one is looked at in every run."""
        if self._copies:
            found = [each._found(mark, faulty) for each in self._copies]  # noqa: SLF001 - of the same class
            return tuple(p for each, _ in found for p in each), tuple(o for _, each in found for o in each)
        kept = self._results.grave_problems(self._request, mark, faulty)
        if kept is not None:
            return kept, ()
        sheet = self.sheet(mark, faulty)
        grave, obstacles = findings_of(self._results.project, self._request, sheet, mark)
        if not obstacles:
            self._results.keep_grave_problems(self._request, mark, faulty, grave)
        return grave, obstacles

    def _looked_at_again(self, release: Release, mark: Mark) -> Release:
        """With the lesser findings of the sheet that nobody has accepted, and what it no longer shows."""
        kept = self._results.released(self._request, mark)
        if kept is None:
            sheet = self.sheet(mark, NO_FAULTS)
            kept = lesser_findings_of(self.project, self._request, sheet, mark), shown_on(sheet)
            self._results.keep_released(self._request, mark, *kept)
        found, shown = kept
        waivers = beyond_rehearsal(self.project.library.waivers)
        standing = excuse(found, waivers, release.facts.today).standing
        return release.with_sheet(standing, (), tuple(_losses(release, self._request, shown)))

    def _facts(self, mark: Mark, faulty: Faulty) -> SheetFacts:
        facts = self._results.sheet_facts(self._request, mark, faulty)
        if facts is None:
            facts = SheetFacts.of(self.sheet(mark, faulty))
            self._results.keep_sheet_facts(self._request, mark, faulty, facts)
        return facts


def findings_of(
    project: Project, request: SheetRequest, sheet: Sheet, mark: Mark
) -> tuple[tuple[Problem, ...], tuple[str, ...]]:
    """What stands on the sheet and can hurt, and what keeps it from being printed at all."""
    obstacles = reasons_not_to_print(sheet, project.wording(request.locale))
    return _found_by(Severity.S1, project, request, sheet, mark), obstacles


def lesser_findings_of(
    project: Project, request: SheetRequest, sheet: Sheet, mark: Mark
) -> tuple[Problem, ...]:
    """What stands on the sheet against approval and cannot hurt."""
    return _found_by(Severity.S2, project, request, sheet, mark)


def _found_by(
    severity: Severity, project: Project, request: SheetRequest, sheet: Sheet, mark: Mark
) -> tuple[Problem, ...]:
    subject = SheetSubject(sheet, context_of(project, request, mark), project.kinds.of(sheet.kind))
    return tuple(
        problem
        for each in all_sheet_rules()
        if each.rule.severity is severity and each.rule.code not in _OBSTACLES
        for problem in each.find(subject)
    )


def name_in_binding(kind: str, part: str) -> str:
    """How what is signed names a kind of sheet and its phase."""
    return f"{kind} {part}".strip()


def _losses(release: Release, request: SheetRequest, shown: ShownOnSheet) -> Iterator[str]:
    """What the sheet showed when its words were signed and shows no longer, in one sentence."""
    name = name_in_binding(request.kind, request.part)
    signed = release.signed.sheets.get(name) if release.signed else None
    if signed is None:
        yield f"The sheet '{name}' was not there when the words in {request.locale} were signed. Sign again."
        return
    lost = tuple(losses(signed, shown))
    if lost:
        more = f"; and {len(lost) - _MOST_LOSSES} more" if len(lost) > _MOST_LOSSES else ""
        told = "; ".join(lost[:_MOST_LOSSES])
        yield f"The sheet '{name}' no longer shows what was signed: {told}{more}."
