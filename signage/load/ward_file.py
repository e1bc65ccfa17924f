"""wards/*.yaml: zones, doors, fixtures, wall slots, readers and printers of a ward."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from signage.load.building import build, build_each, field_places, places_below
from signage.load.kinds import (
    NOT_EMPTY,
    CountingNumber,
    Extent,
    Identifier,
    LabelCode,
    LanguageTag,
    Length,
    ReadableText,
    WholeNumber,
    YesNo,
    one_of,
)
from signage.load.kit_file import Site
from signage.load.library_file import Paper
from signage.load.nodes import Node, child, items_of
from signage.load.policy_file import AGENTS
from signage.load.validation import NONE, Entry
from signage.model.library import Door, Fixture, Printer, Slot, Ward, Zone

FIXTURE_KINDS = (
    "bin", "tub", "dispenser", "sink", "chair", "mirror", "mat", "surface", "clock", "shelf", "bench",
    "board",
)  # fmt: skip


class ZoneEntry(Entry):
    """A part of the ward."""

    name: ReadableText
    zone_class: Annotated[str, one_of("clean", "transition", "contaminated")] = Field(alias="class")
    floor: Annotated[str, one_of("clean", "transition", "dirty")]
    air: Annotated[str, one_of("ok", "hazardous")] = "ok"
    requires: tuple[Identifier, ...] = ()
    no_skin: tuple[Site, ...] = ()
    needs: tuple[Identifier, ...] = ()
    observer_check: YesNo = False


class DoorEntry(Entry):
    """A way in one direction."""

    start: Identifier = Field(alias="from")
    end: Identifier = Field(alias="to")


class FixtureEntry(Entry):
    """A thing that stands in a zone."""

    kind: Annotated[str, one_of(*FIXTURE_KINDS)]
    zone: Identifier
    code: LabelCode | None = None
    name: ReadableText | None = None
    designated: Annotated[str, one_of("clean", "dirty")] | None = None
    accepts: tuple[Identifier, ...] = ()
    capacity: CountingNumber | None = None
    opening: Annotated[str, one_of("pedal", "hand", "open", "sensor", "elbow")] | None = None
    contact_seconds: WholeNumber | None = None
    charged: YesNo = True
    agent: Annotated[str, one_of(*AGENTS)] | None = None


class SlotEntry(Entry):
    """A piece of wall for sheets; light in lux."""

    zone: Identifier = Field(alias="at")
    width: Extent
    height: Extent
    reading_distance: Extent
    light: WholeNumber
    centre_height: Extent
    sheets: tuple[ReadableText, ...] = ()


class PrinterEntry(Entry):
    """A printer; the margin is what it cannot print on."""

    papers: Annotated[tuple[Paper, ...], NOT_EMPTY]
    margin: Length
    colour: YesNo
    duplex: YesNo


class WardEntry(Entry):
    """All of a ward's file."""

    ward: Identifier
    name: ReadableText
    zones: Annotated[dict[Identifier, ZoneEntry], NOT_EMPTY]
    doors: tuple[DoorEntry, ...]
    fixtures: dict[Identifier, FixtureEntry] = NONE
    slots: dict[Identifier, SlotEntry] = NONE
    readers: dict[LanguageTag, WholeNumber] = NONE
    printers: dict[Identifier, PrinterEntry] = NONE


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
        place=written.place,
        places={**field_places(node, WardEntry, ward="id"), **places_below(node, "readers")},
    )
