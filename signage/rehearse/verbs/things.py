"""Things that people carry and never wear, such as a phone: taken, touched, cleaned, carried out (ZN-7)."""

from __future__ import annotations

from signage.model.choices import ZoneClass
from signage.rehearse.rules.layering import NOT_WORN
from signage.rehearse.rules.places import FIXTURE_ELSEWHERE, THING_CARRIED_OUT
from signage.rehearse.state.level import Level
from signage.rehearse.state.meeting import hand_meets
from signage.rehearse.state.people import Person
from signage.rehearse.state.scene import Act, Scene, ThingState

_HARD = "hard"


def take_thing(scene: Scene, act: Act, thing: str) -> None:
    """A thing is taken up, from the fixture on which it lies where one is named."""
    state = _thing_here(scene, act, thing)
    _at_fixtures(scene, act, state)
    touch_thing(scene, act, thing)
    state.holder, state.zone = act.by.id, None


def put_down_thing(scene: Scene, act: Act, thing: str) -> None:
    """A thing is put down; it takes on what the fixture carries, and leaves there what it carries itself."""
    state = scene.things[thing]
    if state.holder != act.by.id:
        message = f"Not carried by {act.by.id} at this step: {scene.name(thing)}."
        scene.report(NOT_WORN, message, item=thing, person=act.by, field="thing")
    touch_thing(scene, act, thing)
    state.holder, state.zone = None, act.by.zone
    _at_fixtures(scene, act, state)


def touch_thing(scene: Scene, act: Act, thing: str) -> None:
    """Hand layer and thing meet; in a contaminated zone it is then contaminated."""
    state = _thing_here(scene, act, thing)
    before = state.level
    state.level = max(before, act.by.hand_level())
    if scene.zone(act.by).zone_class is ZoneClass.CONTAMINATED:
        state.soil()
    hand_meets(scene, act.by, before, thing)


def clean_thing(scene: Scene, act: Act, thing: str) -> None:
    """A hard thing is disinfected: ``reduced`` at best. Nothing that is wiped on makes a soft one clean."""
    state = _thing_here(scene, act, thing)
    hand_meets(scene, act.by, state.level, thing)
    if scene.setting.protocol.things[thing].surface == _HARD:
        state.level = min(state.level, Level.REDUCED)
        state.is_soiled = state.was_told = False


def carry_things(scene: Scene, person: Person, start: str, end: str) -> None:
    """Rule ZN-7 for what a person carries from one zone into another; told once until it is cleaned."""
    before, after = scene.setting.ward.zones[start], scene.setting.ward.zones[end]
    leaves_contaminated = (
        before.zone_class is ZoneClass.CONTAMINATED and after.zone_class is not ZoneClass.CONTAMINATED
    )
    into_clean = after.zone_class is ZoneClass.CLEAN is not before.zone_class
    for key, state in scene.things.items():
        if state.holder != person.id:
            continue
        home = scene.setting.protocol.things[key].stays_in
        is_out = (state.is_soiled and leaves_contaminated) or (
            state.level is Level.CONTAMINATED and into_clean
        )
        if home is not None and home == start != end:
            _report(scene, person, key, f"carried out of zone {before.name}, where it is to stay")
        elif is_out and not state.was_told:
            state.was_told = True
            _report(scene, person, key, f"carried out of zone {before.name} without being disinfected")
        if after.zone_class is ZoneClass.CONTAMINATED:
            state.soil()


def _report(scene: Scene, person: Person, key: str, what: str) -> None:
    message = f"{scene.name(key)} {what}."
    scene.report(THING_CARRIED_OUT, message, item=key, person=person, field="to")


def _thing_here(scene: Scene, act: Act, thing: str) -> ThingState:
    """The thing; rule ZN-5 where it lies in another zone or is carried by somebody there."""
    state = scene.things[thing]
    zone = scene.people[state.holder].zone if state.holder is not None else state.zone
    if zone is not None and zone != act.by.zone:
        message = f"{scene.name(thing)} is in zone {scene.name(zone)}, not in {scene.name(act.by.zone)}."
        scene.report(FIXTURE_ELSEWHERE, message, item=thing, person=act.by, field="thing")
    return state


def _at_fixtures(scene: Scene, act: Act, thing: ThingState) -> None:
    """Thing and fixture take the higher level of the two (rule ZN-5 for a fixture that is elsewhere)."""
    for key in act.fixtures:
        fixture = scene.use(key)
        if not scene.is_here(key, act.by):
            message = f"{scene.name(key)} is not in zone {scene.name(act.by.zone)}."
            scene.report(FIXTURE_ELSEWHERE, message, item=key, person=act.by, field="fixture")
        fixture.level = thing.level = max(fixture.level, thing.level)
