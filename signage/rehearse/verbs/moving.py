"""Going from zone to zone, and what must be true at the line."""

from __future__ import annotations

from signage.model.choices import ZoneClass
from signage.model.library import Zone
from signage.rehearse.judging.protection import judge_cover_on_entry
from signage.rehearse.judging.readiness import judge_changes_on_entry, judge_checks_on_entry
from signage.rehearse.rules.conduct import (
    CHECK_MISSING,
    FASTENER_OPEN,
    NEED_NOT_MET,
)
from signage.rehearse.rules.places import CARRIED_INTO_CLEAN_ZONE, CONTAMINATED_SOLES, NO_WAY, STILL_SEATED
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Person
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.state.surroundings import stand_on_the_floor, take_on_the_room
from signage.rehearse.verbs.bags import carry_held
from signage.rehearse.verbs.operating import open_door
from signage.rehearse.verbs.seats import get_up
from signage.rehearse.verbs.things import carry_things


def move(scene: Scene, act: Act) -> None:
    """A person goes to a zone; where no door leads there the finding says so and the person goes on."""
    person, start, end = act.by, act.by.zone, act.action.to or ""
    if person.seat is not None:
        message = f"Seated on {scene.name(person.seat)} when told to walk."
        scene.report(STILL_SEATED, message, person=person)
        get_up(scene, person)
    _judge_way(scene, person, start, end)
    before, after = scene.setting.ward.zones[start], scene.setting.ward.zones[end]
    person.enter(end, scene.moment)
    if after.zone_class is not ZoneClass.CONTAMINATED:
        _judge_duties(scene, person, after)
    elif before.zone_class is not ZoneClass.CONTAMINATED:
        _judge_entry(scene, person, after)
    if after.zone_class is ZoneClass.CLEAN and before.zone_class is not ZoneClass.CLEAN:
        _judge_return(scene, person, end)
    if after.floor == "clean" and before.floor != "clean" and person.soles is Level.CONTAMINATED:
        message = f"Contaminated soles on the clean floor of zone {after.name}."
        scene.report(CONTAMINATED_SOLES, message, person=person, field="to")
    if after.zone_class is ZoneClass.CONTAMINATED:
        scene.contaminated_zones.add(end)
    elif before.zone_class is ZoneClass.CONTAMINATED:
        person.fresh_from_contaminated = True
    take_on_the_room(scene, person)
    stand_on_the_floor(scene, person)
    carry_held(scene, person)
    carry_things(scene, person, start, end)


def _judge_way(scene: Scene, person: Person, start: str, end: str) -> None:
    """Rule ZN-3, and CT-6 for a door that is opened by hand."""
    door = scene.setting.doors.get((start, end))
    if door is not None:
        open_door(scene, person, door)
        return
    ways = f"from zone {scene.name(start)} to zone {scene.name(end)}"
    if start == end:
        message = f"Already in zone {scene.name(end)}."
    elif (end, start) in scene.setting.doors:
        message = f"The door leads the other way only, not {ways}."
    else:
        message = f"No door leads {ways}."
    scene.report(NO_WAY, message, person=person, field="to")


def _judge_entry(scene: Scene, person: Person, zone: Zone) -> None:
    """Rules EN-2 to EN-6 and EN-11, on the way into a contaminated zone."""
    judge_cover_on_entry(scene, person, zone)
    for worn in person.worn.values():
        if worn.open_fasteners:
            person.stay.told.add(worn.id)
            parts = ", ".join(sorted(worn.open_fasteners))
            message = f"{scene.name(worn.id)} still open on entry: {parts}."
            scene.report(FASTENER_OPEN, message, item=worn.id, person=person)
        missing = [check for check in worn.garment.checks if check not in worn.checks]
        if missing:
            message = f"{scene.name(worn.id)} not checked before entry: {', '.join(missing)}."
            scene.report(CHECK_MISSING, message, item=worn.id, person=person)
    _judge_duties(scene, person, zone)
    judge_changes_on_entry(scene, person, zone)


def _judge_duties(scene: Scene, person: Person, zone: Zone) -> None:
    """Rules EN-5 and EN-6, for any zone that asks for needs or for an observer's check."""
    for need in zone.needs:
        if need not in person.needs_met:
            message = f"Not met before entry to zone {zone.name}: {scene.name(need)}."
            scene.report(NEED_NOT_MET, message, item=need, person=person)
    judge_checks_on_entry(scene, person, zone)


def _judge_return(scene: Scene, person: Person, end: str) -> None:
    """Rule ZN-2: nothing contaminated is worn into a clean zone.

    What is carried in the hand is noted, and told when it is put down there; if it never is, BN-1 says so.
    """
    zone = scene.name(end)
    for worn in person.worn.values():
        if worn.worst is Level.CONTAMINATED:
            message = f"{scene.name(worn.id)}, contaminated, worn into zone {zone}."
            scene.report(CARRIED_INTO_CLEAN_ZONE, message, item=worn.id, person=person)
    for held in person.held:
        if held.level is Level.CONTAMINATED:
            held.carried_in = scene.moment
