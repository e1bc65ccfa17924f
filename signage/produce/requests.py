"""Which documents there are to make, and how each is composed and imposed."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from signage.compose.context import LocaleContext
from signage.compose.papers import Paper, paper_of
from signage.compose.proof import Faulty, as_proof
from signage.compose.sheet_kind import Imposition, Per, SheetKind, SheetOrder, laid_paper
from signage.compose.theme import Tone
from signage.drawing.marks import Sheet
from signage.impose.fold import fold_eight
from signage.impose.n_up import four_up
from signage.model.library import Protocol, Ward
from signage.model.mark import Mark
from signage.project import Project

_IMPOSE: Mapping[Imposition, Callable[[Sheet, float, float, str], Sheet]] = {
    Imposition.FOUR_UP: four_up,
    Imposition.FOLD_EIGHT: fold_eight,
}

_OF_WARD = frozenset({Per.WARD, Per.ZONE, Per.FIXTURE})
"""Sheets that a ward has once, in the name of its first protocol among those that are wanted."""


@dataclass(frozen=True, order=True)
class SheetRequest:
    """One document to make.

    ``part`` is the phase, zone, fixture or ward that it is about, empty for a whole protocol. Both it and
    ``protocol`` are empty for sheets about all pictures. ``copies`` are the numbers of the copies that one
    file holds, each with pages of its own; empty for a sheet that nobody counts.
    """

    protocol: str
    locale: str
    kind: str
    part: str
    paper: str
    tone: str = Tone.COLOUR.value
    seed: int = 0
    copies: tuple[str, ...] = ()


@dataclass(frozen=True)
class Wanted:
    """What the person asked for; empty means everything. ``is_for_proof``: languages in work as well."""

    protocols: tuple[str, ...] = ()
    locales: tuple[str, ...] = ()
    kinds: tuple[str, ...] = ()
    papers: tuple[str, ...] = ()
    tone: Tone = Tone.COLOUR
    seed: int = 1
    is_for_proof: bool = False


def requests_for(project: Project, wanted: Wanted) -> tuple[SheetRequest, ...]:
    """The documents to make, by locale and protocol, in a stable order."""
    locales = wanted.locales or project.locales_in_use
    return tuple(request for locale in locales for request in _requests_in(project, wanted, locale))


def _requests_in(project: Project, wanted: Wanted, locale: str) -> Iterator[SheetRequest]:
    """Protocol by protocol, then what is about pictures."""
    kinds = project.kinds.wanted(wanted.kinds)
    names = _protocols_for(project, wanted, locale)
    for name in names:
        for kind in kinds:
            for part in _parts(project, kind.per, name, names):
                yield from _on_papers(project, wanted, kind, SheetRequest(name, locale, kind.name, part, ""))
    for kind in kinds:
        for name in (wanted.protocols or ("",)) if kind.per is Per.PICTURES else ():
            yield from _on_papers(project, wanted, kind, SheetRequest(name, locale, kind.name, "", ""))


def _on_papers(
    project: Project, wanted: Wanted, kind: SheetKind[Any], request: SheetRequest
) -> Iterator[SheetRequest]:
    seed = wanted.seed if kind.is_seeded else 0
    papers = kind.papers.chosen(wanted.papers, project.library.papers, is_named=bool(wanted.kinds))
    for paper in papers:
        yield replace(request, paper=paper, tone=wanted.tone.value, seed=seed)


def _parts(project: Project, per: Per, name: str, names: tuple[str, ...]) -> tuple[str, ...]:
    """What a protocol has sheets for; a ward has its own once, through its first protocol of ``names``."""
    library = project.library
    protocol = library.protocols[name]
    first = next(each for each in names if library.protocols[each].ward == protocol.ward)
    if per is Per.PICTURES or (per in _OF_WARD and first != name):
        return ()
    return _PARTS[per](protocol, library.wards[protocol.ward])


_PARTS: Mapping[Per, Callable[[Protocol, Ward], tuple[str, ...]]] = {
    Per.PROTOCOL: lambda _protocol, _ward: ("",),
    Per.LEARNER: lambda _protocol, _ward: ("",),
    Per.PHASE: lambda protocol, _ward: tuple(phase.id for phase in protocol.phases),
    Per.WARD: lambda _protocol, ward: (ward.id,),
    Per.ZONE: lambda _protocol, ward: tuple(ward.zones),
    Per.FIXTURE: lambda _protocol, ward: tuple(ward.fixtures),
}


def _protocols_for(project: Project, wanted: Wanted, locale: str) -> tuple[str, ...]:
    """Those asked for; else those it is in use for; all where proofs will do or it is in use for none."""
    library = project.library
    if wanted.protocols:
        return wanted.protocols
    known = library.locales.get(locale)
    in_use = tuple(name for name in library.protocols if known is None or known.is_in_use_for(name))
    return tuple(library.protocols) if wanted.is_for_proof or not in_use else in_use


def context_of(project: Project, request: SheetRequest, mark: Mark = Mark.DRAFT) -> LocaleContext:
    """What the sheet of a request is made from, as what has been decided; of several copies the first."""
    tone = Tone(request.tone)
    if project.kinds.of(request.kind).per is Per.PICTURES:
        return project.picture_context(request.protocol, request.locale, tone, mark)
    context = project.context(project.library.protocols[request.protocol], request.locale, tone, mark)
    return replace(context, copy=request.copies[0]) if request.copies else context


def order_of(project: Project, request: SheetRequest, mark: Mark = Mark.DRAFT) -> SheetOrder[Any]:
    """What the composer of a request is given."""
    paper = paper_of(request.paper)
    width, height = project.kinds.of(request.kind).page_size(paper)
    return SheetOrder(context_of(project, request, mark), paper, width, height, request.part, request.seed)


def compose_request(
    project: Project, request: SheetRequest, mark: Mark = Mark.DRAFT, faulty: Faulty | None = None
) -> Sheet:
    """Compose and impose one document as what has been decided; on a proof, ``faulty`` is outlined.

    Each page is a piece of its own, then laid on paper; a proof is made of pieces, before they are. Raises
    RefusedError where a text is missing or does not fit.
    """
    kind, order = project.kinds.of(request.kind), order_of(project, request, mark)
    sheet = kind.compose(order)
    if mark is Mark.PROOF:
        sheet = as_proof(sheet, order.context, faulty or Faulty())
    sheet = _imposed(sheet, kind.imposition_on(order.paper), order.paper)
    stem = f"{sheet.file_stem}-{request.paper.lower()}"
    if request.tone != Tone.COLOUR:
        stem += f"-{request.tone}"
    if request.copies:
        stem += f"-{request.copies[0]}"
    return replace(sheet, file_stem=stem)


def bound_copies(sheets: Sequence[Sheet], numbers: Sequence[str]) -> Sheet:
    """Copies one behind the other in one file, to be sent to a printer once; its name says which they are."""
    first = sheets[0]
    return replace(
        first,
        pages=tuple(page for sheet in sheets for page in sheet.pages),
        overflows=tuple(overflow for sheet in sheets for overflow in sheet.overflows),
        file_stem=first.file_stem if len(sheets) == 1 else f"{first.file_stem}-to-{numbers[-1]}",
    )


def _imposed(sheet: Sheet, imposition: Imposition, paper: Paper) -> Sheet:
    impose = _IMPOSE.get(imposition)
    if impose is None:
        return sheet
    laid = laid_paper(imposition, paper)
    return impose(sheet, laid.width, laid.height, paper.name)
