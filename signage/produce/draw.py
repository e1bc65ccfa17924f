"""Drawing: each document is decided on, composed, looked at, painted and written whole or not at all."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from signage.check.blockers import reasons_not_to_print
from signage.check.registry import all_sheet_rules
from signage.check.rule import SheetSubject
from signage.drawing.marks import Sheet
from signage.ground.errors import SignageError
from signage.ground.files import write_whole
from signage.ground.problem import Problem, Severity
from signage.model.mark import Mark
from signage.produce.release import Release, Releases
from signage.produce.requests import SheetRequest, compose_request, context_of, order_of
from signage.produce.workers import work_through
from signage.project import Project

_OBSTACLES = frozenset({"SH-1", "SH-2"})
"""Rules about text that cannot be printed as it is; ``reasons_not_to_print`` tells of it in full."""


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
            "copies": 1,
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
    """The sheet as what is to be printed of it, None where it is refused, and all that was found.

    What is found on the sheet itself counts as well: a sheet may be composed twice, first as a draft to be
    looked at, then as the proof that shows its faults.
    """
    release = job.release
    mark = release.decision.granted(wants_proof=job.wants_proof)
    sheet: Sheet | None = None
    if mark is not Mark.REFUSED:
        try:
            sheet = _compose(project, job.request, release, mark)
        except SignageError as refusal:
            release = release.with_sheet((), (str(refusal),))
        else:
            found, obstacles = findings_of(project, job.request, sheet, mark)
            if found or obstacles:
                release = release.with_sheet(found, obstacles)
                before, mark = mark, release.decision.granted(wants_proof=job.wants_proof)
                if mark is Mark.PROOF is not before:
                    sheet = _compose(project, job.request, release, mark)
    mark = release.decision.granted(wants_proof=job.wants_proof)
    return (None if mark is Mark.REFUSED else sheet), release


def _compose(project: Project, request: SheetRequest, release: Release, mark: Mark) -> Sheet:
    if mark is not Mark.PROOF:
        return compose_request(project, request, mark)
    return compose_request(project, request, mark, release.faulty)


def findings_of(
    project: Project, request: SheetRequest, sheet: Sheet, mark: Mark
) -> tuple[tuple[Problem, ...], tuple[str, ...]]:
    """What stands on the sheet and can hurt, and what keeps it from being printed at all."""
    obstacles = reasons_not_to_print(sheet, project.wording(request.locale))
    subject = SheetSubject(sheet, context_of(project, request, mark), project.kinds.of(sheet.kind))
    grave = [
        problem
        for each in all_sheet_rules()
        if each.rule.severity is Severity.S1 and each.rule.code not in _OBSTACLES
        for problem in each.find(subject)
    ]
    return tuple(grave), obstacles


def draw_job(project: Project, job: Job, output: Path) -> Drawn | Refused:
    """Compose, look, paint and write one document, with pictures of its pages where a resolution is given."""
    from signage.paint.pdf.document import paint_pdf  # noqa: PLC0415 - the PDF library is slow to load

    request = job.request
    sheet, release = composed_as(project, job)
    reasons = tuple(map(str, release.decision.reasons))
    if sheet is None:
        return Refused(request, reasons, release.decision.on_request)
    data = paint_pdf(sheet)
    path = output / request.locale / f"{sheet.file_stem}.pdf"
    write_whole(path, data)
    beside = [*_write_table(project, job, path), *_write_pictures(job, path, data)]
    return Drawn(
        path,
        request,
        sheet.kind,
        len(sheet.pages),
        sheet.revision,
        Mark(sheet.mark),
        reasons,
        hashlib.sha256(data).hexdigest(),
        can_hurt=sheet.mark == Mark.PROOF and release.has_grave_findings,
        has_faulty_words=sheet.mark == Mark.DRAFT and release.has_faulty_words,
        has_findings=sheet.mark == Mark.DRAFT and release.has_findings,
        beside=tuple(beside),
    )


def _write_pictures(job: Job, path: Path, data: bytes) -> Iterator[Path]:
    """A PNG of each page; the number has as many digits as the last one, so that files sort by page."""
    if not job.dots_per_inch:
        return
    from signage.paint.png import paint_png  # noqa: PLC0415 - only for pictures

    pictures = paint_png(data, job.dots_per_inch)
    digits = len(str(len(pictures)))
    for number, picture in enumerate(pictures, start=1):
        image = path.with_name(
            f"{path.stem}-{number:0{digits}}.png" if len(pictures) > 1 else f"{path.stem}.png"
        )
        write_whole(image, picture)
        yield image


def _write_table(project: Project, job: Job, path: Path) -> Iterator[Path]:
    """The table of a trial, and where pictures are wanted, one picture of all pictures."""
    kind = project.kinds.of(job.request.kind)
    if kind.table is not None:
        write_whole(path.with_suffix(".csv"), kind.table(order_of(project, job.request)).encode())
        yield path.with_suffix(".csv")
    if kind.gallery is not None and job.dots_per_inch:
        from signage.paint.gallery import paint_gallery  # noqa: PLC0415 - only for sheets about pictures

        gallery = path.with_name(f"{path.stem}-gallery.png")
        write_whole(gallery, paint_gallery(project.picture_set, kind.gallery(order_of(project, job.request))))
        yield gallery


def jobs_for(
    releases: Releases, requests: Sequence[SheetRequest], *, wants_proof: bool = False, dots_per_inch: int = 0
) -> list[Job]:
    """The requests with what has been decided on each protocol and language."""
    return [
        Job(request, releases.of(request.protocol, request.locale), wants_proof, dots_per_inch)
        for request in requests
    ]


def draw_all(
    project: Project, jobs: Sequence[Job], output: Path, workers: int | None = None
) -> Iterator[Drawn | Refused]:
    """Every document, in the order of the jobs; with several workers, on several processes."""
    yield from work_through(_draw, (project, output), jobs, workers)


def _draw(shared: tuple[Project, Path], job: Job) -> Drawn | Refused:
    project, output = shared
    return draw_job(project, job, output)
