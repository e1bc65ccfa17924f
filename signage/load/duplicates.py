"""Identifiers that stand twice: in one file, or in several."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from signage.ground.problem import Problem
from signage.load import faults
from signage.load.files.kit import SITES
from signage.load.step_grammar import steps_of
from signage.load.yaml.nodes import Node, Table, Text, child, entries_of, items_of, text_of

_BODY = frozenset({*SITES, "skin"})


def _repeated(texts: Iterable[Text | None], what: str) -> Iterator[Problem]:
    """A problem for every text that stood before, in this file or in another."""
    first: dict[str, Text] = {}
    for text in texts:
        if text is None:
            continue
        earlier = first.setdefault(text.text, text)
        if earlier is not text:
            yield faults.REPEATED_KEY.problem(
                f"{what} '{text.text}' stands twice; the first is at {earlier.place}.",
                text.place,
                hint="Give one of the two another name, or delete it.",
            )


def protocol_duplicates(protocol: Node) -> Iterator[Problem]:
    """Two phases or two steps of one name in a protocol; the name is the key of translations and sheets."""
    phases = (text_of(phase, "phase") for phase in items_of(protocol, "phases"))
    yield from _repeated(phases, "The phase")
    yield from _repeated((text_of(step, "step") for step in steps_of(protocol)), "The step")
    things = child(protocol, "things")
    if isinstance(things, Table):
        for key in things.values:
            if key in _BODY:
                yield faults.REPEATED_KEY.problem(
                    f"The name '{key}' is that of a part of the body.",
                    things.key_place(key),
                    hint="Give the thing another name.",
                )


def library_duplicates(
    library: Node | None, wards: Iterable[Node | None], protocols: Iterable[Node | None]
) -> Iterator[Problem]:
    """Wards, protocols and codes of one name in several files, and locales that differ in capitals only."""
    protocols = tuple(protocols)
    yield from _repeated((text_of(ward, "ward") for ward in wards), "The ward")
    yield from _repeated((text_of(protocol, "protocol") for protocol in protocols), "The protocol")
    yield from _repeated((text_of(protocol, "code") for protocol in protocols), "The code")
    locales = child(library, "locales")
    if isinstance(locales, Table):
        tags = (Text(tag.lower(), locales.key_place(tag)) for tag in locales.values)
        yield from _repeated(tags, "The locale")


def kit_duplicates(kit: Node) -> Iterator[Problem]:
    """Names that are both garment and item, or that are a part of the body too."""
    keys: list[Text] = []
    for group in ("garments", "items"):
        node = child(kit, group)
        if isinstance(node, Table):
            keys.extend(Text(key, node.key_place(key)) for key in node.values)
    yield from _repeated(keys, "The name")
    for key in keys:
        if key.text in _BODY:
            yield faults.REPEATED_KEY.problem(
                f"The name '{key.text}' is that of a part of the body.",
                key.place,
                hint="Give the garment another name.",
            )


def ward_duplicates(ward: Node) -> Iterator[Problem]:
    """Two fixtures with one code in one zone: a reader could not tell them apart."""
    by_zone: dict[str, list[Text]] = {}
    for fixture in entries_of(ward, "fixtures").values():
        zone, code = text_of(fixture, "zone"), text_of(fixture, "code")
        if zone is not None and code is not None:
            by_zone.setdefault(zone.text, []).append(code)
    for zone_name, codes in by_zone.items():
        yield from _repeated(codes, f"In the zone '{zone_name}' the code")
