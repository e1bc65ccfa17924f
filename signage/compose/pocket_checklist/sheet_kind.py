"""The pocket checklist of a protocol: one sheet folded to eight panels."""

from __future__ import annotations

from typing import TYPE_CHECKING

from signage.compose.paper_choice import PaperChoice
from signage.compose.papers import CUT_PAPERS, CUT_PAPERS_WORDS
from signage.compose.sheet_kind import CodeTarget, Imposition, Offer, Owed, Per, SheetKind, SheetOrder
from signage.compose.shown_fields import NEVER_LEFT_OUT, Duty, Shown

if TYPE_CHECKING:
    from signage.compose.context import SheetContext
    from signage.drawing.marks import Sheet


def _compose(order: SheetOrder[SheetContext]) -> Sheet:
    from signage.compose.pocket_checklist.panels import compose_pocket  # noqa: PLC0415 - help reads kinds without their composers

    return compose_pocket(order.context, order.width, order.height)


POCKET_CHECKLIST = SheetKind(
    name="pocket-checklist",
    singular="pocket checklist",
    plural="pocket checklists",
    summary="all steps in short, one sheet folded to eight panels",
    place=30,
    per=Per.PROTOCOL,
    papers=PaperChoice(names=CUT_PAPERS, made_on=f"folded from {CUT_PAPERS_WORDS}", usual=CUT_PAPERS[0]),
    compose=_compose,
    offer=Offer.USUAL,
    owes=Owed.STEPS | Owed.RULER | Owed.TAG,
    shows={
        **dict.fromkeys(Shown, Duty.ELSEWHERE),
        **dict.fromkeys(NEVER_LEFT_OUT, Duty.OWED),
        Shown.PHASE_CAUTION: Duty.IF_ROOM,
        Shown.POINTERS: Duty.OWED,
    },
    code=CodeTarget.PROTOCOL,
    imposition=Imposition.FOLD_EIGHT,
)

SHEET_KINDS = (POCKET_CHECKLIST,)
