"""References of a protocol: its ward, its people, and what its actions name."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import replace

from signage.ground.problem import Problem
from signage.load import faults
from signage.load.declared import Declared, Names, WardNames, judge, judge_each, step_names
from signage.load.files.kit import SITES
from signage.load.hazards import hazard_problems, technique_problems
from signage.load.kinds import IDENTIFIER, WHOLE_NUMBER
from signage.load.placeholders import step_placeholder_problems
from signage.load.references import GARMENT, picture_problems
from signage.load.step_grammar import HYGIENE_PARTS, action_problems, actions_of, steps_of
from signage.load.suggestion import shorten, suggest
from signage.load.yaml.nodes import Node, Table, Text, child, entries_of, items_of, text_of, texts_of
from signage.model.choices import ActionVerb

SKIN = "skin"
"""The hand layer beneath all gloves."""

_ZONE = "a zone of the protocol's ward"


def protocol_problems(
    protocol: Node, declared: Declared, pictures: Collection[str] | None
) -> Iterator[Problem]:
    """Everything in a protocol (in normal form) that names something which is not declared."""
    ward_name = text_of(protocol, "ward")
    ward = declared.wards.get(ward_name.text) if ward_name else None
    if ward is None and declared.is_complete:
        yield from judge(ward_name, dict.fromkeys(declared.wards, "ward"), "a ward of this library")
    zones = ward.zones if ward else None
    things: Names = dict.fromkeys(entries_of(protocol, "things"), "thing")
    for person in entries_of(protocol, "people").values():
        yield from judge(text_of(person, "starts-in"), zones, _ZONE)
        yield from judge(text_of(person, "comes-from"), zones, _ZONE)
        yield from judge_each(texts_of(person, "carries"), things, "a thing of this protocol")
        yield from judge_each(texts_of(person, "wears"), declared.kit, "a garment of kit.yaml", GARMENT)
    for thing in entries_of(protocol, "things").values():
        yield from judge(text_of(thing, "stays-in"), zones, _ZONE)
    yield from hazard_problems(protocol, declared)
    yield from judge(text_of(protocol, "ends-in"), zones, _ZONE)
    for phase in items_of(protocol, "phases"):
        yield from _seconds_problems(text_of(phase, "seconds"), declared)
        notes = child(phase, "notes")
        if isinstance(notes, Table):
            keys = [Text(key, notes.key_place(key)) for key in notes.values]
            yield from judge_each(keys, zones, _ZONE)
    for step in steps_of(protocol):
        name = text_of(step, "step")
        for problem in _step_problems(step, protocol, ward, declared, pictures):
            yield replace(problem, step=name.text if name else None)


_SAID_OF_ITEMS = frozenset(
    {
        ActionVerb.INSPECT,
        ActionVerb.DISCARD,
        ActionVerb.HANDOVER,
        ActionVerb.FASTEN,
        ActionVerb.WIPE,
        ActionVerb.TAKE,
        ActionVerb.PUT_DOWN,
    }
)
"""Verbs that are said of items that nobody wears, too, such as a waste bag that is tied."""


def _step_problems(
    step: Node,
    protocol: Node,
    ward: WardNames | None,
    declared: Declared,
    pictures: Collection[str] | None,
) -> Iterator[Problem]:
    """What is wrong with the names in one step."""
    repeated = text_of(step, "again")
    if repeated is not None:
        what = "a step of this protocol that is written out"
        yield from judge(repeated, step_names(protocol), what, ("step",))
        return
    yield from picture_problems(text_of(step, "picture"), pictures)
    yield from step_placeholder_problems(step, ward)
    for action in actions_of(step):
        yield from action_problems(action)
        people = dict.fromkeys(entries_of(protocol, "people"), "person")
        for key in ("by", "on"):
            yield from judge(text_of(action, key), people, "a person of this protocol")
        yield from _item_problems(action, declared)
        yield from _seconds_problems(text_of(action, "seconds"), declared)
        yield from judge(
            text_of(action, "thing"),
            dict.fromkeys(entries_of(protocol, "things"), "thing"),
            "a thing of this protocol",
        )
        yield from technique_problems(text_of(action, "technique-of"), declared)
        if ward is not None:
            yield from _place_problems(action, protocol, ward, declared)


def _item_problems(action: Node, declared: Declared) -> Iterator[Problem]:
    """The garments and items of an action, and the parts and checks of its item."""
    verb, item = text_of(action, "do"), text_of(action, "item")
    is_worn = verb is not None and verb.text not in _SAID_OF_ITEMS
    for name, is_garment in ((item, is_worn), (text_of(action, "together"), is_worn)):
        if is_garment:
            yield from judge(name, declared.kit, "a garment of kit.yaml", GARMENT)
        else:
            yield from judge(name, declared.kit, "a garment or item of kit.yaml")
    yield from _layer_problems(text_of(action, "layer"), declared)
    part, check = text_of(action, "part"), text_of(action, "check")
    if verb is not None and verb.text == ActionVerb.HYGIENE and part is not None:
        yield from _word_problems(part, HYGIENE_PARTS, "a movement of hand hygiene")
    if item is None or declared.kit is None or item.text not in declared.kit:
        return
    if part is not None and verb is not None:
        yield from _part_problems(part, verb.text, item.text, declared)
    if check is not None:
        yield from _word_problems(check, declared.checks[item.text], f"a check of '{item.text}'")


def _part_problems(part: Text, verb: str, item: str, declared: Declared) -> Iterator[Problem]:
    """A fastener, adjuster or part that its garment does not have."""
    if verb in {ActionVerb.FASTEN, ActionVerb.UNFASTEN}:
        yield from _word_problems(part, declared.fasteners[item], f"a fastener of '{item}'")
    elif verb in {ActionVerb.RAISE, ActionVerb.LOWER}:
        yield from _word_problems(part, declared.parts[item], f"a part of '{item}'")
    elif verb == ActionVerb.ADJUST:
        known = declared.adjusters[item] | declared.parts[item]
        yield from _word_problems(part, known, f"an adjuster or a part of '{item}'")


def _word_problems(word: Text, known: Collection[str], what: str) -> Iterator[Problem]:
    """A word that is not one of a few."""
    if word.text not in known and IDENTIFIER.fullmatch(word.text):
        yield faults.UNKNOWN_REFERENCE.problem(
            f"'{shorten(word.text)}' is not {what}.", word.place, hint=suggest(word.text, known, "There are")
        )


def _layer_problems(layer: Text | None, declared: Declared) -> Iterator[Problem]:
    """The layer of hands that is cleaned: skin or a garment that covers hands."""
    if layer is None or layer.text == SKIN or declared.kit is None:
        return
    kinds = {name: "layer" if name in declared.on_hands else kind for name, kind in declared.kit.items()}
    kinds = {
        name: f"{kind} that does not cover the hands" if kind == "garment" else kind
        for name, kind in kinds.items()
    }
    yield from judge(layer, {**kinds, SKIN: "layer"}, "skin or a garment that covers the hands", ("layer",))


def _seconds_problems(seconds: Text | None, declared: Declared) -> Iterator[Problem]:
    """Seconds that are named by a policy value."""
    if seconds is not None and not WHOLE_NUMBER.fullmatch(seconds.text):
        yield from judge(seconds, declared.policy, "a whole-number value of policy.yaml", ("whole number",))


def _place_problems(action: Node, protocol: Node, ward: WardNames, declared: Declared) -> Iterator[Problem]:
    """The zones and fixtures of an action."""
    verb = text_of(action, "do")
    destination = text_of(action, "to")
    if verb is not None and verb.text == ActionVerb.BRANCH:
        names = {
            **dict.fromkeys(step_names(protocol), "step"),
            **dict.fromkeys(declared.protocols, "protocol"),
        }
        yield from judge(destination, names, "a step of this protocol or a protocol")
    else:
        yield from judge(destination, ward.zones, _ZONE)
    yield from judge(
        text_of(action, "bin"), ward.fixtures, "a bin or tub of the protocol's ward", ("bin", "tub")
    )
    yield from judge(text_of(action, "chair"), ward.fixtures, "a chair of the protocol's ward", ("chair",))
    yield from judge(text_of(action, "fixture"), ward.fixtures, "a fixture of the protocol's ward")
    yield from judge_each(texts_of(action, "any-of"), ward.fixtures, "a fixture of the protocol's ward")
    if declared.kit is not None:
        things = dict.fromkeys(entries_of(protocol, "things"), "thing")
        targets = {**dict.fromkeys(SITES, "site"), **declared.kit, **ward.fixtures, **things}
        what = "a part of the body, a garment, a thing of this protocol or a fixture of the ward"
        yield from judge(text_of(action, "target"), targets, what)
