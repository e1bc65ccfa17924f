"""Where things go: bins and tubs, other hands, and bins that are replaced."""

from __future__ import annotations

from signage.ground.problem import Severity
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
from signage.rehearse.verbs.operating import operate


def discard(scene: Scene, act: Act) -> None:
    """What is in the hand, or the named thing, goes into a bin."""
    item = act.action.item
    held = [each for each in act.by.held if item is None or item in each.items]
    if not held and item is not None:
        held = [Held((item,), act.by.hand_level(), act.moment)]
    for each in held:
        if act.action.bin is None:
            message = f"No bin is named for: {scene.setting.names(each.items)}."
            scene.report(NEVER_DISCARDED, message, item=each.items[0], person=act.by)
            _let_go(scene, act, each)
        else:
            discard_held(scene, act, each, act.action.bin)


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
    """A thing goes from hand to hand; if it is contaminated, hygiene is due to who receives it."""
    item = act.item
    held = next((each for each in act.by.held if item in each.items), None)
    garment = scene.setting.garments[item]
    if held is None and garment.covers and act.by is not act.on:
        message = f"Not in the hand of {act.by.id} at this step: {scene.name(item)}."
        scene.report(NOT_WORN, message, item=item, person=act.by, field="item")
        return
    if held is None:
        held = Held((item,), act.by.hand_level(), act.moment)
    _let_go(scene, act, held)
    hand_meets(scene, act.on, held.level, item)
    act.on.held.append(Held(held.items, held.level, act.moment, held.surfaces, held.owner))
    if held.level is Level.CONTAMINATED:
        act.on.pending = Pending(item, act.moment)


def replace(scene: Scene, act: Act) -> None:
    """A fixture is emptied or renewed: hands meet the old one, then it is as new."""
    key = act.action.fixture or ""
    if not scene.is_here(key, act.by):
        message = f"{scene.name(key)} is not in zone {scene.name(act.by.zone)}."
        scene.report(FIXTURE_ELSEWHERE, message, item=key, person=act.by, field="fixture")
    hand_and_fixture_meet(scene, act.by, key)
    state = scene.fixtures[key]
    state.level, state.holds, state.is_charged, state.last_user = Level.CLEAN, 0, True, None
