"""Waste bags: tied, wiped, taken, handed on. What is held over a line is on the other side of it."""

from __future__ import annotations

from signage.model.choices import ZoneClass
from signage.rehearse.rules.layering import NOT_WORN
from signage.rehearse.state.level import Level
from signage.rehearse.state.meeting import hand_meets
from signage.rehearse.state.people import Held, Pending, Person
from signage.rehearse.state.scene import Act, BagState, Scene


def tie(scene: Scene, act: Act) -> None:
    """A bag is closed; in a contaminated or dirty zone its outside is contaminated by then.

    With ``together`` it is a clean bag into which another one goes, that has met no hand but from outside:
    ``reduced`` at best.
    """
    inner = act.action.together
    if inner is not None:
        _put_into(scene, act, inner)
    bag = _bag_here(scene, act, act.item)
    if bag is not None:
        bag.level = max(bag.level, zone_level(scene, act.by))
        handle_bag(scene, act, act.item)


def _put_into(scene: Scene, act: Act, inner: str) -> None:
    """A bag is lost to sight in another one, whoever held it."""
    for person in scene.people.values():
        person.held = [held for held in person.held if inner not in held.items]
    scene.bags.pop(inner, None)
    scene.bags[act.item] = BagState(Level.REDUCED, act.by.zone)


def take_hold(scene: Scene, act: Act, item: str) -> None:
    """A hand touches a bag and lets it stand."""
    if _bag_here(scene, act, item) is not None:
        handle_bag(scene, act, item)


def take_bag(scene: Scene, act: Act) -> None:
    """A bag is picked up and is then in the hand."""
    bag = _bag_here(scene, act, act.item)
    if bag is not None:
        handle_bag(scene, act, act.item)
        act.by.held.append(held_bag(scene, act, act.item))


def held_bag(scene: Scene, act: Act, item: str) -> Held:
    """A bag in the hand, as it is now."""
    level = scene.bags[item].level
    return Held((item,), level, act.moment, grip=level, layer=act.by.top_layer())


def pick_up(scene: Scene, act: Act, item: str) -> Held | None:
    """A bag that is not in the hand yet is picked up to be put or handed on; None where it lies elsewhere."""
    if _bag_here(scene, act, item) is None:
        return None
    handle_bag(scene, act, item)
    return held_bag(scene, act, item)


def handle_bag(scene: Scene, act: Act, item: str) -> None:
    """Hand layer and outside of the bag meet; a contaminated bag makes hygiene due."""
    receive_bag(scene, act, act.by, item)


def receive_bag(scene: Scene, act: Act, person: Person, item: str) -> None:
    """The hand of a person who takes the bag from somebody meets it in the same way."""
    bag = scene.bags[item]
    before = bag.level
    bag.level = max(before, person.hand_level())
    hand_meets(scene, person, before, item)
    if before is Level.CONTAMINATED:
        person.pending = Pending(item, act.moment)


def zone_level(scene: Scene, person: Person) -> Level:
    """What the zone of a person does to the outside of a bag: contaminated class and dirty floor soil it."""
    zone = scene.zone(person)
    is_dirty = zone.zone_class is ZoneClass.CONTAMINATED or zone.floor == "dirty"
    return Level.CONTAMINATED if is_dirty else Level.CLEAN


def _bag_here(scene: Scene, act: Act, item: str) -> BagState | None:
    """The bag, where the person is or holds it; rule LY-6 where it lies in another zone.

    One that nothing was said of before comes from this zone and is as clean as this zone leaves it.
    """
    bag = scene.bags.get(item)
    if bag is None:
        bag = scene.bags[item] = BagState(zone_level(scene, act.by), act.by.zone)
    if bag.zone != act.by.zone:
        message = f"Not here at this step: {scene.name(item)}; it is in zone {scene.name(bag.zone)}."
        scene.report(NOT_WORN, message, item=item, person=act.by, field="item")
        return None
    return bag


def carry_held(scene: Scene, person: Person) -> None:
    """What is in the hand of a person is where the person is, and a contaminated zone reaches it."""
    level = zone_level(scene, person)
    for held in person.held:
        for item in held.items:
            bag = scene.bags.get(item)
            if bag is not None:
                bag.zone, bag.level = person.zone, max(bag.level, level)
                held.level = held.grip = bag.level
        if scene.zone(person).zone_class is ZoneClass.CONTAMINATED:
            held.level = Level.CONTAMINATED
