"""The picture beside a movement on gloves or skin, by the layer of the hands that is outside."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from signage.compose.arrangement import NumberedStep
    from signage.compose.context import SheetContext

LAYER_SIGNS = {"outer": "sign-outer-glove", "inner": "sign-inner-glove", "skin": "sign-bare-hand"}


def sign_of(context: SheetContext, numbered: NumberedStep) -> str:
    """The picture of a small step: the hand layer that is rubbed, or the picture of the step itself."""
    if not numbered.is_hygiene:
        return numbered.step.picture
    garments = context.library.garments
    layer = garments.get(numbered.step.action.layer or "")
    if layer is None:
        return LAYER_SIGNS["skin"]
    covered = any(layer.id in other.over and other.kind == layer.kind for other in garments.values())
    return LAYER_SIGNS["inner" if covered else "outer"]
