"""What a protocol needs on the ward: fixtures by zone, pieces of kit, and hand hygiene."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from signage.model.choices import ActionVerb
from signage.model.library import Action, Library, Protocol
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.rules.places import FIXTURE_ABSENT
from signage.rehearse.state.body import HEAD
from signage.rehearse.state.setting import Setting, prepare
from signage.rehearse.trace import StepState


@dataclass(frozen=True, slots=True)
class NeededFixture:
    """A fixture that steps need in a zone. ``fixture`` is None where the ward's file has none there."""

    kind: str
    zone: str
    fixture: str | None
    steps: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class NeededKit:
    """How often a piece is put on in one run, and how many pieces all runs need with spares.

    A reusable piece comes back; ``pieces`` is then the number for one run with spares.
    """

    item: str
    put_on: int
    pieces: int
    is_reusable: bool


@dataclass(frozen=True, slots=True)
class Equipment:
    """``hygiene``: agent and number of hand hygienes. ``bin_loads``: bin and how often it is filled."""

    fixtures: tuple[NeededFixture, ...]
    kit: tuple[NeededKit, ...]
    hygiene: tuple[tuple[str, int], ...]
    bin_loads: tuple[tuple[str, int], ...]


def derive_equipment(
    library: Library, protocol: Protocol, *, entries_per_day: int = 1, days: int = 1, spare_percent: int = 0
) -> Equipment:
    """What a protocol needs for all its entries, read from its rehearsal.

    Pieces are the times an item is put on, times the entries, and spares on top, rounded up.
    """
    setting, runs = prepare(library, protocol), entries_per_day * days
    trace = rehearse(library, protocol).trace
    return Equipment(
        tuple(_fixtures(library, protocol, setting, trace)),
        tuple(_kit(protocol, setting, runs, spare_percent)),
        tuple(sorted(_hygiene(protocol, runs).items())),
        tuple(sorted(_bin_loads(protocol, setting, runs).items())),
    )


def _fixtures(
    library: Library, protocol: Protocol, setting: Setting, trace: tuple[StepState, ...]
) -> Iterator[NeededFixture]:
    """Fixtures that steps use, mirrors and clocks that they imply, and those that are missing."""
    used: dict[str, list[str]] = {}
    implied: dict[tuple[str, str], list[str]] = {}
    actions = {step.id: step.actions for step in protocol.steps}
    timed = {step.id for phase in protocol.phases if phase.seconds is not None for step in phase.steps}
    for state in trace:
        for key in state.fixtures:
            used.setdefault(key, []).append(state.step)
        for action in actions[state.step]:
            zone = state.of(action.by).zone
            for kind in _implied_kinds(setting, action, is_timed=state.step in timed):
                implied.setdefault((kind, zone), []).append(state.step)
    for key, steps in used.items():
        fixture = setting.ward.fixtures[key]
        yield NeededFixture(fixture.kind, fixture.zone, key, tuple(steps))
    for (kind, zone), steps in implied.items():
        present = [f.id for f in setting.fixtures_of_zone[zone] if f.kind == kind]
        yield NeededFixture(kind, zone, present[0] if present else None, tuple(steps))
    for finding in rehearse(library, protocol).findings:
        if finding.code == FIXTURE_ABSENT.code and finding.step is not None and finding.person is not None:
            state = next(state for state in trace if state.step == finding.step)
            kind = {"rub": "dispenser", "wash": "sink"}.get(finding.item or "", finding.item or "")
            yield NeededFixture(kind, state.of(finding.person).zone, None, (finding.step,))


def _implied_kinds(setting: Setting, action: Action, *, is_timed: bool) -> Iterator[str]:
    """A clock for whatever takes a time; a mirror to look oneself over, or to open something at the neck."""
    if action.seconds is not None or (is_timed and action.part):
        yield "clock"
    is_by_oneself = action.on in (None, action.by)
    if action.verb is ActionVerb.INSPECT and is_by_oneself:
        yield "mirror"
    garment = setting.garments.get(action.item or "")
    if (
        action.verb is ActionVerb.UNFASTEN
        and is_by_oneself
        and garment is not None
        and HEAD & set(garment.covers)
    ):
        yield "mirror"


def _kit(protocol: Protocol, setting: Setting, runs: int, spare_percent: int) -> Iterator[NeededKit]:
    counts = Counter(
        action.item
        for step in protocol.steps
        for action in step.actions
        if action.verb in (ActionVerb.DON, ActionVerb.CHANGE_CLOTHES) and action.item in setting.garments
    )
    for item, times in counts.items():
        if item is not None:
            is_reusable = setting.garments[item].reusable
            needed = times * (1 if is_reusable else runs)
            yield NeededKit(item, times, ceil(needed * (100 + spare_percent) / 100), is_reusable)


def _hygiene(protocol: Protocol, runs: int) -> Counter[str]:
    """Hand hygienes by agent; the movements of one technique card are one."""
    counts: Counter[str] = Counter()
    for phase in protocol.phases:
        agent_before = None
        for action in (action for step in phase.steps for action in step.actions):
            is_hygiene = action.verb is ActionVerb.HYGIENE and action.agent is not None
            agent = action.agent if is_hygiene else None
            if agent is not None and not (action.part and agent == agent_before):
                counts[agent] += runs
            agent_before = agent if action.part else None
    return counts


def _bin_loads(protocol: Protocol, setting: Setting, runs: int) -> dict[str, int]:
    """How often each bin or tub is filled, by its declared capacity."""
    items: Counter[str] = Counter()
    for action in (action for step in protocol.steps for action in step.actions):
        if action.bin in setting.ward.fixtures and action.bin is not None:
            items[action.bin] += 2 if action.together else 1
    loads = {}
    for key, count in items.items():
        capacity = setting.ward.fixtures[key].capacity
        if capacity:
            loads[key] = ceil(count * runs / capacity)
    return loads
