"""Hands hold the outside of worn kit: to close it, open it, wipe it, raise or lower a part of it."""

from __future__ import annotations

from signage.rehearse.rules.contact import INNERMOST_GLOVE_HANDLES_OUTSIDE
from signage.rehearse.rules.layering import NOT_WORN
from signage.rehearse.state.level import Level
from signage.rehearse.state.meeting import hand_and_garment_meet
from signage.rehearse.state.people import Pending, Worn
from signage.rehearse.state.scene import Act, Scene


def worn_item(scene: Scene, act: Act) -> Worn | None:
    """The garment that a movement is done to; rule LY-6 where it is not worn."""
    worn = act.on.worn.get(act.item)
    if worn is None:
        message = f"Not worn at this step: {scene.name(act.item)}."
        scene.report(NOT_WORN, message, item=act.item, person=act.on, field="item")
    return worn


def handle_outside(scene: Scene, act: Act, worn: Worn) -> None:
    """Hand layer and outside meet; if the outside is contaminated, hygiene is due (rule CT-7)."""
    glove = act.by.top_glove()
    if glove is not None and worn.outside is Level.CONTAMINATED and _is_next_to_skin(act, glove, worn):
        message = f"{scene.name(glove.id)}, next to the skin, take hold of: {scene.name(worn.id)}."
        scene.report(INNERMOST_GLOVE_HANDLES_OUTSIDE, message, item=worn.id, person=act.by)
    if hand_and_garment_meet(scene, act.by, act.on, worn.id) is Level.CONTAMINATED:
        act.by.pending = Pending(worn.id, act.moment)


def _is_next_to_skin(act: Act, glove: Worn, handled: Worn) -> bool:
    """Whether the innermost glove does it, and the step does not say that this is meant."""
    return act.by.top_glove({glove.id}) is None and glove.id not in {act.action.layer, handled.id}
