"""The wall poster of a phase."""

from __future__ import annotations

from typing import TYPE_CHECKING

from signage.compose.hand_technique.sheet_kind import HAND_POSTER
from signage.compose.paper_choice import PaperChoice
from signage.compose.papers import SMALLEST_POSTER_MM
from signage.compose.poster.layer_signs import LAYER_SIGNS
from signage.compose.sheet_kind import CodeTarget, Offer, Owed, Per, RulePlace, SheetKind, SheetOrder
from signage.compose.shown_fields import Duty, Shown, all_fields

if TYPE_CHECKING:
    from signage.compose.context import SheetContext
    from signage.drawing.marks import Sheet


def _compose(order: SheetOrder[SheetContext]) -> Sheet:
    """The poster of a phase; movements of hand hygiene have a layout of their own."""
    phase = next(phase for phase in order.context.protocol.phases if phase.id == order.part)
    if phase.layout == "hand-technique":
        return HAND_POSTER.compose(order)
    from signage.compose.poster.poster import compose_poster  # noqa: PLC0415 - help reads kinds without their composers

    return compose_poster(order.context, phase, order.paper)


POSTER = SheetKind(
    name="poster",
    singular="poster",
    plural="posters",
    summary="all steps of a phase, for the wall",
    place=10,
    per=Per.PHASE,
    papers=PaperChoice(least_side=SMALLEST_POSTER_MM, too_small="too small to be read on a wall"),
    compose=_compose,
    offer=Offer.USUAL,
    owes=Owed.STEPS | Owed.RULER | Owed.TAG | Owed.RIBBON | Owed.AIR | Owed.DISTANCE | Owed.GRID,
    shows=all_fields({Shown.WHY: Duty.ELSEWHERE, Shown.NOTES: Duty.IF_ROOM, Shown.POINTERS: Duty.ELSEWHERE}),
    rules=RulePlace.EVERY_PAGE,
    code=CodeTarget.PROTOCOL,
    signs=tuple(LAYER_SIGNS.values()),
)

SHEET_KINDS = (POSTER,)
