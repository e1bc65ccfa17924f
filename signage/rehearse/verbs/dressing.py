"""Putting on, closing, inspecting and checking."""

from __future__ import annotations

from collections.abc import Iterable

from signage.model.choices import PersonRole
from signage.rehearse.rules.conduct import CHECK_AFTER_COVERED, CHECK_BEFORE_ITEM, KIT_NOT_INSPECTED
from signage.rehearse.rules.contact import CLEAN_KIT_DIRTY_HANDS
from signage.rehearse.rules.hands import GLOVES_ON_WET_HANDS, KIT_BEFORE_HYGIENE
from signage.rehearse.rules.layering import (
    LAYER_BENEATH_MISSING,
    LAYERS_UNDECLARED,
    PUT_ON_TOO_LATE,
    PUT_ON_TWICE,
    WORN_AGAIN,
)
from signage.rehearse.rules.places import CLEAN_KIT_IN_DIRTY_ZONE
from signage.rehearse.state.body import HANDS
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Person, Surfaces, Worn
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.state.surroundings import take_on_the_room
from signage.rehearse.techniques import Surface
from signage.rehearse.verbs.touching import handle_garment, judge_mouth


def put_on(scene: Scene, act: Act) -> None:
    """A garment goes on: clean, its outside at the level of the hands that hold it (gloves by the cuff)."""
    item, person = act.item, act.on
    if item in person.worn:
        message = f"Already worn: {scene.name(item)}."
        scene.report(PUT_ON_TWICE, message, item=item, person=person, field="item")
        return
    _judge_layers(scene, act)
    _judge_cleanness(scene, act)
    worn = _taken(scene, act)
    if HANDS in worn.garment.covers:
        _judge_drying(scene, act)
    else:
        worn.join(act.by.hand_level())
    person.worn[item] = worn
    report_unknown_order(scene, person, item, person.worn)
    take_on_the_room(scene, person, only=item)


def _taken(scene: Scene, act: Act) -> Worn:
    """The garment that goes on: new, or the one that was taken off before (rule LY-9)."""
    garment, person = scene.setting.garments[act.item], act.on
    worn = Worn(garment, act.moment)
    if garment.open_when_donned:
        worn.open_fasteners.update(garment.fasteners)
    if act.action.fresh:
        scene.laid_down.pop((person.id, act.item), None)
        return worn
    surfaces = _surfaces_in_hand(act)
    laid = scene.laid_down.pop((person.id, act.item), None)
    if surfaces is None and laid is not None:
        message = f"{garment.name} lay in {scene.name(laid.place)} and is put on again; wanted: a new one."
        scene.report(WORN_AGAIN, message, item=act.item, person=person, field="item")
        surfaces = laid.surfaces
    if surfaces is not None:
        worn.levels = dict(zip(Surface, surfaces, strict=True))
    return worn


def _surfaces_in_hand(act: Act) -> Surfaces | None:
    """What a garment carries that came off before, is still in the hand, and goes on again from there."""
    for held in act.by.held:
        if held.items == (act.item,) and held.owner == act.on.id and held.surfaces:
            act.by.held.remove(held)
            return held.surfaces[0]
    return None


def _judge_drying(scene: Scene, act: Act) -> None:
    """Rule HH-10, where local policy names a time in which hands dry after a rub."""
    wet = act.on.wet
    if wet is None or wet.layer != act.on.top_layer():
        return
    message = (
        f"{scene.name(act.item)} put on after the rub of {scene.name(wet.layer)}, which local policy lets "
        f"dry for {wet.seconds} s more."
    )
    scene.report(GLOVES_ON_WET_HANDS, message, item=act.item, person=act.on, field="item")


