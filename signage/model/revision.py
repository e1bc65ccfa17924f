"""The fingerprint of a protocol's content: what decides whether a printed sheet is still true."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import MISSING, Field, fields, is_dataclass
from datetime import date
from enum import Enum
from functools import cache
from typing import Any

from signage.model.library import Door, Library, Protocol, Ward

_NOT_CONTENT = {"place", "places"}
_SCALARS = frozenset({str, int, float, bool})


def plain(value: Any, *, has_places: bool = False) -> Any:
    """The value as dictionaries, lists and scalars; places in files only where they are asked for."""
    if value is None or type(value) in _SCALARS:
        return value
    if is_dataclass(value) and not isinstance(value, type):
        values = ((each, getattr(value, each.name)) for each in _fields(type(value), has_places))
        return {
            each.name: plain(item, has_places=has_places)
            for each, item in values
            if not _says_nothing(each, item)
        }
    if isinstance(value, dict) or hasattr(value, "items"):
        return {str(key): plain(item, has_places=has_places) for key, item in value.items()}
    if isinstance(value, (tuple, list)):
        return [plain(item, has_places=has_places) for item in value]
    if isinstance(value, (set, frozenset)):
        return sorted((plain(item, has_places=has_places) for item in value), key=str)
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, date):
        return value.isoformat()
    return value


@cache
def _fields(kind: type[Any], has_places: bool) -> tuple[Field[Any], ...]:
    return tuple(each for each in fields(kind) if has_places or each.name not in _NOT_CONTENT)


def _says_nothing(field: Field[Any], value: Any) -> bool:
    """Whether a field that older content cannot hold has its default value (see ``LATER``)."""
    if "later" not in field.metadata:
        return False
    default = field.default if field.default_factory is MISSING else field.default_factory()
    return bool(value == default)


def protocol_content(library: Library, protocol: Protocol, pictures: Mapping[str, str]) -> dict[str, Any]:
    """What readers of a protocol see or act on, without the texts of other languages, as plain values.

    Steps and source texts, the values of the policy, the kit it uses and which models of it the ward has,
    the zones it uses with their doors and fixtures, and its pictures: ``pictures`` maps the name of each to
    the fingerprint of its scene. Printers, wall slots and how many read which language change nothing, nor
    do comments or the order of keys.
    """
    used = {step.picture for step in protocol.steps}
    ward = library.wards[protocol.ward]
    zones = _zones_in_use(ward, protocol)
    kit = sorted(_kit_in_use(library, protocol))
    models = {name: ward.models[name] for name in kit if name in ward.models}
    return {
        "hospital": library.name,
        "source": library.source_locale,
        "protocol": plain(protocol),
        "policy": {name: plain(policy.value) for name, policy in library.policy.items()},
        "ward": {
            "id": ward.id,
            "name": ward.name,
            "zones": {name: plain(ward.zones[name]) for name in sorted(zones)},
            "doors": sorted(_door(door) for door in ward.doors if {door.start, door.end} <= zones),
            "fixtures": {
                name: plain(fixture) for name, fixture in ward.fixtures.items() if fixture.zone in zones
            },
            **({"models": models} if models else {}),
        },
        "kit": {name: plain(library.garments[name]) for name in kit},
        "pictures": {name: pictures.get(name, "") for name in sorted(used)},
    }


def _door(door: Door) -> list[str]:
    """From where to where, with a window or a way of opening only where one is declared."""
    return [door.start, door.end, *(["window"] if door.window else []), *filter(None, [door.opening])]


def language_content(
    library: Library, tag: str, texts: Mapping[str, str | None], numerals: str
) -> dict[str, Any]:
    """The words of a protocol in one language as plain values: texts by context, glossary and digits."""
    return {
        "texts": dict(texts),
        "numerals": numerals,
        "terms": {
            term.id: [plain(term.approved.get(tag)), plain(term.forbidden.get(tag))] for term in library.terms
        },
    }


def _zones_in_use(ward: Ward, protocol: Protocol) -> set[str]:
    """Where people begin and end, where they go, and where the fixtures stand that steps name."""
    actions = [action for step in protocol.steps for action in step.actions]
    named = {
        name
        for action in actions
        for name in (action.bin, action.chair, action.fixture, action.target, *action.any_of)
    }
    zones = {person.starts_in for person in protocol.people} | {protocol.ends_in}
    zones |= {action.to for action in actions if action.to is not None}
    zones |= {fixture.zone for name, fixture in ward.fixtures.items() if name in named}
    return zones & ward.zones.keys()


def _kit_in_use(library: Library, protocol: Protocol) -> set[str]:
    """What steps name and people wear, and what lies over or under it."""
    actions = [action for step in protocol.steps for action in step.actions]
    found = {name for person in protocol.people for name in person.wears}
    found |= {
        name
        for action in actions
        for name in (action.item, action.together, action.layer, action.target)
        if name is not None
    }
    known = found & library.garments.keys()
    while True:
        garments = [library.garments[name] for name in known]
        wider = (
            known
            | {name for each in garments for name in (*each.over, *each.needs_under)}
            & library.garments.keys()
        )
        if wider == known:
            return known
        known = wider
