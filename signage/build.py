"""The order of the stages: load, words, compose, impose, paint. The only place that knows it."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from signage.compose.context import SheetContext
from signage.compose.hand_poster import compose_hand_poster
from signage.compose.papers import Paper, paper_of
from signage.compose.picture_documents import (
    PICTURE_KINDS,
    compose_pictures,
    picture_papers,
    table_beside,
)
from signage.compose.pocket import compose_pocket
from signage.compose.poster import compose_poster
from signage.compose.step_card import compose_step_cards
from signage.compose.theme import Tone
from signage.drawing.marks import Sheet
from signage.ground.errors import RefusedError, SignageError
from signage.ground.files import write_whole
from signage.ground.problem import Severity
from signage.impose.fold import fold_eight
from signage.impose.n_up import four_up
from signage.model.library import LocaleState, Phase, Protocol
from signage.project import Project, open_project
from signage.words.wording import Wording

SHEET_KINDS = ("poster", "step-cards", "pocket-checklist")
CARD_PAPERS = ("A4", "Letter")
"""Papers that a person cuts and folds."""

SMALLEST_POSTER_MM = 200.0
"""Posters on papers with a shorter side are made only when somebody asks for them."""


@dataclass(frozen=True, order=True)
class SheetRequest:
    """One document to make. ``phase`` is empty for sheets of a whole protocol, both for all pictures."""

    protocol: str
    locale: str
    kind: str
    phase: str
    paper: str
    tone: str = Tone.COLOUR.value
    seed: int = 0


@dataclass(frozen=True)
class Wanted:
    """What the person asked for; empty means everything."""

    protocols: tuple[str, ...] = ()
    locales: tuple[str, ...] = ()
    kinds: tuple[str, ...] = ()
    papers: tuple[str, ...] = ()
    tone: Tone = Tone.COLOUR
    seed: int = 1


def requests_for(project: Project, wanted: Wanted) -> tuple[SheetRequest, ...]:
    """The documents to make, by locale and protocol, in a stable order."""
    library = project.library
    protocols = wanted.protocols or tuple(library.protocols)
    locales = wanted.locales or project.locales_in_use
    kinds = wanted.kinds or SHEET_KINDS
    papers = wanted.papers or library.papers
    cut = tuple(paper for paper in papers if paper in CARD_PAPERS)
    if not wanted.papers and not cut:
        cut = CARD_PAPERS[:1]
    found: list[SheetRequest] = []
    for locale in locales:
        for name in protocols:
            protocol = library.protocols[name]
            if "poster" in kinds:
                found += [
                    SheetRequest(name, locale, "poster", phase.id, paper, wanted.tone.value)
                    for phase in protocol.phases
                    for paper in papers
                    if paper_of(paper).short_side >= SMALLEST_POSTER_MM or wanted.kinds
                ]
            if "step-cards" in kinds:
                card_papers = wanted.papers or ("A6", *cut)
                found += [
                    SheetRequest(name, locale, "step-cards", "", paper, wanted.tone.value)
                    for paper in card_papers
                    if paper in {"A6", *CARD_PAPERS}
                ]
            if "pocket-checklist" in kinds:
                found += [
                    SheetRequest(name, locale, "pocket-checklist", "", paper, wanted.tone.value)
                    for paper in cut
                ]
        for kind in PICTURE_KINDS:
            if kind in kinds:
                found += [
                    SheetRequest(name, locale, kind, "", paper, wanted.tone.value, wanted.seed)
                    for name in wanted.protocols or ("",)
                    for paper in picture_papers(wanted.papers)
                ]
    return tuple(found)


def compose_request(project: Project, request: SheetRequest) -> Sheet:
    """Compose and impose one document; raises RefusedError where it must not be printed."""
    library = project.library
    locale = library.locales.get(request.locale)
    if locale is not None and locale.state is LocaleState.IN_WORK:
        raise RefusedError(
            f"{request.locale} is still in work: it is printed as a proof only. "
            f"Finish its words and set its state to in-use in library.yaml."
        )
    if request.kind in PICTURE_KINDS:
        pictures = project.picture_context(request.protocol, request.locale, Tone(request.tone))
        sheet = compose_pictures(pictures, request.kind, paper_of(request.paper), request.seed)
    else:
        protocol = library.protocols[request.protocol]
        context = project.context(protocol, request.locale, Tone(request.tone))
        if not context.is_draft:
            _refuse_unsafe_release(project, protocol)
        sheet = _compose(context, request)
    stem = f"{sheet.file_stem}-{request.paper.lower()}"
    if request.tone != Tone.COLOUR:
        stem += f"-{request.tone}"
    return replace(sheet, file_stem=stem)


def _refuse_unsafe_release(project: Project, protocol: Protocol) -> None:
    """An S1 of the rehearsal, which nobody can waive, blocks whatever is no draft."""
    grave = [f for f in project.study(protocol).findings if f.severity is Severity.S1]
    if grave:
        found = "; ".join(f"{finding.code} in step {finding.step or 'none'}" for finding in grave)
        raise RefusedError(
            f"The rehearsal of {protocol.code} finds what can hurt ({found}): only drafts are printed. "
            f"'signage rehearse {protocol.code}' tells more."
        )


def _compose(context: SheetContext, request: SheetRequest) -> Sheet:
    paper = paper_of(request.paper)
    if request.kind == "poster":
        phase = _phase(context.protocol, request.phase)
        is_hands = phase.layout == "hand-technique"
        return (compose_hand_poster if is_hands else compose_poster)(context, phase, paper)
    if request.kind == "step-cards":
        return _step_cards(context, paper)
    landscape = paper if paper.is_landscape else paper.turned()
    panels = compose_pocket(context, landscape.width / 4, landscape.height / 2)
    return fold_eight(panels, landscape.width, landscape.height, request.paper)


def _step_cards(context: SheetContext, paper: Paper) -> Sheet:
    if paper.name == "A6":
        return compose_step_cards(context)
    upright = paper.turned() if paper.is_landscape else paper
    height = min(148.0, upright.height / 2)
    cards = compose_step_cards(context, min(105.0, upright.width / 2), height)
    return four_up(cards, upright.width, upright.height, paper.name)


def _phase(protocol: Protocol, name: str) -> Phase:
    return next(phase for phase in protocol.phases if phase.id == name)


@dataclass(frozen=True)
class Drawn:
    """A written document."""

    path: Path
    sheet_kind: str
    protocol: str
    locale: str
    pages: int
    paper: str
    revision: str
    is_draft: bool
    sha256: str
    images: tuple[Path, ...] = ()
    fitted: int = 0

    def as_json(self) -> dict[str, str | int | bool | None]:
        """The fields of the contract."""
        return {
            "path": self.path.as_posix(),
            "kind": self.sheet_kind,
            "protocol": self.protocol or None,
            "locale": self.locale,
            "pages": self.pages,
            "paper": self.paper,
            "revision": self.revision,
            "draft": self.is_draft,
            "sha256": self.sha256,
        }


@dataclass(frozen=True)
class Refused:
    """A document that was not written, and why."""

    kind: str
    protocol: str
    locale: str
    why: str

    def as_json(self) -> dict[str, str | None]:
        """The fields of the contract."""
        return {"kind": self.kind, "protocol": self.protocol or None, "locale": self.locale, "why": self.why}


Finding = Callable[[Sheet, Wording], Sequence[str]]
"""Looks at a composed sheet and says why it must not be printed, with the places of its words."""


def draw_request(
    project: Project, request: SheetRequest, output: Path, blockers: Finding, dots_per_inch: int = 0
) -> Drawn | Refused:
    """Compose, look, paint and write one document, with pictures of its pages where a resolution is given."""
    from signage.paint.pdf.document import paint_pdf  # noqa: PLC0415 - the PDF library is slow to load
    from signage.paint.png import paint_png  # noqa: PLC0415 - only for pictures

    kind = f"{request.kind} {request.phase}".strip()
    try:
        sheet = compose_request(project, request)
    except SignageError as refusal:
        return Refused(kind, request.protocol, request.locale, str(refusal))
    reasons = blockers(sheet, project.wording(request.locale))
    if reasons:
        return Refused(kind, request.protocol, request.locale, " ".join(reasons))
    data = paint_pdf(sheet)
    folder = output / request.locale
    path = folder / f"{sheet.file_stem}.pdf"
    write_whole(path, data)
    if request.kind in PICTURE_KINDS:
        _write_beside(project, request, path, dots_per_inch)
    images: list[Path] = []
    if dots_per_inch:
        pictures = paint_png(data, dots_per_inch)
        for number, picture in enumerate(pictures, start=1):
            image = folder / (
                f"{sheet.file_stem}-{number}.png" if len(pictures) > 1 else f"{sheet.file_stem}.png"
            )
            write_whole(image, picture)
            images.append(image)
    return Drawn(
        path,
        sheet.kind,
        request.protocol,
        request.locale,
        len(sheet.pages),
        request.paper,
        sheet.revision,
        sheet.is_draft,
        hashlib.sha256(data).hexdigest(),
        tuple(images),
        len(sheet.fit),
    )


def _write_beside(project: Project, request: SheetRequest, path: Path, dots_per_inch: int) -> None:
    """The table of a trial, and where pictures are wanted, one picture of all pictures."""
    from signage.paint.gallery import paint_gallery  # noqa: PLC0415 - only for sheets about pictures

    context = project.picture_context(request.protocol, request.locale)
    table = table_beside(context, request.kind, request.seed)
    if table is not None:
        write_whole(path.with_suffix(".csv"), table.encode())
    elif dots_per_inch:
        write_whole(path.with_name(f"{path.stem}-gallery.png"), paint_gallery(context.pictures))


def draw_all(
    project: Project,
    requests: Sequence[SheetRequest],
    output: Path,
    blockers: Finding,
    dots_per_inch: int = 0,
    workers: int = 1,
) -> Iterator[Drawn | Refused]:
    """Every document, in the order of the requests; with several workers, on several processes."""
    if workers <= 1 or len(requests) < 8:
        for request in requests:
            yield draw_request(project, request, output, blockers, dots_per_inch)
        return
    from concurrent.futures import ProcessPoolExecutor  # noqa: PLC0415 - only for large jobs

    arguments = (project.content, project.locales)
    with ProcessPoolExecutor(workers, initializer=_open_in_worker, initargs=arguments) as pool:
        jobs = [(request, output, blockers, dots_per_inch) for request in requests]
        yield from pool.map(_draw_in_worker, jobs, chunksize=max(1, len(jobs) // (workers * 8)))


_worker_project: list[Project] = []


def _open_in_worker(content: Path, locales: Path) -> None:
    _worker_project[:] = [open_project(content, locales)]


def _draw_in_worker(job: tuple[SheetRequest, Path, Finding, int]) -> Drawn | Refused:
    request, output, blockers, dots_per_inch = job
    return draw_request(_worker_project[0], request, output, blockers, dots_per_inch)
