"""kit.yaml: garments with the physical facts about them, and things that are handled but never worn."""

from __future__ import annotations

from typing import Annotated

from signage.load.building import build_each
from signage.load.kinds import Identifier, ReadableText, YesNo, one_of
from signage.load.nodes import Node, child
from signage.load.validation import NONE, Entry
from signage.model.library import Garment

SITES = (
    "hair", "eyes", "mouth-nose", "ears", "neck", "trunk", "arms", "wrists", "hands", "legs", "feet",
)  # fmt: skip
"""The parts of the body that the rehearsal knows."""

TECHNIQUES = (
    "glove-in-glove", "peel-inside-out", "straps-back", "lift-back", "tear-front", "pull-down",
    "front-grab", "unspecified",
)  # fmt: skip
"""The ways of taking something off that the rehearsal knows."""

GARMENT_KINDS = (
    "glove", "coverall", "gown", "apron", "hood", "cap", "respirator", "mask", "goggles", "face-shield",
    "boot-cover", "boots", "shoes", "clothes", "other",
)  # fmt: skip

ITEM_KINDS = ("supply", "waste", "sharps", "tool")

USES = ("don", "doff", "check", "inspect", "fasten", "unfasten", "hygiene", "name")
"""What a garment can have a picture of."""

Site = Annotated[str, one_of(*SITES)]
Technique = Annotated[str, one_of(*TECHNIQUES)]
Use = Annotated[str, one_of(*USES)]


class GarmentEntry(Entry):
    """Something that is worn."""

    name: ReadableText
    kind: Annotated[str, one_of(*GARMENT_KINDS)]
    covers: tuple[Site, ...] = ()
    over: tuple[Identifier, ...] = ()
    needs_under: tuple[Identifier, ...] = ()
    fasteners: tuple[Identifier, ...] = ()
    open_when_donned: YesNo = False
    technique: Technique | None = None
    checks: tuple[Identifier, ...] = ()
    inspect: YesNo = False
    face: YesNo = False
    needs_seat: YesNo = False
    strap_under: YesNo = False
    barrier: YesNo = True
    reusable: YesNo = False
    protects: tuple[Identifier, ...] = ()
    parallel: YesNo = False
    pictures: dict[Use, Identifier] = NONE


class ItemEntry(Entry):
    """Something that is handled and never worn, so that it covers nothing."""

    name: ReadableText
    kind: Annotated[str, one_of(*ITEM_KINDS)]
    reusable: YesNo = False
    protects: tuple[Identifier, ...] = ()
    pictures: dict[Use, Identifier] = NONE


class KitEntry(Entry):
    """All of kit.yaml."""

    garments: dict[Identifier, GarmentEntry]
    items: dict[Identifier, ItemEntry] = NONE


def build_kit(entry: KitEntry, node: Node) -> dict[str, Garment]:
    """Garments and items of a valid kit.yaml in the order of the file; an item is no barrier."""
    garments = build_each(Garment, entry.garments, child(node, "garments"))
    items = build_each(
        Garment, entry.items, child(node, "items"), more=lambda _key, _item: {"barrier": False}
    )
    return garments | items
