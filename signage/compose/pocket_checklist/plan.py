"""Which steps stand on which panel of which folded sheet.

The ladder: a comfortable pitch with every phase of up to eleven steps on one panel, a comfortable
pitch, phases that share panels, a denser pitch, another sheet. Panels of one phase are filled evenly.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from signage.compose.arrangement import NumberedStep, numbered_steps
from signage.compose.context import SheetContext
from signage.compose.pocket_checklist.rows import PhaseRow, Row, StepRow, ZoneRow, step_need, zone_need
from signage.model.library import Phase

INNER_PANELS = 6
"""Panels 2 to 7: steps, then rules."""

KEPT_TOGETHER = 11
"""Steps that a phase may have to stay on one panel where the pitch allows."""

_COMFORTABLE = (8.3, 7.9, 7.5, 7.1)
_DENSE = (6.7, 6.4, 6.1, 5.9)
_ZONE, _DENSE_ZONE = 5.8, 5.0
_PHASE = 8.0
_HALVINGS = 14


@dataclass(frozen=True)
class Place:
    """A step with what it follows, and the heights that its words and those of its zone need.

    ``zone`` and ``continued`` are the name of the zone and the same with a word that says it goes on.
    """

    phase: Phase
    numbered: NumberedStep
    begins_phase: bool
    begins_zone: bool
    need: float
    zone: str
    zone_need: float
    continued: str
    continued_need: float


@dataclass(frozen=True)
class PanelRows:
    """The rows of one panel; its head names the phase of the first."""

    phase: Phase
    rows: tuple[Row, ...]

    @property
    def height(self) -> float:
        """All rows, in millimetres."""
        return sum(row.height for row in self.rows)


Dealt = tuple[PanelRows, ...]


def _places_of(context: SheetContext, width: float) -> tuple[Place, ...]:
    """All steps of the protocol in order."""
    places: list[Place] = []
    for phase in context.protocol.phases:
        steps = numbered_steps(context.protocol, phase)
        for before, numbered in zip((None, *steps[:-1]), steps, strict=True):
            zone = context.zone_name(numbered.zone)
            continued = context.wording.fixed("continued", zone=zone)
            places.append(
                Place(
                    phase,
                    numbered,
                    begins_phase=before is None,
                    begins_zone=before is None or before.zone != numbered.zone,
                    need=step_need(context, numbered, width),
                    zone=zone,
                    zone_need=zone_need(context, numbered.zone, zone, width),
                    continued=continued,
                    continued_need=zone_need(context, numbered.zone, continued, width),
                )
            )
    return tuple(places)


def plan_folds(context: SheetContext, room: Callable[[int], float], width: float, rules: int) -> list[Dealt]:
    """The panels of steps of each folded sheet; ``rules`` panels of each hold the rules.

    ``room`` gives the height of a panel's rows by the number of sheets.
    """
    places = _places_of(context, width)
    for count in range(1, len(places) + 1):
        folds: list[Dealt] = []
        for part in _parts(places, count):
            dealt = _deal(part, room(count), INNER_PANELS - rules)
            if dealt is None:
                break
            folds.append(dealt)
        else:
            return folds
    return [(_panel([place], _DENSE[-1]),) for place in places]


def _parts(places: Sequence[Place], count: int) -> list[Sequence[Place]]:
    """As even as may be, cut where a phase begins if one begins near the even cut."""
    parts: list[Sequence[Place]] = []
    start = 0
    for left in range(count, 0, -1):
        even = -(-(len(places) - start) // left)
        near = range(start + max(1, even * 3 // 4), min(len(places), start + even * 5 // 4) + 1)
        begins = [end for end in near if end < len(places) and places[end].begins_phase]
        end = min(begins, key=lambda cut: abs(cut - start - even), default=start + even)
        end = len(places) if left == 1 else min(end, len(places) - left + 1)
        parts.append(places[start:end])
        start = end
    return parts


def _deal(places: Sequence[Place], room: float, most: int) -> Dealt | None:
    found: Dealt | None = None
    for pitch in _COMFORTABLE:
        dealt = _by_phase(places, pitch, room)
        if dealt is not None and len(dealt) <= most:
            if _keeps_together(dealt):
                return dealt
            found = found or dealt
    if found is not None:
        return found
    for pitch in (_COMFORTABLE[-1], *_DENSE):
        for deal in (_by_phase, _evenly):
            dealt = deal(places, pitch, room)
            if dealt is not None and len(dealt) <= most:
                return dealt
    return None


def _keeps_together(dealt: Dealt) -> bool:
    """Whether each phase of few steps has a panel of its own."""
    steps: dict[str, list[int]] = {}
    for panel in dealt:
        steps.setdefault(panel.phase.id, []).append(sum(isinstance(row, StepRow) for row in panel.rows))
    return all(len(panels) == 1 for panels in steps.values() if sum(panels) <= KEPT_TOGETHER)


def _by_phase(places: Sequence[Place], pitch: float, room: float) -> Dealt | None:
    """Each phase begins a panel."""
    dealt: list[PanelRows] = []
    for phase in dict.fromkeys(place.phase.id for place in places):
        panels = _evenly([place for place in places if place.phase.id == phase], pitch, room)
        if panels is None:
            return None
        dealt += panels
    return tuple(dealt)


def _evenly(places: Sequence[Place], pitch: float, room: float) -> Dealt | None:
    """The fewest panels, the highest of them as low as may be; phases may share a panel."""
    best = _cuts(places, pitch, room)
    if best is None:
        return None
    low, high = 0.0, room
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        tried = _cuts(places, pitch, middle)
        if tried is not None and len(tried) == len(best):
            high, best = middle, tried
        else:
            low = middle
    return tuple(_panel(places[start:end], pitch) for start, end in pairwise((0, *best)))


def _cuts(places: Sequence[Place], pitch: float, room: float) -> list[int] | None:
    """Where panels end that are filled to a height; None where one step alone is higher."""
    cuts: list[int] = []
    height = 0.0
    for index, place in enumerate(places):
        is_first = not index or (bool(cuts) and cuts[-1] == index)
        height += _height(place, pitch, is_first=is_first)
        if height > room and not is_first:
            cuts.append(index)
            height = _height(place, pitch, is_first=True)
        if height > room:
            return None
    return [*cuts, len(places)]


def _height(place: Place, pitch: float, *, is_first: bool) -> float:
    return sum(row.height for row in _rows_of(place, pitch, is_first=is_first))


def _panel(places: Sequence[Place], pitch: float) -> PanelRows:
    """One panel of these steps: every panel opens with the name of its zone."""
    rows = [row for index, place in enumerate(places) for row in _rows_of(place, pitch, is_first=not index)]
    return PanelRows(places[0].phase, tuple(rows))


def _rows_of(place: Place, pitch: float, *, is_first: bool) -> list[Row]:
    """The row of a step, after those of the phase and the zone that begin with it on its panel."""
    rows: list[Row] = []
    least = _ZONE if pitch >= _COMFORTABLE[-1] else _DENSE_ZONE
    zone = place.numbered.zone
    if place.begins_phase and not is_first:
        rows.append(PhaseRow(place.phase, _PHASE))
    if place.begins_phase or place.begins_zone:
        rows.append(ZoneRow(zone, place.zone, max(least, place.zone_need)))
    elif is_first:
        rows.append(ZoneRow(zone, place.continued, max(least, place.continued_need)))
    rows.append(StepRow(place.phase, place.numbered, max(pitch, place.need)))
    return rows
