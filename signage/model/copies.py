"""Printed copies of sheets and what became of each: the values that the register keeps."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class EventKind(StrEnum):
    """What can become of a copy. ``mounted`` is also what is handed to a learner."""

    MOUNTED = "mounted"
    REMOVED = "removed"
    DESTROYED = "destroyed"
    LOST = "lost"
    REPLACED = "replaced"
    AUDITED = "audited"


PRINTED = "printed"
"""The state of a copy of which nothing is known but that it was printed."""

GONE = frozenset({EventKind.REMOVED, EventKind.DESTROYED, EventKind.LOST})
"""The events that end a copy's duty on a wall or in a pocket; the loss of one must be explained."""


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a copy is: a wall slot of a ward, or with a learner, by number."""

    ward: str = ""
    slot: str = ""
    learner: str = ""

    def __str__(self) -> str:
        """Such as ``lantern-bay/s1`` or ``learner L07``; empty for nowhere."""
        if self.learner:
            return f"learner {self.learner}"
        return f"{self.ward}/{self.slot}" if self.slot else ""


NOWHERE_YET = Spot()


@dataclass(frozen=True, slots=True)
class Copy:
    """A printed copy. ``subject`` is the id of its protocol, ``sheet`` the kind with its phase.

    ``code`` is the printed revision code and ``hash`` the full fingerprint that it stands for. ``mark`` is
    what it was printed as: ``none`` for a released sheet.
    """

    number: str
    sheet: str
    subject: str
    locale: str
    code: str
    hash: str
    mark: str
    printed_on: date
    by_role: str


@dataclass(frozen=True, slots=True)
class Event:
    """Something that happened to a copy. ``id`` counts all events in the order in which they were added."""

    id: int
    number: str
    kind: EventKind
    on: date
    by_role: str
    note: str = ""
    spot: Spot = NOWHERE_YET


@dataclass(frozen=True, slots=True)
class CopyState:
    """A copy with its last events: ``last`` decides its state, None where it was only printed.

    ``spot`` is where it was mounted last, ``audited`` the last audit that looked at it.
    """

    copy: Copy
    last: Event | None = None
    spot: Spot = NOWHERE_YET
    audited: Event | None = None

    @property
    def state(self) -> str:
        """The kind of its last event; audits change none."""
        return PRINTED if self.last is None else self.last.kind.value

    @property
    def is_out(self) -> bool:
        """Whether it hangs on a wall or a learner has it."""
        return self.last is not None and self.last.kind is EventKind.MOUNTED


def states_of(copies: Iterable[Copy], events: Iterable[Event]) -> tuple[CopyState, ...]:
    """The copies, in the order given, each with what its events say."""
    last: dict[str, Event] = {}
    audited: dict[str, Event] = {}
    spots: dict[str, Spot] = {}
    for event in sorted(events, key=lambda event: event.id):
        if event.kind is EventKind.AUDITED:
            audited[event.number] = event
            continue
        last[event.number] = event
        if event.kind is EventKind.MOUNTED:
            spots[event.number] = event.spot
    return tuple(
        CopyState(copy, last.get(copy.number), spots.get(copy.number, NOWHERE_YET), audited.get(copy.number))
        for copy in copies
    )
