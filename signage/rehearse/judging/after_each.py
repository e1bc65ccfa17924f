"""What is looked at after a movement is done: only what that movement can have changed."""

from __future__ import annotations

from signage.model.choices import ActionVerb
from signage.rehearse.judging.protection import RESPIRATOR, judge_protection
from signage.rehearse.judging.readiness import note_check
from signage.rehearse.state.people import Change
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.state.surroundings import take_on_what_was_bared

_CHECKS = frozenset({ActionVerb.CHECK, ActionVerb.INSPECT})
_CHANGES_COVER = frozenset(
    {
        ActionVerb.DON,
        ActionVerb.DOFF,
        ActionVerb.FASTEN,
        ActionVerb.UNFASTEN,
        ActionVerb.RAISE,
        ActionVerb.LOWER,
        ActionVerb.CHANGE_CLOTHES,
        ActionVerb.MOVE,
    }
)


def note_before(scene: Scene, act: Act) -> None:
    """Since when something is off or open; rule RP-1 tells of a respirator that goes in hazardous air."""
    verb, person = act.action.verb, act.on
    if verb is ActionVerb.DOFF:
        for item in (act.item, act.action.together):
            worn = person.worn.get(item) if item is not None else None
            if worn is None:
                continue
            person.record.gone[worn.id] = Change("taken off", act.moment)
            if worn.garment.kind == RESPIRATOR and scene.zone(person).air == "hazardous":
                person.stay.told.add(worn.id)
    elif verb is ActionVerb.UNFASTEN and act.item in person.worn:
        person.record.gone[act.item] = Change("opened", act.moment)


def look_after(scene: Scene, act: Act) -> None:
    """What a contaminated zone does to what was bared, rule EN-9, and what a check covered."""
    verb = act.action.verb
    if verb in _CHECKS:
        note_check(act)
    elif verb in _CHANGES_COVER:
        person = act.by if verb is ActionVerb.MOVE else act.on
        take_on_what_was_bared(scene, person)
        judge_protection(scene, person)
