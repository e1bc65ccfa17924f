"""The pre-pass: everything that is named must exist and be of the kind that is wanted (rules ST-1, ST-2)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from signage.model.choices import ActionVerb
from signage.model.garment import Garment
from signage.model.library import Action
from signage.rehearse.rules.conduct import SAME_STEP_TWICE, UNKNOWN_REFERENCE
from signage.rehearse.state.body import HANDS, SKIN
from signage.rehearse.state.scene import BAG, Scene
from signage.rehearse.state.setting import Schedule, Setting
from signage.rehearse.techniques import TECHNIQUES

AGENTS = frozenset({"rub", "wash", "chlorine", "wipe"})

_NEEDED: Mapping[ActionVerb, tuple[str, ...]] = MappingProxyType(
    {
        ActionVerb.NEED: ("need",),
        ActionVerb.CHECK: ("item", "check"),
        ActionVerb.DON: ("item",),
        ActionVerb.DOFF: ("item",),
        ActionVerb.FASTEN: ("item",),
        ActionVerb.UNFASTEN: ("item",),
        ActionVerb.HYGIENE: ("agent",),
        ActionVerb.TOUCH: ("target",),
        ActionVerb.MOVE: ("to",),
        ActionVerb.SIT: ("chair",),
        ActionVerb.HANDOVER: ("item", "on"),
        ActionVerb.REPLACE: ("fixture",),
        ActionVerb.BRANCH: ("to",),
        ActionVerb.RAISE: ("item", "part"),
        ActionVerb.LOWER: ("item", "part"),
        ActionVerb.CHANGE_CLOTHES: ("item",),
    }
)
_EITHER: Mapping[ActionVerb, tuple[str, str]] = MappingProxyType(
    {
        ActionVerb.ADJUST: ("item", "target"),
        ActionVerb.DISINFECT: ("fixture", "thing"),
        ActionVerb.WIPE: ("item", "thing"),
        ActionVerb.TAKE: ("thing", "item"),
        ActionVerb.PUT_DOWN: ("thing", "item"),
    }
)
"""Fields of which a verb needs one."""

_WEARING = frozenset(
    {
        ActionVerb.CHECK,
        ActionVerb.DON,
        ActionVerb.DOFF,
        ActionVerb.FASTEN,
        ActionVerb.UNFASTEN,
        ActionVerb.ADJUST,
        ActionVerb.WIPE,
        ActionVerb.RAISE,
        ActionVerb.LOWER,
        ActionVerb.CHANGE_CLOTHES,
    }
)
_OF_A_BAG = frozenset({ActionVerb.TAKE, ActionVerb.PUT_DOWN})
_OF_A_BAG_TOO = frozenset({ActionVerb.FASTEN, ActionVerb.WIPE})
"""Verbs that are said of waste bags: only of them, and of them as of garments."""

_FIXTURE_KINDS: Mapping[ActionVerb, tuple[str, ...]] = MappingProxyType(
    {ActionVerb.HYGIENE: ("dispenser", "sink"), ActionVerb.MAT: ("mat",)}
)

Fault = tuple[str, str]
"""The field at fault and the message."""


def setting_faults(setting: Setting) -> list[str]:
    """What is wrong with people, ward and end; nothing can be rehearsed while it stands."""
    zones, protocol = setting.ward.zones, setting.protocol
    faults = [] if zones else [f"The ward '{protocol.ward}' is not in the library."]
    for actor in protocol.people:
        if zones and actor.starts_in not in zones:
            faults.append(f"{actor.id} starts in '{actor.starts_in}', which is no zone of the ward.")
        if zones and actor.comes_from is not None and actor.comes_from not in zones:
            faults.append(f"{actor.id} comes from '{actor.comes_from}', which is no zone of the ward.")
        strange = [item for item in actor.wears if not _is_garment(setting, item)]
        faults += [f"{actor.id} wears '{item}', which is no garment of the kit." for item in strange]
    if zones and protocol.ends_in not in zones:
        faults.append(f"The protocol ends in '{protocol.ends_in}', which is no zone of the ward.")
    return faults


def look_at_references(scene: Scene, schedule: Schedule) -> frozenset[int]:
    """Reports ST-1 and ST-2; the result are the positions of steps that must be skipped."""
    skipped = set()
    seen: set[str] = set()
    for index, (_phase, step) in enumerate(schedule):
        if step.id in seen:
            message = f"There is an earlier step '{step.id}'."
            scene.report_form(SAME_STEP_TWICE, message, step.at("id"), step=step.id)
        seen.add(step.id)
        for action in step.actions:
            for field, message in _action_faults(scene.setting, action):
                skipped.add(index)
                place = action.places.get(field, step.place)
                scene.report_form(UNKNOWN_REFERENCE, message, place, step=step.id, item=field)
    return frozenset(skipped)


def _action_faults(setting: Setting, action: Action) -> Iterator[Fault]:
    """Everything that one movement names and that is not there, or is of another kind."""
    for field in _NEEDED.get(action.verb, ()):
        if getattr(action, field) is None:
            yield "verb", f"The verb '{action.verb}' needs '{field}'."
    either = _EITHER.get(action.verb, ())
    if either and all(getattr(action, field) is None for field in either):
        wanted = " or ".join(f"'{field}'" for field in either)
        yield "verb", f"The verb '{action.verb}' needs {wanted}."
    yield from _people_and_words(setting, action)
    yield from _kit(setting, action)
    yield from _places(setting, action)


def _people_and_words(setting: Setting, action: Action) -> Iterator[Fault]:
    people = {actor.id for actor in setting.protocol.people}
    for field in ("by", "on"):
        name = getattr(action, field)
        if name is not None and name not in people:
            yield field, f"'{name}' is not a person of this protocol."
    if action.technique is not None and action.technique not in TECHNIQUES:
        yield "technique", f"'{action.technique}' is not a technique."
    if action.agent is not None and action.agent not in AGENTS:
        yield "agent", f"'{action.agent}' is not an agent."
    if action.thing is not None and action.thing not in setting.protocol.things:
        yield "thing", f"'{action.thing}' is not a thing of this protocol."


def _is_garment(setting: Setting, name: str) -> bool:
    """Whether something can be worn: it is in the kit and covers a part of the body."""
    return name in setting.garments and bool(setting.garments[name].covers)


def _is_bag(setting: Setting, name: str | None) -> bool:
    """Whether something is a waste bag."""
    return name is not None and name in setting.garments and setting.garments[name].kind == BAG


def _must_be_worn(setting: Setting, verb: ActionVerb, item: str) -> bool:
    """Whether a verb is said of garments only, or of garments and bags, and the item is neither."""
    if verb in _OF_A_BAG_TOO and _is_bag(setting, item):
        return False
    return verb in _WEARING and not _is_garment(setting, item)


def _goes_together(setting: Setting, action: Action, partner: str) -> bool:
    """Garments leave together; a bag goes into a bag that is tied."""
    if _is_bag(setting, action.item):
        return _is_bag(setting, partner)
    return _is_garment(setting, partner)


def _is_glove(setting: Setting, name: str) -> bool:
    """Whether something is a hand layer: it is in the kit and covers the hands."""
    return name in setting.garments and HANDS in setting.garments[name].covers


def _kit(setting: Setting, action: Action) -> Iterator[Fault]:
    """Items, layers, fasteners and checks."""
    item = action.item
    if item is not None and item not in setting.garments:
        yield "item", f"'{item}' is not in the kit."
    elif item is not None and action.verb in _OF_A_BAG and not _is_bag(setting, item):
        yield "item", f"'{item}' is no waste bag; '{action.verb}' needs one, or a thing."
    elif item is not None and _must_be_worn(setting, action.verb, item):
        yield "item", f"'{item}' is never worn; '{action.verb}' needs something that is."
    elif item is not None:
        garment = setting.garments[item]
        if (
            action.verb is ActionVerb.CHECK
            and action.check is not None
            and action.check not in garment.checks
        ):
            yield "check", f"'{action.check}' is not a check of '{item}'."
        known = _parts_for(action.verb, garment)
        if known is not None and action.part is not None and action.part not in known:
            yield "part", f"'{action.part}' is no part of '{item}' that the verb '{action.verb}' is said of."
    if action.together is not None and not _goes_together(setting, action, action.together):
        yield "together", f"'{action.together}' is not a garment of the kit."
    layer = action.layer
    if layer is not None and layer != SKIN and not _is_glove(setting, layer):
        yield "layer", f"'{layer}' is neither skin nor a garment that covers the hands."


def _parts_for(verb: ActionVerb, garment: Garment) -> tuple[str, ...] | None:
    """What of a garment a verb can be said of; None where the verb is said of no part."""
    if verb in (ActionVerb.FASTEN, ActionVerb.UNFASTEN):
        return garment.fasteners
    if verb in (ActionVerb.RAISE, ActionVerb.LOWER):
        return tuple(garment.parts)
    return (*garment.adjusters, *garment.parts) if verb is ActionVerb.ADJUST else None


def _places(setting: Setting, action: Action) -> Iterator[Fault]:
    """Fixtures and their kinds, zones, targets and branches."""
    fixture_kinds = _FIXTURE_KINDS.get(action.verb, ())
    wanted = (
        ("bin", action.bin, ("bin", "tub")),
        ("chair", action.chair, ("chair",)),
        ("fixture", action.fixture, fixture_kinds),
        *(("any_of", name, fixture_kinds) for name in action.any_of),
    )
    for field, name, kinds in wanted:
        if name is None:
            continue
        fixture = setting.ward.fixtures.get(name)
        if fixture is None:
            yield field, f"'{name}' is not a fixture of the ward."
        elif kinds and fixture.kind not in kinds:
            yield field, f"'{name}' is a {fixture.kind}; wanted: {' or '.join(kinds)}."
    if action.verb is ActionVerb.MOVE and action.to is not None and action.to not in setting.ward.zones:
        yield "to", f"'{action.to}' is not a zone of the ward."
    if action.verb is ActionVerb.BRANCH and action.to is not None and action.to not in setting.branches:
        yield "to", f"'{action.to}' is neither a step of this protocol nor a protocol."
    yield from _target(setting, action)


def _target(setting: Setting, action: Action) -> Iterator[Fault]:
    name = action.target
    if action.verb not in (ActionVerb.TOUCH, ActionVerb.ADJUST) or name is None:
        return
    known = {*setting.sites, *setting.ward.fixtures, *setting.protocol.things}
    if name not in known and not _is_garment(setting, name) and not _is_bag(setting, name):
        yield "target", f"'{name}' is neither a part of the body, nor worn, nor a fixture, nor a thing."
