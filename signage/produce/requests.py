"""Which documents there are to make, and how each is composed and imposed."""

from __future__ import annotations

from dataclasses import dataclass, replace

from signage.compose.context import SheetContext
from signage.compose.hand_technique.poster import compose_hand_poster
from signage.compose.papers import SMALLEST_POSTER_MM, Paper, paper_of
from signage.compose.pictures.sheet_kinds import (
    PICTURE_KINDS,
    compose_pictures,
    picture_papers,
)
from signage.compose.pocket_checklist.sheet_kind import compose_pocket
from signage.compose.poster.sheet_kind import compose_poster
from signage.compose.proof import Faulty, as_proof
from signage.compose.step_card.sheet_kind import compose_step_cards
from signage.compose.theme import Tone
from signage.drawing.marks import Sheet
from signage.impose.fold import fold_eight
from signage.impose.n_up import four_up
from signage.model.library import Phase, Protocol
from signage.model.mark import Mark
from signage.project import Project

SHEET_KINDS = ("poster", "step-cards", "pocket-checklist")
CARD_PAPERS = ("A4", "Letter")
"""Papers that a person cuts and folds."""


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
    library = project.library
    locales = wanted.locales or project.locales_in_use
    kinds = wanted.kinds or SHEET_KINDS
    papers = wanted.papers or library.papers
    cut = tuple(paper for paper in papers if paper in CARD_PAPERS)
    if not wanted.papers and not cut:
        cut = CARD_PAPERS[:1]
    found: list[SheetRequest] = []
    for locale in locales:
        for name in _protocols_for(project, wanted, locale):
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


def _protocols_for(project: Project, wanted: Wanted, locale: str) -> tuple[str, ...]:
    """Those asked for; else those it is in use for; all where proofs will do or it is in use for none."""
    library = project.library
    if wanted.protocols:
        return wanted.protocols
    known = library.locales.get(locale)
    in_use = tuple(name for name in library.protocols if known is None or known.is_in_use_for(name))
    return tuple(library.protocols) if wanted.is_for_proof or not in_use else in_use


def compose_request(
    project: Project, request: SheetRequest, mark: Mark = Mark.DRAFT, faulty: Faulty | None = None
) -> Sheet:
    """Compose and impose one document as what has been decided; on a proof, ``faulty`` is outlined.

    Raises RefusedError where a text is missing or does not fit.
    """
    tone = Tone(request.tone)
    if request.kind in PICTURE_KINDS:
        context = project.picture_context(request.protocol, request.locale, tone, mark)
        sheet = compose_pictures(context, request.kind, paper_of(request.paper), request.seed)
        if mark is Mark.PROOF:
            sheet = as_proof(sheet, context, faulty or Faulty())
    else:
        protocol = project.library.protocols[request.protocol]
        sheet = _compose(project.context(protocol, request.locale, tone, mark), request, faulty)
    stem = f"{sheet.file_stem}-{request.paper.lower()}"
    if request.tone != Tone.COLOUR:
        stem += f"-{request.tone}"
    return replace(sheet, file_stem=stem)


def _compose(context: SheetContext, request: SheetRequest, faulty: Faulty | None) -> Sheet:
    """Each page as a piece of its own, then laid on paper; a proof is made of pieces, before they are."""
    paper = paper_of(request.paper)
    if request.kind == "poster":
        phase = _phase(context.protocol, request.phase)
        is_hands = phase.layout == "hand-technique"
        return _marked(
            (compose_hand_poster if is_hands else compose_poster)(context, phase, paper), context, faulty
        )
    if request.kind == "step-cards":
        return _step_cards(context, paper, faulty)
    landscape = paper if paper.is_landscape else paper.turned()
    panels = compose_pocket(context, landscape.width / 4, landscape.height / 2)
    return fold_eight(_marked(panels, context, faulty), landscape.width, landscape.height, request.paper)


def _step_cards(context: SheetContext, paper: Paper, faulty: Faulty | None) -> Sheet:
    if paper.name == "A6":
        return _marked(compose_step_cards(context), context, faulty)
    upright = paper.turned() if paper.is_landscape else paper
    height = min(148.0, upright.height / 2)
    cards = compose_step_cards(context, min(105.0, upright.width / 2), height)
    return four_up(_marked(cards, context, faulty), upright.width, upright.height, paper.name)


def _marked(sheet: Sheet, context: SheetContext, faulty: Faulty | None) -> Sheet:
    return as_proof(sheet, context, faulty or Faulty()) if context.mark is Mark.PROOF else sheet


def _phase(protocol: Protocol, name: str) -> Phase:
    return next(phase for phase in protocol.phases if phase.id == name)
