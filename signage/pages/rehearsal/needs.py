"""What a protocol needs on the ward, as the page of its rehearsal lists it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from signage.model.library import Library, Protocol
from signage.rehearse.equipment import Equipment
from signage.rehearse.state.setting import Setting, prepare


@dataclass(frozen=True, slots=True)
class FixtureRow:
    """A fixture, how many steps use it, and how often a bin is filled; ``is_missing`` where none is there."""

    name: str
    steps: int
    filled: int | None
    is_missing: bool


@dataclass(frozen=True, slots=True)
class KitRow:
    """A piece of kit for one run."""

    name: str
    pieces: int
    is_reusable: bool


@dataclass(frozen=True, slots=True)
class Needs:
    """Fixtures by the name of their zone, kit, and hand hygienes by agent."""

    zones: tuple[tuple[str, tuple[FixtureRow, ...]], ...] = ()
    kit: tuple[KitRow, ...] = ()
    hygiene: tuple[tuple[str, int], ...] = ()


def needs_of(library: Library, protocol: Protocol, equipment: Equipment) -> Needs:
    """The needs of one run, zones in the order of the ward."""
    setting = prepare(library, protocol)
    filled = dict(equipment.bin_loads)
    zones = [zone for zone in setting.ward.zones if any(f.zone == zone for f in equipment.fixtures)]
    return Needs(
        tuple((setting.name(zone), tuple(_rows(setting, equipment, zone, filled))) for zone in zones),
        tuple(KitRow(setting.name(kit.item), kit.pieces, kit.is_reusable) for kit in equipment.kit),
        tuple((agent.replace("-", " "), count) for agent, count in equipment.hygiene),
    )


def _rows(setting: Setting, equipment: Equipment, zone: str, filled: dict[str, int]) -> Iterator[FixtureRow]:
    for each in equipment.fixtures:
        if each.zone == zone:
            is_missing = each.fixture is None
            name = setting.name(each.fixture) if each.fixture else each.kind.replace("-", " ")
            yield FixtureRow(name, len(set(each.steps)), filled.get(each.fixture or ""), is_missing)
