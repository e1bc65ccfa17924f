"""What is looked at before a movement is done: what is in the hand, what is on it, and whose hand it is."""

from __future__ import annotations

from signage.model.choices import ActionVerb, PersonRole
from signage.rehearse import local_policy
from signage.rehearse.rules.conduct import NOBODY_TO_HELP, OBSERVER_TOUCHES
from signage.rehearse.rules.hands import NO_HYGIENE_AFTER_REMOVAL
from signage.rehearse.rules.places import STILL_IN_HAND
from signage.rehearse.state.people import Held, Person
from signage.rehearse.state.scene import Act, Scene

_ALLOWED_WHILE_HOLDING = frozenset(
    {ActionVerb.DISCARD, ActionVerb.SAY, ActionVerb.WAIT, ActionVerb.INSPECT, ActionVerb.BRANCH}
)
_OF_WHAT_IS_HELD = frozenset(
    {ActionVerb.HANDOVER, ActionVerb.PUT_DOWN, ActionVerb.WIPE, ActionVerb.FASTEN, ActionVerb.DON}
)
_ALLOWED_BEFORE_HYGIENE = frozenset(
    {
        ActionVerb.HYGIENE,
        ActionVerb.DISCARD,
        ActionVerb.INSPECT,
        ActionVerb.SAY,
        ActionVerb.WAIT,
        ActionVerb.STAND,
        ActionVerb.BRANCH,
    }
)
_HANDLING = frozenset(
    {
        ActionVerb.INSPECT,
        ActionVerb.CHECK,
        ActionVerb.DON,
        ActionVerb.DOFF,
        ActionVerb.FASTEN,
        ActionVerb.UNFASTEN,
        ActionVerb.TOUCH,
        ActionVerb.ADJUST,
        ActionVerb.HANDOVER,
        ActionVerb.WIPE,
        ActionVerb.RAISE,
        ActionVerb.LOWER,
        ActionVerb.CHANGE_CLOTHES,
    }
)


def look_before(scene: Scene, act: Act) -> None:
    """Rules BN-4, HH-1, RO-1 and RO-2, in this order."""
    _held_item(scene, act)
    _hygiene_still_due(scene, act)
    _whose_hands(scene, act)


def _held_item(scene: Scene, act: Act) -> None:
    """Rule BN-4: something else is done while a removed item is still in the hand."""
    if act.action.verb in _ALLOWED_WHILE_HOLDING:
        return
    for held in act.by.held:
        if not held.was_told and not _is_meant(scene, act, held):
            held.was_told = True
            message = f"Still in the hand: {scene.setting.names(held.items)}; wanted: discard it first."
            scene.report(STILL_IN_HAND, message, item=held.items[0], person=act.by)


def _is_meant(scene: Scene, act: Act, held: Held) -> bool:
    """Whether what is in the hand is what the movement is about, or a bag that is on its way."""
    if act.action.verb is ActionVerb.MOVE:
        return any(scene.is_bag(item) for item in held.items)
    return act.action.verb in _OF_WHAT_IS_HELD and bool(
        {act.action.item, act.action.together} & {*held.items}
    )


def _is_handed_on(act: Act) -> bool:
    """Whether what is in the hand is given to somebody else, which is as good as discarding it."""
    return act.action.verb is ActionVerb.HANDOVER and any(
        act.action.item in held.items for held in act.by.held
    )


def _hygiene_still_due(scene: Scene, act: Act) -> None:
    """Rule HH-1: said once for each removal, then taken as known."""
    pending = act.by.pending
    if pending is None or act.action.verb in _ALLOWED_BEFORE_HYGIENE or _is_handed_on(act):
        return
    if scene.policy.is_yes(local_policy.HYGIENE_EACH):
        after = f"step {pending.moment.step.id} ({scene.name(pending.item)})"
        message = f"No hand hygiene between {after} and this step; the outermost layer was to be cleaned."
        scene.report(NO_HYGIENE_AFTER_REMOVAL, message, item=pending.item, person=act.by)
        act.by.pending = None


def _whose_hands(scene: Scene, act: Act) -> None:
    """Rules RO-1 and RO-2: observers keep their hands off, and whoever helps must be there."""
    verb = act.action.verb
    if verb is ActionVerb.DISCARD:
        _observer_and_waste(scene, act)
        return
    if act.by is act.on or verb not in _HANDLING:
        return
    if verb is ActionVerb.INSPECT and act.by.role is PersonRole.OBSERVER:
        return  # an observer inspects with the eyes
    observers = [person for person in (act.by, act.on) if person.role is PersonRole.OBSERVER]
    if act.by.role is PersonRole.OBSERVER or (verb is ActionVerb.HANDOVER and observers):
        _tell_observer(scene, act, observers[0])
    elif act.by.zone != act.on.zone and not _reach_over_line(scene, act):
        zones = f"{scene.name(act.by.zone)}, {scene.name(act.on.zone)}"
        message = f"{act.by.id} acts on {act.on.id}, and they are in two zones: {zones}."
        scene.report(NOBODY_TO_HELP, message, person=act.by)


def _tell_observer(scene: Scene, act: Act, observer: Person) -> None:
    thing = act.action.item or act.action.target
    message = f"The observer handles: {scene.name(thing)}; observers watch and speak."
    scene.report(OBSERVER_TOUCHES, message, item=thing, person=observer)


def _observer_and_waste(scene: Scene, act: Act) -> None:
    """An observer who discards what somebody else took off handles that kit."""
    if act.by.role is not PersonRole.OBSERVER or act.action.item is None:
        return
    if not any(act.action.item in held.items for held in act.by.held):
        _tell_observer(scene, act, act.by)


def _reach_over_line(scene: Scene, act: Act) -> bool:
    """Whether a thing can be handed over where two zones meet at a door."""
    if act.action.verb is not ActionVerb.HANDOVER:
        return False
    ways = ((act.by.zone, act.on.zone), (act.on.zone, act.by.zone))
    return any(way in scene.setting.doors for way in ways)
