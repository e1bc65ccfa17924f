"""What does not change during a rehearsal: kit, ward and policy, prepared for questions."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from signage.model.garment import Garment
from signage.model.library import Door, Fixture, Library, Phase, PolicyValue, Protocol, Step, Ward
from signage.rehearse.state.body import SITES
from signage.rehearse.state.layers import Layers

Schedule = tuple[tuple[Phase, Step], ...]
"""Steps in the order of one rehearsal, each with the phase it belongs to."""


@dataclass(frozen=True)
class Setting:
    """Kit, ward and policy of one protocol. ``protocols`` are the identifiers that a step may branch to."""

    protocol: Protocol
    ward: Ward
    garments: Mapping[str, Garment]
    policy: Mapping[str, PolicyValue]
    protocols: frozenset[str]

    @cached_property
    def layers(self) -> Layers:
        """Which garment lies over which."""
        return Layers(self.garments)

    @cached_property
    def fixtures_of_zone(self) -> Mapping[str, tuple[Fixture, ...]]:
        """The fixtures of each zone by identifier, so that the first that fits is always the same."""
        fixtures = sorted(self.ward.fixtures.values(), key=lambda fixture: fixture.id)
        return {zone: tuple(f for f in fixtures if f.zone == zone) for zone in self.ward.zones}

    @cached_property
    def doors(self) -> Mapping[tuple[str, str], Door]:
        """The ways from zone to zone, each with its door."""
        return {(door.start, door.end): door for door in self.ward.doors}

    @cached_property
    def asking_zones(self) -> frozenset[str]:
        """The zones that ask something of whoever is in them: kit, covered skin, a respirator."""
        return frozenset(
            key for key, zone in self.ward.zones.items() if zone.requires or zone.no_skin or zone.air != "ok"
        )

    @cached_property
    def seen_from(self) -> Mapping[str, frozenset[str]]:
        """What is seen from each zone: itself, and what it names, else what lies behind its windows.

        A window lets both sides see.
        """
        windows = [(door.start, door.end) for door in self.ward.doors if door.window]
        behind = {key: {end for way in windows if key in way for end in way} for key in self.ward.zones}
        return {key: frozenset({key, *(zone.sees or behind[key])}) for key, zone in self.ward.zones.items()}

    @cached_property
    def branches(self) -> frozenset[str]:
        """Where a step may branch to: the steps of this protocol, and all protocols."""
        return self.protocols | {step.id for step in self.protocol.steps}

    @cached_property
    def sites(self) -> frozenset[str]:
        """The parts of the body."""
        return frozenset(SITES)

    def name(self, item: str | None) -> str:
        """How a garment, fixture, zone or hand layer is called in a message."""
        if item is None:
            return "nothing"
        if item in self.garments:
            return self.garments[item].name
        if item in self.ward.fixtures:
            fixture = self.ward.fixtures[item]
            return f"{fixture.kind} {fixture.code}" if fixture.code else item.replace("-", " ")
        if item in self.ward.zones:
            return self.ward.zones[item].name
        return "bare hands" if item == "skin" else item.replace("-", " ")

    def names(self, items: tuple[str, ...]) -> str:
        """Several names, joined."""
        return ", ".join(self.name(item) for item in items)


def prepare(library: Library, protocol: Protocol) -> Setting:
    """The setting of a protocol; a ward that the library lacks becomes an empty one."""
    ward = library.wards.get(protocol.ward) or Ward(id=protocol.ward, name=protocol.ward, zones={})
    return Setting(protocol, ward, library.garments, library.policy, frozenset(library.protocols))


def schedule_of(protocol: Protocol) -> Schedule:
    """The steps of a protocol in its own order."""
    return tuple((phase, step) for phase in protocol.phases for step in phase.steps)
