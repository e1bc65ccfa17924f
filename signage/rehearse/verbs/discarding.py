"""Where things go: bins and tubs, other hands, and bins that are replaced."""

from __future__ import annotations

from signage.ground.problem import Severity
from signage.model.choices import ZoneClass
from signage.rehearse.rules.layering import NOT_WORN
from signage.rehearse.rules.places import (
    BIN_ELSEWHERE,
    BIN_OVERFULL,
    CARRIED_INTO_CLEAN_ZONE,
    FIXTURE_ELSEWHERE,
    NEVER_DISCARDED,
    WRONG_BIN,
)
from signage.rehearse.state.level import Level
from signage.rehearse.state.meeting import hand_and_fixture_meet, hand_meets
from signage.rehearse.state.people import Held, LaidDown, Pending
from signage.rehearse.state.scene import Act, FixtureState, Scene
from signage.rehearse.verbs.bags import carry_held, pick_up, receive_bag
from signage.rehearse.verbs.operating import operate


def discard(scene: Scene, act: Act) -> None:
    """What is in the hand, or the named thing, goes into a bin."""
    for each in _in_hand(scene, act, act.action.item):
        if act.action.bin is None:
            message = f"No bin is named for: {scene.setting.names(each.items)}."
            scene.report(NEVER_DISCARDED, message, item=each.items[0], person=act.by)
            _let_go(scene, act, each)
        else:
            discard_held(scene, act, each, act.action.bin)


def _in_hand(scene: Scene, act: Act, item: str | None) -> list[Held]:
    """What is in the hand, or the named thing, which is picked up where it is not there yet."""
    held = [each for each in act.by.held if item is None or item in each.items]
    for each in held:
        _hold_until_now(scene, act, each)
    if held or item is None:
        return held
    if scene.is_bag(item):
        picked = pick_up(scene, act, item)
        return [picked] if picked is not None else []
    return [Held((item,), act.by.hand_level(), act.moment)]


def _hold_until_now(scene: Scene, act: Act, held: Held) -> None:
    """What was held since an earlier movement acts on the hand layer that holds it now.

    If the surface by which it is held is contaminated, hygiene in between was in vain and is due again.
    """
    if act.by.top_layer() == held.layer:
        act.by.join_hand(held.grip)
    else:
        hand_meets(scene, act.by, held.grip, held.items[0])
    if held.grip is Level.CONTAMINATED:
        act.by.pending = Pending(held.items[0], act.moment)


def put_down_held(scene: Scene, act: Act) -> None:
    """A bag that is in the hand is put down in this zone (rule LY-6)."""
    held = [each for each in act.by.held if act.item in each.items]
    if not held:
        message = f"Not in the hand of {act.by.id} at this step: {scene.name(act.item)}."
        scene.report(NOT_WORN, message, item=act.item, person=act.by, field="item")
    for each in held:
        _hold_until_now(scene, act, each)
        _let_go(scene, act, each)


def discard_held(scene: Scene, act: Act, held: Held, target: str) -> None:
    """Something that is held goes into a bin or tub, and counts as gone even where that is at fault."""
    state = scene.use(target)
    if not scene.is_here(target, act.by):
        here, there = scene.name(act.by.zone), scene.name(state.fixture.zone)
        message = f"{scene.name(target)} is in zone {there}, the person in zone {here}."
        scene.report(BIN_ELSEWHERE, message, item=held.items[0], person=act.by, field="bin")
        _judge_kind(scene, act, held, state)
    else:
        _judge_kind(scene, act, held, state)
        _judge_room_left(scene, act, held, state)
        operate(scene, act.by, target, "bin")
    for item, surfaces in zip(held.items, held.surfaces, strict=False):
        scene.laid_down[held.owner, item] = LaidDown(surfaces, target)
    for item in held.items:
        scene.bags.pop(item, None)
    _let_go(scene, act, held)


