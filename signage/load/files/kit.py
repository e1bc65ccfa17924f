"""kit.yaml: garments with the physical facts about them, and things that are handled but never worn."""

from __future__ import annotations

from typing import Annotated

from signage.load.building import build_each
from signage.load.kinds import Identifier, Name, YesNo, one_of
from signage.load.validation import NONE, Entry
from signage.load.yaml.nodes import Node, child
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

    name: Name
    """What sheets call it."""

    kind: Annotated[str, one_of(*GARMENT_KINDS)]
    """What sort of thing it is."""

    covers: tuple[Site, ...] = ()
    """The parts of the body that it covers."""

    over: tuple[Identifier, ...] = ()
    """The garments that it lies over."""

    needs_under: tuple[Identifier, ...] = ()
    """Garments that have to be worn beneath it."""

    fasteners: tuple[Identifier, ...] = ()
    """Names of ties, zips and straps that are closed and opened in steps of their own."""

    open_when_donned: YesNo = False
    """Whether its fasteners are open directly after it was put on."""

    technique: Technique | None = None
    """How it comes off, unless the step says otherwise; without it, the worst is assumed."""

    checks: tuple[Identifier, ...] = ()
    """Names of checks that are due before a contaminated zone, such as seal."""

    inspect: YesNo = False
    """Whether it has to be inspected before it is put on."""

    face: YesNo = False
    """Whether its front is close to the face, so that hands must not grab it there."""

    needs_seat: YesNo = False
    """Whether one has to sit to take it off."""

    strap_under: YesNo = False
    """Whether its straps lie under another garment, and so stay clean."""

    barrier: YesNo = True
    """Whether it keeps something off; no for own clothes and shoes."""

    reusable: YesNo = False
    """Whether it is cleaned and used again."""

    protects: tuple[Identifier, ...] = ()
    """The hazards that it protects from, such as contact or splash."""

    parallel: YesNo = False
    """Whether it may share a part of the body with another garment, with neither over the other."""

    pictures: dict[Use, Identifier] = NONE
    """The picture of each use."""


class ItemEntry(Entry):
    """Something that is handled and never worn, so that it covers nothing."""

    name: Name
    """What sheets call it."""

    kind: Annotated[str, one_of(*ITEM_KINDS)]
    """What sort of thing it is."""

    reusable: YesNo = False
    """Whether it is cleaned and used again."""

    protects: tuple[Identifier, ...] = ()
    """The hazards that it protects from."""

    pictures: dict[Use, Identifier] = NONE
    """The picture of each use."""


class KitEntry(Entry):
    """All of kit.yaml."""

    garments: dict[Identifier, GarmentEntry]
    """Each garment by its identifier."""

    items: dict[Identifier, ItemEntry] = NONE
    """Each thing that is handled but never worn, by its identifier."""


def build_kit(entry: KitEntry, node: Node) -> dict[str, Garment]:
    """Garments and items of a valid kit.yaml in the order of the file; an item is no barrier."""
    garments = build_each(Garment, entry.garments, child(node, "garments"))
    items = build_each(
        Garment, entry.items, child(node, "items"), more=lambda _key, _item: {"barrier": False}
    )
    return garments | items
