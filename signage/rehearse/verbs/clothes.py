"""Own clothes are changed."""

from __future__ import annotations

from signage.rehearse.rules.layering import STILL_COVERED
from signage.rehearse.state.level import Level
from signage.rehearse.state.meeting import hand_meets
from signage.rehearse.state.people import Held, Pending
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.verbs.discarding import discard_held
from signage.rehearse.verbs.dressing import put_on
from signage.rehearse.verbs.seats import rest_on_seat

_KIND = "clothes"


def change_clothes(scene: Scene, act: Act) -> None:
    """All clothes that are worn come off, into the bin where one is named, and the item goes on.

    Rule LY-1 for what is still worn over them. Hygiene is due where they were not clean.
    """
    person = act.on
    old = [worn for worn in person.worn.values() if worn.garment.kind == _KIND and worn.id != act.item]
    names = {worn.id for worn in old}
    for worn in old:
        over = tuple(each for each in scene.layers.covering(worn.id, person.worn) if each not in names)
        if over:
            message = f"{scene.name(worn.id)} taken off while still under: {scene.setting.names(over)}."
            scene.report(STILL_COVERED, message, item=worn.id, others=over, person=person)
    for worn in old:
        del person.worn[worn.id]
    level = max((worn.outside for worn in old), default=Level.CLEAN)
    rest_on_seat(scene, person)
    if old:
        surfaces = tuple(worn.surfaces for worn in old)
        held = Held(tuple(worn.id for worn in old), level, act.moment, surfaces, person.id)
        hand_meets(scene, act.by, level, held.items[0])
        if act.action.bin is not None:
            discard_held(scene, act, held, act.action.bin)
    put_on(scene, act)
    if level is not Level.CLEAN:
        act.by.pending = Pending(old[0].id, act.moment)
