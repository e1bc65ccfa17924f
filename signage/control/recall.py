"""Which mounted copies are obsolete, and in which order somebody walks past them."""

from __future__ import annotations

import re
from collections import deque
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from signage.model.copies import GONE, PRINTED, CopyState, Event
from signage.model.current_sheet import CurrentSheet, CurrentSheets
from signage.model.library import Library, Ward


class Cause(StrEnum):
    """Why a copy is recalled."""

    WITHDRAWN = "withdrawn"
    REPLACED = "replaced"
    NOT_IN_FORCE = "not in force"


@dataclass(frozen=True, slots=True)
class Recalled:
    """A copy that must be brought back. ``has_successor``: a released sheet can take its place."""

    state: CopyState
    cause: Cause
    has_successor: bool


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of the copies of a recall. ``open`` are still out, ``done`` are gone, each with its end."""

    open: tuple[CopyState, ...]
    done: tuple[CopyState, ...]

    @property
    def share(self) -> float:
        """How much is done, from 0 to 1; 1 where nothing was to be done."""
        total = len(self.open) + len(self.done)
        return len(self.done) / total if total else 1.0

    @property
    def oldest(self) -> date | None:
        """The day on which the oldest of the open copies was mounted."""
        return min((state.last.on for state in self.open if state.last), default=None)


def cause_of(state: CopyState, current: CurrentSheets) -> Cause | None:
    """Why a copy is obsolete; None where it is what is released today."""
    sheet = current.get((state.copy.subject, state.copy.locale))
    if sheet is not None and sheet.is_withdrawn:
        return Cause.WITHDRAWN
    if sheet is None or sheet.hash is None:
        return Cause.NOT_IN_FORCE
    return None if sheet.hash == state.copy.hash else Cause.REPLACED


def recall_set(
    library: Library, states: Iterable[CopyState], current: CurrentSheets, subject: str = ""
) -> tuple[Recalled, ...]:
    """The copies of a protocol, or of all, that are out and obsolete, in walking order.

    A copy is obsolete whose full fingerprint is not that of what is released of its protocol in its
    language, or whose protocol is withdrawn. Wards come in the order of the library, learners last.
    """
    found = []
    for state in states:
        cause = cause_of(state, current) if state.is_out else None
        if cause is not None and subject in {"", state.copy.subject}:
            sheet = current.get((state.copy.subject, state.copy.locale))
            found.append(Recalled(state, cause, _has_successor(sheet)))
    order = walking_order(library)
    return tuple(sorted(found, key=lambda each: place_in(order, each.state)))


def unused(states: Iterable[CopyState], current: CurrentSheets, subject: str = "") -> tuple[CopyState, ...]:
    """Obsolete copies that were printed and never mounted: in drawers, and to be destroyed."""
    return tuple(
        state
        for state in states
        if state.state == PRINTED and subject in {"", state.copy.subject} and cause_of(state, current)
    )


def outcome_of(
    library: Library,
    states: Iterable[CopyState],
    events: Iterable[Event],
    current: CurrentSheets,
    subject: str,
    told_before: Iterable[str] = (),
) -> Outcome:
    """How far the recall of a protocol is; ``told_before`` are the numbers of recalls that were closed."""
    before = set(told_before)
    were_out = {event.number for event in events if str(event.spot)}
    mine = [
        state
        for state in states
        if state.copy.subject == subject
        and state.copy.number in were_out - before
        and cause_of(state, current) is not None
    ]
    order = walking_order(library)
    mine.sort(key=lambda state: place_in(order, state))
    done = tuple(state for state in mine if state.last is not None and state.last.kind in GONE)
    return Outcome(tuple(state for state in mine if state not in done), done)


def _has_successor(sheet: CurrentSheet | None) -> bool:
    return sheet is not None and sheet.hash is not None and not sheet.is_withdrawn and sheet.may_be_drawn


Order = Mapping[tuple[str, str], int]
"""The place of each slot, named by ward and slot, on the walk."""


def walking_order(library: Library) -> Order:
    """The slots of all wards in the order in which a walk passes them."""
    slots = [
        (ward.id, slot.id)
        for ward in library.wards.values()
        for zone in walk(ward)
        for slot in ward.slots
        if slot.zone == zone
    ]
    return {slot: place for place, slot in enumerate(slots)}


def place_in(order: Order, state: CopyState) -> tuple[int, int, str, str]:
    """What to sort copies by: wall slots in walking order, then learners by number, then other places."""
    spot = state.spot
    if spot.learner:
        digits = re.sub(r"\D", "", spot.learner) or "0"
        return (1, int(digits), spot.learner, state.copy.number)
    return (0, order.get((spot.ward, spot.slot), len(order)), "", state.copy.number)


def walk(ward: Ward) -> tuple[str, ...]:
    """The zones of a ward from its entrance, each time to the nearest that is left, by doors in between.

    The entrance is the first zone of the file. Whoever collects sheets may use doors both ways; of equally
    near zones the one that the file names first comes first, and zones without a way come last.
    """
    left = list(ward.zones)
    if not left:
        return ()
    here = left.pop(0)
    order = [here]
    while left:
        steps = _doors_from(ward, here)
        here = min(left, key=lambda zone: (steps.get(zone, len(ward.zones)), left.index(zone)))
        left.remove(here)
        order.append(here)
    return tuple(order)


def _doors_from(ward: Ward, start: str) -> Mapping[str, int]:
    """How many doors lie between a zone and each other one (breadth-first search)."""
    beside: dict[str, list[str]] = {zone: [] for zone in ward.zones}
    for door in ward.doors:
        beside.setdefault(door.start, []).append(door.end)
        beside.setdefault(door.end, []).append(door.start)
    steps, waiting = {start: 0}, deque([start])
    while waiting:
        zone = waiting.popleft()
        for following in beside.get(zone, ()):
            if following not in steps:
                steps[following] = steps[zone] + 1
                waiting.append(following)
    return steps
