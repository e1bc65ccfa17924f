"""Worn kit, own clothes and shoes, waste bags and things are wiped."""

from __future__ import annotations

from signage.rehearse import local_policy
from signage.rehearse.rules.hands import AGENT_NOT_ALLOWED
from signage.rehearse.rules.places import CONTACT_TIME_TOO_SHORT, FIXTURE_ELSEWHERE
from signage.rehearse.state.level import Level
from signage.rehearse.state.meeting import hand_meets
from signage.rehearse.state.people import Pending, Person, Worn
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.verbs.bags import take_hold
from signage.rehearse.verbs.handling import handle_outside, worn_item
from signage.rehearse.verbs.things import clean_thing

_FEET = "feet"
_USUAL_AGENT = "wipe"


def wipe(scene: Scene, act: Act) -> None:
    """Something worn, a waste bag or a thing is wiped outside: ``reduced`` at best; the hand has met it.

    What is outermost on the feet is wiped with its sole. Agent and time are those of local policy; with
    others nothing changes but the hand.
    """
    _find_fixtures(scene, act)
    if act.action.item is None:
        clean_thing(scene, act, act.action.thing or "")
        return
    if scene.is_bag(act.item):
        _wipe_bag(scene, act)
        return
    worn = worn_item(scene, act)
    if worn is None:
        return
    handle_outside(scene, act, worn)
    has_sole = worn.id in scene.layers.outermost_at(_FEET, act.on.worn)
    if has_sole:
        _meet_sole(scene, act, act.on, worn)
    if _is_allowed(scene, act) and _is_long_enough(scene, act):
        worn.lower()
        if has_sole:
            act.on.soles = min(act.on.soles, Level.REDUCED)


def _wipe_bag(scene: Scene, act: Act) -> None:
    """The outside of a waste bag is disinfected."""
    take_hold(scene, act, act.item)
    if _is_allowed(scene, act) and _is_long_enough(scene, act):
        bag = scene.bags[act.item]
        bag.level = min(bag.level, Level.REDUCED)


def _find_fixtures(scene: Scene, act: Act) -> None:
    """Rule ZN-5 for where wipes are taken from."""
    for key in act.fixtures:
        scene.use(key)
        if not scene.is_here(key, act.by):
            message = f"Named: {scene.name(key)}; it is not in zone {scene.name(act.by.zone)}."
            scene.report(FIXTURE_ELSEWHERE, message, item=key, person=act.by, field="fixture")


def _meet_sole(scene: Scene, act: Act, person: Person, worn: Worn) -> None:
    """The hand that wipes a shoe meets what the floor left on it."""
    hand_meets(scene, act.by, person.soles, worn.id)
    if person.soles is Level.CONTAMINATED:
        act.by.pending = Pending(worn.id, act.moment)


def _is_allowed(scene: Scene, act: Act) -> bool:
    """Rule HH-4."""
    agent = act.action.agent or _USUAL_AGENT
    allowed = scene.policy.words(local_policy.AGENTS_ON_KIT)
    if agent not in allowed:
        wanted = ", ".join(allowed) or "nothing"
        message = f"{agent} on {scene.name(act.item)}; local policy allows: {wanted}."
        scene.report(AGENT_NOT_ALLOWED, message, item=act.item, person=act.on, field="agent")
    return agent in allowed


def _is_long_enough(scene: Scene, act: Act) -> bool:
    """Rule FX-4."""
    least = scene.policy.number(local_policy.MINIMUM_WIPE)
    if act.seconds is not None and act.seconds >= least:
        return True
    if act.seconds is None and not least:
        return True
    found = "No time is named" if act.seconds is None else f"{act.seconds} s"
    message = f"{found}; local policy wants {scene.name(act.item)} wet for at least {least} s."
    scene.report(CONTACT_TIME_TOO_SHORT, message, item=act.item, person=act.by, field="seconds")
    return False