def _judge_layers(scene: Scene, act: Act) -> None:
    """Rules LY-2 and LY-3."""
    item, person = act.item, act.on
    over = scene.layers.covering(item, person.worn)
    if over:
        message = f"Put on too late: {scene.name(item)}; already over it: {scene.setting.names(over)}."
        scene.report(PUT_ON_TOO_LATE, message, item=item, others=over, person=person)
    missing = tuple(g for g in scene.setting.garments[item].needs_under if g not in person.worn)
    if missing:
        message = f"{scene.name(item)} put on; missing beneath: {scene.setting.names(missing)}."
        scene.report(LAYER_BENEATH_MISSING, message, item=item, others=missing, person=person)


def _judge_cleanness(scene: Scene, act: Act) -> None:
    """Rules ZN-1, CT-4, HH-8 and EN-1."""
    item, person, hands = act.item, act.on, act.by
    name = scene.name(item)
    if scene.zone(person).floor == "dirty" and not act.action.fresh:
        message = f"{name} put on over the dirty floor of zone {scene.name(person.zone)}."
        scene.report(CLEAN_KIT_IN_DIRTY_ZONE, message, item=item, person=person)
    if hands.hand_level() is Level.CONTAMINATED:
        message = f"{name} handled with contaminated {scene.name(hands.top_layer())}."
        scene.report(CLEAN_KIT_DIRTY_HANDS, message, item=item, person=hands)
    if not hands.has_cleaned_hands and scene.setting.garments[item].barrier:
        message = f"{name} put on before any hand hygiene."
        scene.report(KIT_BEFORE_HYGIENE, message, item=item, person=hands)
        hands.has_cleaned_hands = True  # said once; all kit after it has the same cause
    if scene.setting.garments[item].inspect and not _is_inspected(scene, person, item):
        message = f"{name} put on without being inspected."
        scene.report(KIT_NOT_INSPECTED, message, item=item, person=person)


def _is_inspected(scene: Scene, person: Person, item: str) -> bool:
    """Whether this person looked it over, or somebody who helps; each wearer has kit of their own."""
    return any(
        each.whole_kit_inspected or item in each.inspected
        for each in scene.people.values()
        if each is person or each.role is not PersonRole.WEARER
    )


def report_unknown_order(scene: Scene, person: Person, item: str, others: Iterable[str]) -> None:
    """Rule LY-A for one garment against others that are worn with it."""
    for other in others:
        if other != item and scene.layers.is_order_unknown(item, other):
            names = scene.setting.names((item, other))
            message = f"Both cover the same part, and no order is declared: {names}."
            scene.report(LAYERS_UNDECLARED, message, item=item, others=(other,), person=person)


def inspect(scene: Scene, act: Act) -> None:  # noqa: ARG001 - every verb is called alike
    """Kit is looked over; an observer who looks at a person checks the whole ensemble on that person."""
    if act.by.role is PersonRole.OBSERVER and act.on is not act.by:
        return  # what it covered is noted after every check
    for person in (act.by, act.on):
        if act.action.item is not None:
            person.inspected.add(act.action.item)
        else:
            person.whole_kit_inspected = True


def check(scene: Scene, act: Act) -> None:
    """A check that the kit requires, such as that of a respirator's seal (rules EN-7 and EN-8).

    Hands hold what they check, so a check is handling as well.
    """
    item, person = act.item, act.on
    worn = person.worn.get(item)
    if worn is None:
        message = f"Checked before it is on: {scene.name(item)}."
        scene.report(CHECK_BEFORE_ITEM, message, item=item, person=person)
        return
    over = scene.layers.covering(item, person.worn)
    if over:
        message = f"Checked after it is covered: {scene.name(item)}, under {scene.setting.names(over)}."
        scene.report(CHECK_AFTER_COVERED, message, item=item, others=over, person=person)
    handle_garment(scene, act, item)
    worn.checks.add(act.action.check or "")
    worn.moved_after_check = None


def meet_need(scene: Scene, act: Act) -> None:
    """A personal need, such as a drink, is met; perhaps through the mouth (rule CT-8)."""
    if act.action.mouth:
        judge_mouth(scene, act.on, f"A need that is met through the mouth ({scene.name(act.action.need)})")
    act.on.needs_met.add(act.action.need or "")
