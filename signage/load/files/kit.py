"""kit.yaml: garments with the physical facts about them, and things that are handled but never worn."""

from __future__ import annotations

from dataclasses import replace
from typing import Annotated, Any

from signage.load.building import build_each
from signage.load.kinds import Identifier, Name, YesNo, one_of
from signage.load.validation import NONE, Entry
from signage.load.yaml.nodes import Node, Sequence, Table, Text, child
from signage.model.garment import Garment, GarmentModel, GarmentPart

SITES = (
    "hair", "eyes", "mouth-nose", "ears", "neck", "trunk", "arms", "wrists", "hands", "legs", "feet",
)  # fmt: skip
"""The parts of the body that the rehearsal knows."""

TECHNIQUES = (
    "glove-in-glove", "peel-inside-out", "straps-back", "lift-back", "tear-front", "pull-down",
    "roll-down", "front-grab", "unspecified",
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


POSITIONS = ("raised", "lowered")
"""Where a part of a garment can be."""


class FastenerEntry(Entry):
    """A tie, zip, strap or flap. A list of names says that each closes the whole garment."""

    at: tuple[Site, ...] = ()
    """The parts of the body over which it runs; without it, all that the garment covers."""

    under: tuple[Identifier, ...] = ()
    """The fasteners of the same garment that lie over it, such as a flap over a zip."""


class PartEntry(Entry):
    """A part that is raised and lowered and leaves with its garment, such as a hood or a shield."""

    raised: tuple[Site, ...] = ()
    """The parts of the body that it covers while it is raised."""

    lowered: tuple[Site, ...] = ()
    """The parts of the body that it covers while it is lowered."""

    starts: Annotated[str, one_of(*POSITIONS)] = "lowered"
    """Where it is when the garment goes on."""

    over: tuple[Identifier, ...] = ()
    """The garments that it lies over while it covers them."""


class ModelEntry(Entry):
    """A make of the garment that a ward may have."""

    name: Name
    """What the box says."""

    features: tuple[Identifier, ...] = ()
    """What sets it apart, such as thumb-loops, integral-feet or zip-flap."""


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

    fasteners: dict[Identifier, FastenerEntry] = NONE
    """Ties, zips and straps that are closed and opened in steps of their own: names in a list, or keys."""

    adjusters: tuple[Identifier, ...] = ()
    """Names of bands and clips by which its fit is set, and which are held instead of its front."""

    parts: dict[Identifier, PartEntry] = NONE
    """Each part that is raised and lowered while it is worn, by its name."""

    open_when_donned: YesNo = False
    """Whether its fasteners are open directly after it was put on."""

    technique: Technique | None = None
    """How it comes off, unless the step says otherwise; without it, the worst is assumed."""

    techniques: tuple[Technique, ...] = ()
    """All the ways in which it may come off; without it, any that is named."""

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

    state: Annotated[str, one_of("sterile", "not-sterile")] | None = None
    """Whether gloves come sterile."""

    models: dict[Identifier, ModelEntry] = NONE
    """The makes of it that are known here."""

    model: Identifier | None = None
    """The make that is in use; sheets made for another one are doubtful."""

    pictures: dict[Use, Identifier] = NONE
    """The picture of each use."""


class ItemEntry(Entry):
    """Something that is handled and never worn, so that it covers nothing."""

    name: Name
    """What sheets call it."""

    kind: Annotated[str, one_of(*ITEM_KINDS)]
    """What sort of thing it is; 'waste' is a bag, which is followed from hand to hand."""

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


def kit_normal_form(kit: Node) -> Node:
    """The kit with the fasteners of every garment as a mapping; a list names fasteners without keys."""
    garments = child(kit, "garments")
    if not isinstance(kit, Table) or not isinstance(garments, Table):
        return kit
    values = {key: _with_fasteners(garment) for key, garment in garments.values.items()}
    return replace(kit, values={**kit.values, "garments": replace(garments, values=values)})


def _with_fasteners(garment: Node) -> Node:
    """A garment whose list of fasteners, if it has one, became a mapping of names to nothing."""
    listed = child(garment, "fasteners")
    if not isinstance(garment, Table) or not isinstance(listed, Sequence):
        return garment
    names = [item for item in listed.items if isinstance(item, Text) and not item.is_absent]
    if len(names) < len(listed.items):
        return garment
    named = Table(
        {name.text: Table({}, name.place) for name in names},
        listed.place,
        {name.text: name.place for name in names},
    )
    return replace(garment, values={**garment.values, "fasteners": named})


def _parts_of(garment: GarmentEntry, node: Node | None) -> dict[str, Any]:
    """What of a garment has keys of its own: fasteners, parts and models."""
    return {
        "fasteners": tuple(garment.fasteners),
        "fastener_sites": {key: each.at for key, each in garment.fasteners.items() if each.at},
        "fasteners_under": {key: each.under for key, each in garment.fasteners.items() if each.under},
        "parts": build_each(GarmentPart, garment.parts, child(node, "parts")),
        "models": build_each(GarmentModel, garment.models, child(node, "models")),
    }


def build_kit(entry: KitEntry, node: Node) -> dict[str, Garment]:
    """Garments and items of a valid kit.yaml in the order of the file; an item is no barrier."""
    nodes = child(node, "garments")
    garments = build_each(
        Garment, entry.garments, nodes, more=lambda key, garment: _parts_of(garment, child(nodes, key))
    )
    items = build_each(
        Garment, entry.items, child(node, "items"), more=lambda _key, _item: {"barrier": False}
    )
    return garments | items
