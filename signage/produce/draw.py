"""Drawing: each document is decided on, composed, looked at, painted and written whole or not at all."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from signage.drawing.marks import Sheet
from signage.ground.files import write_changed
from signage.model.mark import Mark
from signage.pictograms.picture import NOTHING_KEPT
from signage.produce.kept import KeptResults
from signage.produce.making import Making, NotKeptError, Outcome
from signage.produce.release import Release, Releases
from signage.produce.requests import SheetRequest, order_of
from signage.produce.signed_facts import remember_head
from signage.produce.workers import work_through
from signage.project import Project


@dataclass(frozen=True)
class Drawn:
    """A written document. ``reasons`` are why it is not released."""

    path: Path
    request: SheetRequest
    sheet_kind: str
    pages: int
    revision: str
    mark: Mark
    reasons: tuple[str, ...]
    sha256: str
    can_hurt: bool = False
    """Whether it is a proof of an order, or of words, that must not be followed."""
    has_faulty_words: bool = False
    """Whether words that nobody has accepted may say something else than the source."""

    has_findings: bool = False
    """Whether it is a draft because of findings that nobody has accepted; the reasons are these."""
    beside: tuple[Path, ...] = ()
    """Pictures of its pages, and tables."""

    is_kept: bool = False
    """Whether an earlier run made it from exactly the same."""

    def as_json(self) -> dict[str, Any]:
        """The fields of the contract."""
        return {
            "path": self.path.as_posix(),
            "kind": self.sheet_kind,
            "protocol": self.request.protocol or None,
            "locale": self.request.locale,
            "pages": self.pages,
            "paper": self.request.paper,
            "revision": self.revision,
            "mark": self.mark.value,
            "reasons": list(self.reasons),
            "copies": len(self.request.copies) or 1,
            "numbers": list(self.request.copies),
            "sha256": self.sha256,
        }


@dataclass(frozen=True)
class Refused:
    """A document that was not written, and why; ``on_request`` is what a person who asks for a proof gets."""

    request: SheetRequest
    reasons: tuple[str, ...]
    on_request: Mark = Mark.REFUSED

    @property
    def kind(self) -> str:
        """The kind of sheet, with the phase of a poster."""
        return f"{self.request.kind} {self.request.part}".strip()

    @property
    def why(self) -> str:
        """All reasons in one sentence after another."""
        return " ".join(self.reasons)

    def as_json(self) -> dict[str, Any]:
        """The fields of the contract."""
        return {
            "kind": self.kind,
            "protocol": self.request.protocol or None,
            "locale": self.request.locale,
            "paper": self.request.paper,
            "why": self.why,
        }


@dataclass(frozen=True)
class Job:
    """One document to make: what may be printed of it, and whether a proof will do."""

    request: SheetRequest
    release: Release
    wants_proof: bool = False
    dots_per_inch: int = 0


def composed_as(project: Project, job: Job) -> tuple[Sheet | None, Release]:
    """The sheet as what is to be printed of it, None where it is refused, and all that was found."""
    making = Making(KeptResults(project), job.request)
    outcome = making.outcome(job.release, wants_proof=job.wants_proof)
    sheet = None if outcome.facts is None else making.sheet(outcome.mark, outcome.faulty)
    return sheet, outcome.release


def draw_job(
    project: Project, job: Job, output: Path, results: KeptResults | None = None, *, may_compose: bool = True
) -> Drawn | Refused:
    """Compose, look, paint and write one document, with pictures of its pages where a resolution is given.

    Raises NotKeptError where a sheet would have to be composed and may not be.
    """
    results = results or KeptResults(project)
    if job.request.copies:  # none is ever made again
        results = KeptResults(project, NOTHING_KEPT)
    making = Making(results, job.request, may_compose=may_compose)
    outcome = making.outcome(job.release, wants_proof=job.wants_proof)
    release, facts = outcome.release, outcome.facts
    reasons = tuple(map(str, release.decision.reasons))
    if facts is None:
        return Refused(job.request, reasons, release.decision.on_request)
    data = making.pdf(outcome.mark, outcome.faulty)
    path = output / job.request.locale / f"{facts.file_stem}.pdf"
    beside = dict(_tables(project, job, path))
    if job.dots_per_inch:
        beside |= _pictures(making, job, outcome, path, data)
    for file, written in {path: data, **beside}.items():
        write_changed(file, written)
    return Drawn(
        path,
        job.request,
        facts.kind,
        facts.pages,
        facts.revision,
        facts.mark,
        reasons,
        hashlib.sha256(data).hexdigest(),
        can_hurt=facts.mark is Mark.PROOF and release.has_grave_findings,
        has_faulty_words=facts.mark is Mark.DRAFT and release.has_faulty_words,
        has_findings=facts.mark is Mark.DRAFT and release.has_findings,
        beside=tuple(beside),
        is_kept=not may_compose,
    )


def _tables(project: Project, job: Job, path: Path) -> Iterator[tuple[Path, bytes]]:
    """The table that some kinds have beside them."""
    kind = project.kinds.of(job.request.kind)
    if kind.table is not None:
        yield path.with_suffix(".csv"), kind.table(order_of(project, job.request)).encode()


def _pictures(making: Making, job: Job, outcome: Outcome, path: Path, data: bytes) -> Mapping[Path, bytes]:
    """A PNG of each page, and of kinds about pictures one of them all."""

    def make() -> Mapping[str, bytes]:
        return dict(_painted_pictures(making.project, job, data))

    made = making.files(f"png {job.dots_per_inch}", outcome, make)
    return {path.with_name(f"{path.stem}{ending}"): picture for ending, picture in made.items()}


def _painted_pictures(project: Project, job: Job, data: bytes) -> Iterator[tuple[str, bytes]]:
    """By the ending of the file; a number has as many digits as the last one, so that files sort by page."""
    from signage.paint.png import paint_png  # noqa: PLC0415 - only for pictures

    pictures = paint_png(data, job.dots_per_inch)
    digits = len(str(len(pictures)))
    for number, picture in enumerate(pictures, start=1):
        yield (f"-{number:0{digits}}.png" if len(pictures) > 1 else ".png"), picture
    kind = project.kinds.of(job.request.kind)
    if kind.gallery is not None:
        from signage.paint.gallery import paint_gallery  # noqa: PLC0415 - only for sheets about pictures

        names = kind.gallery(order_of(project, job.request))
        yield "-gallery.png", paint_gallery(project.picture_set, names)


def jobs_for(
    releases: Releases, requests: Sequence[SheetRequest], *, wants_proof: bool = False, dots_per_inch: int = 0
) -> list[Job]:
    """The requests with what has been decided on each protocol and language."""
    return [
        Job(request, releases.of(request.protocol, request.locale), wants_proof, dots_per_inch)
        for request in requests
    ]


def draw_all(
    project: Project,
    jobs: Sequence[Job],
    output: Path,
    results: KeptResults | None = None,
    workers: int | None = None,
) -> Iterator[Drawn | Refused]:
    """Every document, in the order of the jobs; what has to be composed, on all processors."""
    results = results or KeptResults(project)
    remember_head(project)
    known = [_from_kept(results, job, output) for job in jobs]
    missing = [job for job, outcome in zip(jobs, known, strict=True) if outcome is None]
    made = work_through(_draw, (results, output), missing, workers)
    for outcome in known:
        yield next(made) if outcome is None else outcome


def _from_kept(results: KeptResults, job: Job, output: Path) -> Drawn | Refused | None:
    """The outcome of a job of which nothing needs to be composed, else None."""
    try:
        return draw_job(results.project, job, output, results, may_compose=False)
    except NotKeptError:
        return None


def _draw(shared: tuple[KeptResults, Path], job: Job) -> Drawn | Refused:
    results, output = shared
    return draw_job(results.project, job, output, results)
