"""Parts that stay with their garment: raised, lowered, closed, opened."""

from __future__ import annotations

from signage.rehearse.rules.contact import HAND_AT_FACE
from signage.rehearse.state.body import HEAD
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Worn
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.verbs.bags import tie
from signage.rehearse.verbs.handling import handle_outside, worn_item


def fasten(scene: Scene, act: Act) -> None:
    """A fastener is closed; no part named means all of them. A waste bag is tied."""
    if scene.is_bag(act.item):
        tie(scene, act)
        return
    worn = worn_item(scene, act)
    if worn is not None:
        handle_outside(scene, act, worn)
        worn.open_fasteners.difference_update(_fasteners(act, worn))


def unfasten(scene: Scene, act: Act) -> None:
    """A fastener is opened; no part named means all of them."""
    worn = worn_item(scene, act)
    if worn is not None:
        handle_outside(scene, act, worn)
        worn.open_fasteners.update(_fasteners(act, worn))


def _fasteners(act: Act, worn: Worn) -> tuple[str, ...]:
    return (act.action.part,) if act.action.part else worn.garment.fasteners


def raise_part(scene: Scene, act: Act) -> None:
    """A part is raised: it covers what it covers there, and nothing else."""
    _put(scene, act, "raised")


def lower_part(scene: Scene, act: Act) -> None:
    """A part is lowered."""
    _put(scene, act, "lowered")


def _put(scene: Scene, act: Act, position: str) -> None:
    """Hands hold the outside; at the head a contaminated hand is one at the face (rule CT-3)."""
    worn, part = worn_item(scene, act), act.action.part or ""
    if worn is None:
        return
    sites = {*worn.garment.parts[part].raised, *worn.garment.parts[part].lowered}
    if act.by.hand_level() is Level.CONTAMINATED and sites & HEAD:
        message = (
            f"Contaminated {scene.name(act.by.top_layer())} at the head: {part} of {scene.name(worn.id)}."
        )
        scene.report(HAND_AT_FACE, message, item=worn.id, person=act.by, field="part")
    handle_outside(scene, act, worn)
    worn.put_part(part, position)