def _let_go(scene: Scene, act: Act, held: Held) -> None:
    """The hand is free; rule ZN-2 for what it had carried into a clean zone."""
    if held.carried_in is not None:
        message = f"{scene.setting.names(held.items)}, contaminated, carried into a clean zone in the hand."
        scene.report(
            CARRIED_INTO_CLEAN_ZONE, message, item=held.items[0], person=act.by, moment=held.carried_in
        )
    if held in act.by.held:
        act.by.held.remove(held)


def _judge_kind(scene: Scene, act: Act, held: Held, state: FixtureState) -> None:
    """Rule BN-3, also of a bin that stands elsewhere: the right bin is then still to be named."""
    bin_name = scene.name(state.fixture.id)
    refused = tuple(item for item in held.items if item not in state.fixture.accepts)
    if refused:
        message = f"{bin_name} does not accept: {scene.setting.names(refused)}."
        severity = Severity.S1 if any(_must_not_be_lost(scene, state, item) for item in refused) else None
        scene.report(WRONG_BIN, message, item=refused[0], person=act.by, severity=severity, field="bin")


def _judge_room_left(scene: Scene, act: Act, held: Held, state: FixtureState) -> None:
    """Rule BN-5."""
    state.holds += len(held.items)
    capacity = state.fixture.capacity
    if capacity is not None and state.holds > capacity:
        message = f"{scene.name(state.fixture.id)} would hold {state.holds}; declared capacity: {capacity}."
        scene.report(BIN_OVERFULL, message, item=held.items[0], person=act.by, field="bin")


def _must_not_be_lost(scene: Scene, state: FixtureState, item: str) -> bool:
    """Sharp things hurt whoever empties a bin; reusable things in a waste bin are destroyed."""
    garment = scene.setting.garments[item]
    return garment.kind == "sharps" or (garment.reusable and state.fixture.kind == "bin")


def hand_over(scene: Scene, act: Act) -> None:
    """A thing goes from hand to hand and lands where the receiver stands (rule ZN-2).

    If it is contaminated, hygiene is due to who receives it.
    """
    item, is_worn = act.item, bool(scene.setting.garments[act.item].covers)
    if is_worn and act.by is not act.on and not any(item in each.items for each in act.by.held):
        message = f"Not in the hand of {act.by.id} at this step: {scene.name(item)}."
        scene.report(NOT_WORN, message, item=item, person=act.by, field="item")
        return
    for held in _in_hand(scene, act, item):
        _let_go(scene, act, held)
        _receive(scene, act, held)


def _receive(scene: Scene, act: Act, held: Held) -> None:
    """The receiver's hand layer meets the outside, and the thing is in that hand."""
    person, item = act.on, held.items[0]
    if item in scene.bags:
        receive_bag(scene, act, person, item)
        held.level = scene.bags[item].level
    else:
        hand_meets(scene, person, held.level, item)
        if held.level is Level.CONTAMINATED:
            person.pending = Pending(item, act.moment)
    if held.level is Level.CONTAMINATED and _comes_into_clean_zone(scene, act):
        message = (
            f"{scene.setting.names(held.items)}, contaminated, handed into zone {scene.name(person.zone)}."
        )
        scene.report(CARRIED_INTO_CLEAN_ZONE, message, item=item, person=act.by)
    layer = person.top_layer()
    person.held.append(Held(held.items, held.level, act.moment, held.surfaces, held.owner, held.level, layer))
    carry_held(scene, person)


def _comes_into_clean_zone(scene: Scene, act: Act) -> bool:
    """Whether a hand-over goes over the line of a clean zone."""
    return scene.zone(act.on).zone_class is ZoneClass.CLEAN is not scene.zone(act.by).zone_class


def replace(scene: Scene, act: Act) -> None:
    """A fixture is emptied or renewed: hands meet the old one, then it is as new."""
    key = act.action.fixture or ""
    if not scene.is_here(key, act.by):
        message = f"{scene.name(key)} is not in zone {scene.name(act.by.zone)}."
        scene.report(FIXTURE_ELSEWHERE, message, item=key, person=act.by, field="fixture")
    hand_and_fixture_meet(scene, act.by, key)
    state = scene.fixtures[key]
    state.level, state.holds, state.is_charged, state.last_user = Level.CLEAN, 0, True, None
