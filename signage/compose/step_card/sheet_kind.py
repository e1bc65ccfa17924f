"""Step cards: one step a card, alone on A6 or four to cut."""

from __future__ import annotations

from typing import TYPE_CHECKING

from signage.compose.paper_choice import PaperChoice
from signage.compose.papers import CUT_PAPERS, CUT_PAPERS_WORDS
from signage.compose.sheet_kind import (
    CodeTarget,
    Imposition,
    Offer,
    Owed,
    Per,
    RulePlace,
    SheetKind,
    SheetOrder,
)
from signage.compose.shown_fields import Duty, Shown, all_fields

if TYPE_CHECKING:
    from signage.compose.context import SheetContext
    from signage.drawing.marks import Sheet

_LARGEST = 105.0, 148.0
"""Width and height of a card in millimetres: A6, also on papers whose quarter is larger."""


def _compose(order: SheetOrder[SheetContext]) -> Sheet:
    from signage.compose.step_card.card import compose_step_cards  # noqa: PLC0415 - help reads kinds without their composers

    width, height = _LARGEST
    return compose_step_cards(order.context, min(width, order.width), min(height, order.height))


STEP_CARDS = SheetKind(
    name="step-cards",
    singular="set of step cards",
    plural="step cards",
    summary="one step a card, alone or four to cut",
    place=20,
    per=Per.PROTOCOL,
    papers=PaperChoice(
        names=("A6", *CUT_PAPERS),
        made_on=f"made on A6 (one card), {CUT_PAPERS_WORDS} (four to cut)",
        single=("A6",),
        usual=CUT_PAPERS[0],
    ),
    compose=_compose,
    offer=Offer.USUAL,
    owes=Owed.STEPS | Owed.RULER | Owed.TAG,
    shows=all_fields({Shown.NOTES: Duty.ELSEWHERE, Shown.POINTERS: Duty.ELSEWHERE}),
    rules=RulePlace.STEPS,
    code=CodeTarget.STEP,
    imposition=Imposition.FOUR_UP,
)

SHEET_KINDS = (STEP_CARDS,)
