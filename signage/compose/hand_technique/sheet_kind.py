"""The poster of a hand technique, its movements one by one: made in place of another poster."""

from __future__ import annotations

from typing import TYPE_CHECKING

from signage.compose.paper_choice import PaperChoice
from signage.compose.sheet_kind import CodeTarget, Offer, Owed, Per, RulePlace, SheetKind, SheetOrder
from signage.compose.shown_fields import Duty, Shown, all_fields

if TYPE_CHECKING:
    from signage.compose.context import SheetContext
    from signage.drawing.marks import Sheet


def _compose(order: SheetOrder[SheetContext]) -> Sheet:
    from signage.compose.hand_technique.poster import compose_hand_poster  # noqa: PLC0415 - help reads kinds without their composers

    phase = next(phase for phase in order.context.protocol.phases if phase.id == order.part)
    return compose_hand_poster(order.context, phase, order.paper)


HAND_POSTER = SheetKind(
    name="poster-hands",
    singular="poster of hand hygiene",
    plural="posters of hand hygiene",
    summary="the movements of hand hygiene one by one, for the wall",
    place=11,
    per=Per.PHASE,
    papers=PaperChoice(),
    compose=_compose,
    offer=Offer.INSTEAD,
    owes=Owed.STEPS | Owed.RULER | Owed.TAG | Owed.RIBBON | Owed.AIR | Owed.DISTANCE,
    shows=all_fields(dict.fromkeys((Shown.WHY, Shown.NOTES, Shown.POINTERS), Duty.ELSEWHERE)),
    rules=RulePlace.EVERY_PAGE,
    code=CodeTarget.PROTOCOL,
)

SHEET_KINDS = (HAND_POSTER,)
