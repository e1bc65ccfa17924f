"""Taking up, putting down and drinking: what hands bring along, and what they bring to the mouth."""

from __future__ import annotations

from signage.model.choices import ZoneClass
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.verbs.bags import take_bag
from signage.rehearse.verbs.discarding import put_down_held
from signage.rehearse.verbs.things import put_down_thing, take_thing
from signage.rehearse.verbs.touching import judge_mouth, touch_body


def take(scene: Scene, act: Act) -> None:
    """A thing or a bag is taken up."""
    if act.action.thing is not None:
        take_thing(scene, act, act.action.thing)
    else:
        take_bag(scene, act)


def put_down(scene: Scene, act: Act) -> None:
    """A thing or a bag is put down."""
    if act.action.thing is not None:
        put_down_thing(scene, act, act.action.thing)
    else:
        put_down_held(scene, act)


def drink(scene: Scene, act: Act) -> None:
    """A drink where that is allowed is a hand at the mouth; elsewhere it is more than that (rule CT-8)."""
    if scene.zone(act.on).zone_class is ZoneClass.CLEAN:
        touch_body(scene, act, "mouth-nose")
    judge_mouth(scene, act.on, "A drink is taken")
