"""Sheets about pictures: all to choose from, and a trial of whether readers understand them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from signage.compose.paper_choice import PaperChoice
from signage.compose.papers import CUT_PAPERS, CUT_PAPERS_WORDS
from signage.compose.sheet_kind import ControlText, Owed, Per, SheetKind, SheetOrder
from signage.model.picture_trial import empty_table, trial_forms

if TYPE_CHECKING:
    from signage.compose.pictures.context import PictureContext
    from signage.drawing.marks import Sheet

_PAPERS = PaperChoice(
    names=CUT_PAPERS, made_on=f"made on {CUT_PAPERS_WORDS}", usual=CUT_PAPERS[0], is_of_library=False
)
_OWED = Owed.RULER | Owed.TAG | Owed.RIBBON
_CONTROL = frozenset(ControlText) - {ControlText.PROTOCOL}
"""They may be about all protocols at once."""


def _compose_pictures(order: SheetOrder[PictureContext]) -> Sheet:
    from signage.compose.pictures.sheet import compose_picture_sheet  # noqa: PLC0415 - help reads kinds without their composers

    return compose_picture_sheet(order.context, order.paper)


def _compose_trial(order: SheetOrder[PictureContext]) -> Sheet:
    from signage.compose.pictures.trial_form import compose_trial  # noqa: PLC0415 - help reads kinds without their composers

    return compose_trial(order.context, order.paper, order.seed)


def _names(order: SheetOrder[PictureContext]) -> tuple[str, ...]:
    return order.context.pictures


def _ratings(order: SheetOrder[PictureContext]) -> str:
    """The table of ratings to fill in, as CSV."""
    return empty_table(trial_forms(order.context.pictures, order.seed))


PICTURES = SheetKind(
    name="pictures",
    singular="sheet of pictures",
    plural="sheets of pictures",
    summary="all pictures to choose from",
    place=90,
    per=Per.PICTURES,
    papers=_PAPERS,
    compose=_compose_pictures,
    owes=_OWED,
    control=_CONTROL,
    gallery=_names,
)

PICTURE_TRIAL = SheetKind(
    name="picture-trial",
    singular="picture trial",
    plural="picture trials",
    summary="a comprehension form",
    place=91,
    per=Per.PICTURES,
    papers=_PAPERS,
    compose=_compose_trial,
    owes=_OWED,
    control=_CONTROL,
    table=_ratings,
    is_seeded=True,
)

SHEET_KINDS = (PICTURES, PICTURE_TRIAL)
