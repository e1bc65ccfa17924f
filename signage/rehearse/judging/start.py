"""Everybody as the protocol begins: where people and kit come from, and what is wrong before any step."""

from __future__ import annotations

from signage.model.choices import ZoneClass
from signage.model.library import Zone
from signage.rehearse.judging.protection import judge_protection
from signage.rehearse.rules.conduct import ORIGIN_UNSAID
from signage.rehearse.rules.layering import PUT_ON_TOO_LATE
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Person, Worn
from signage.rehearse.state.scene import Scene
from signage.rehearse.state.surroundings import stand_on_the_floor, take_on, take_on_the_room
from signage.rehearse.verbs.dressing import report_unknown_order


def look_at_the_start(scene: Scene) -> None:
    """Rules OR-1, LY-A, LY-2 and EN-9 for every person.

    Whoever begins in a contaminated zone is contaminated by it; whoever comes from elsewhere brings along
    what that zone makes of kit, soles and hands.
    """
    for person in scene.people.values():
        _judge_layers(scene, person)
        _bring_along(scene, person)
        if scene.zone(person).zone_class is ZoneClass.CONTAMINATED:
            scene.contaminated_zones.add(person.zone)
        take_on_the_room(scene, person)
        stand_on_the_floor(scene, person)
        judge_protection(scene, person)


def level_of_origin(zone: Zone) -> Level:
    """What a zone makes of whoever comes from it."""
    if zone.zone_class is ZoneClass.CONTAMINATED or zone.floor == "dirty":
        return Level.CONTAMINATED
    return Level.REDUCED if zone.zone_class is ZoneClass.TRANSITION else Level.CLEAN


def _bring_along(scene: Scene, person: Person) -> None:
    """The level of the zone from which a person comes, or rule OR-1 where a file should name that zone."""
    if person.start.comes_from is None:
        _judge_origin(scene, person)
        return
    origin = scene.setting.ward.zones[person.start.comes_from]
    level = level_of_origin(origin)
    take_on(scene, person, level)
    person.soles = max(person.soles, level)
    in_contaminated = scene.zone(person).zone_class is ZoneClass.CONTAMINATED
    person.fresh_from_contaminated = origin.zone_class is ZoneClass.CONTAMINATED and not in_contaminated


def _judge_origin(scene: Scene, person: Person) -> None:
    """Rule OR-1."""
    zone = scene.zone(person)
    kit = tuple(worn.id for worn in person.worn.values() if worn.garment.barrier)
    if zone.zone_class is not ZoneClass.CLEAN:
        field, start = "starts_in", f"starts in zone {zone.name}, which is not clean"
    elif kit:
        field, start = "wears", f"starts with kit on ({scene.setting.names(kit)})"
    else:
        return
    message = f"{person.id} {start}, and 'comes-from' is not said; kit and hands were taken as clean."
    scene.report_form(ORIGIN_UNSAID, message, person.start.at(field), person=person.id, item=zone.id)


def _judge_layers(scene: Scene, person: Person) -> None:
    """Rules LY-A and LY-2 for what is worn from the start, in the order in which it is listed."""
    earlier: dict[str, Worn] = {}
    for item, worn in person.worn.items():
        report_unknown_order(scene, person, item, earlier)
        over = scene.layers.covering(item, earlier)
        earlier[item] = worn
        if over:
            message = f"Listed after what is to lie over it: {scene.name(item)}; {scene.setting.names(over)}."
            scene.report_form(PUT_ON_TOO_LATE, message, person.start.at("wears"), person=person.id, item=item)
