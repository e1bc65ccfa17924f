"""wards/*.yaml: zones, doors, fixtures, wall slots, readers and printers of a ward."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from signage.load.building import build, build_each, field_places, places_below
from signage.load.files.kit import Site
from signage.load.files.library import Paper
from signage.load.files.policy import AGENTS
from signage.load.kinds import (
    NOT_EMPTY,
    CountingNumber,
    Identifier,
    LabelCode,
    LanguageTag,
    Name,
    ReadableText,
    WholeNumber,
    YesNo,
    length_between,
    number_between,
    one_of,
)
from signage.load.validation import NONE, Entry
from signage.load.yaml.nodes import Node, child, items_of
from signage.model.choices import ZoneClass
from signage.model.library import Door, Fixture, Printer, Slot, Ward, Zone

FIXTURE_KINDS = (
    "bin", "tub", "dispenser", "sink", "chair", "mirror", "mat", "surface", "clock", "shelf", "bench",
    "board",
)  # fmt: skip

Opening = Annotated[str, one_of("pedal", "hand", "open", "sensor", "elbow", "foot", "buddy", "none")]
"""How a lid, tap, dispenser or door is worked: by a part of the body, by itself, by a second person."""

MOST_LIGHT = 120_000
"""Lux of direct sunlight at noon, from memory; more is a slip of the keyboard."""

WallSide = Annotated[float, length_between("50 mm", "20 m", "side of a piece of wall")]


class ZoneEntry(Entry):
    """A part of the ward."""

    name: Name
    """What sheets and pages call it."""

    zone_class: Annotated[ZoneClass, one_of(*ZoneClass)] = Field(alias="class")
    """How clean the zone is held to be."""

    floor: Annotated[str, one_of("clean", "transition", "dirty")]
    """What the floor does to shoes and to kit that touches it."""

    air: Annotated[str, one_of("ok", "hazardous")] = "ok"
    """Whether breathing unprotected is safe there."""

    requires: tuple[Identifier, ...] = ()
    """Garments that have to be worn there."""

    no_skin: tuple[Site, ...] = ()
    """Parts of the body that must not be bare there."""

    needs: tuple[Identifier, ...] = ()
    """What a 'do: need' step has to have seen to before somebody goes in, such as bare-wrists."""

    observer_check: YesNo = False
    """Whether an observer has to have checked the kit before somebody goes in."""

    sees: tuple[Identifier, ...] = ()
    """The zones that are seen from here, beside this one and those behind doors with a window."""


class DoorEntry(Entry):
    """A way in one direction."""

    start: Identifier = Field(alias="from")
    """The zone on this side."""

    end: Identifier = Field(alias="to")
    """The zone that it leads to; the way back is a door of its own."""

    window: YesNo = False
    """Whether it can be looked through, from both sides."""

    opening: Opening | None = None
    """How it is opened."""


class FixtureEntry(Entry):
    """A thing that stands in a zone."""

    kind: Annotated[str, one_of(*FIXTURE_KINDS)]
    """What it is."""

    zone: Identifier
    """The zone that it stands in."""

    code: LabelCode | None = None
    """The letter on its label, which texts show as {bin}; each once in a ward."""

    name: Name | None = None
    """What sheets call it where it has no code."""

    designated: Annotated[str, one_of("clean", "dirty")] | None = None
    """The side that a chair or surface is for."""

    accepts: tuple[Identifier, ...] = ()
    """What may be put into a bin or tub."""

    capacity: CountingNumber | None = None
    """How many things fit in before it is full."""

    opening: Opening | None = None
    """How it is opened or worked: the lid of a bin or tub, a tap, a dispenser."""

    contact_seconds: WholeNumber | None = None
    """How long its agent has to stay wet, or how long one stands on the mat."""

    charged: YesNo = True
    """Whether a mat holds fresh agent."""

    agent: Annotated[str, one_of(*AGENTS)] | None = None
    """What a dispenser or sink gives."""


class SlotEntry(Entry):
    """A piece of wall for sheets; light in lux."""

    zone: Identifier = Field(alias="at")
    """The zone whose wall it is."""

    width: WallSide
    """The free width of the wall."""

    height: WallSide
    """The free height of the wall."""

    reading_distance: Annotated[float, length_between("0.2 m", "30 m", "reading distance")]
    """How far away readers stand."""

    light: Annotated[int, number_between(1, MOST_LIGHT, "light in lux")]
    """Lux where the sheet hangs, at the darkest hour at which it is read."""

    centre_height: Annotated[float, length_between("0.2 m", "5 m", "height on a wall")]
    """From the floor to the middle of the sheet."""

    sheets: tuple[ReadableText, ...] = ()
    """What hangs there: a protocol, or 'protocol/phase'."""


class PrinterEntry(Entry):
    """A printer; the margin is what it cannot print on."""

    papers: Annotated[tuple[Paper, ...], NOT_EMPTY]
    """The papers that it takes; a print shop counts as a printer."""

    margin: Annotated[float, length_between("0 mm", "50 mm", "margin of a printer")]
    """The edge that it cannot print on."""

    colour: YesNo
    """Whether it prints colours."""

    duplex: YesNo
    """Whether it prints on both sides."""


class WardEntry(Entry):
    """All of a ward's file."""

    ward: Identifier
    """The identifier of the ward."""

    name: Name
    """What sheets and pages call it."""

    zones: Annotated[dict[Identifier, ZoneEntry], NOT_EMPTY]
    """Each zone by its identifier."""

    doors: tuple[DoorEntry, ...]
    """The ways between zones; a way that is no door is not permitted."""

    fixtures: dict[Identifier, FixtureEntry] = NONE
    """Each bin, chair, dispenser and so on, by its identifier."""

    slots: dict[Identifier, SlotEntry] = NONE
    """Each piece of wall for sheets, by its identifier."""

    readers: dict[LanguageTag, WholeNumber] = NONE
    """How many people read each language."""

    printers: dict[Identifier, PrinterEntry] = NONE
    """Each printer by its identifier."""

    models: dict[Identifier, Identifier] = NONE
    """Which model of a garment this ward has, where that is not the one of kit.yaml."""


def build_ward(entry: WardEntry, node: Node) -> Ward:
    """The ward of a valid file; ``readers/<locale>`` are places beside the field names."""
    written = child(node, "ward")
    assert written is not None
    doors = (
        build(Door, door, below) for door, below in zip(entry.doors, items_of(node, "doors"), strict=True)
    )
    slots = build_each(
        Slot, entry.slots, child(node, "slots"), more=lambda _key, slot: {"light": float(slot.light)}
    )
    return Ward(
        id=entry.ward,
        name=entry.name,
        zones=build_each(Zone, entry.zones, child(node, "zones")),
        doors=tuple(doors),
        fixtures=build_each(Fixture, entry.fixtures, child(node, "fixtures")),
        slots=tuple(slots.values()),
        readers=entry.readers,
        printers=tuple(build_each(Printer, entry.printers, child(node, "printers")).values()),
        models=entry.models,
        place=written.place,
        places={
            **field_places(node, WardEntry, ward="id"),
            **places_below(node, "readers"),
            **places_below(node, "models"),
        },
    )
