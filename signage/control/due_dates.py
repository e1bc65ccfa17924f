"""What is due when, and the same as a calendar: reviews, audit rounds, refreshers."""

from __future__ import annotations

import uuid
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta

from signage.control.audit import AUDIT_DAYS, USUAL_AUDIT_DAYS, number_policy
from signage.model.copies import CopyState
from signage.model.library import Library

REFRESHER_DAYS = "refresher-days"
"""The value of policy.yaml that says how long after it was handed out a card is gone through again."""


@dataclass(frozen=True, slots=True)
class Due:
    """Something that is due on a day. ``id`` stays the same when the day changes."""

    id: str
    on: date
    what: str


def due_dates(library: Library, states: Iterable[CopyState]) -> tuple[Due, ...]:
    """Everything that is due, by day: reviews of protocols, the next audit round, refreshers of learners."""
    known = tuple(states)
    found = (*_reviews(library), *_audits(library, known), *_refreshers(library, known))
    return tuple(sorted(found, key=lambda due: (due.on, due.id)))


def _reviews(library: Library) -> Iterator[Due]:
    for protocol in library.protocols.values():
        what = f"Review {protocol.code} {protocol.title} ({protocol.owner})"
        yield Due(f"review/{protocol.id}", protocol.review_by, what)


def _audits(library: Library, states: Iterable[CopyState]) -> Iterator[Due]:
    """One round for each ward: when the first of its copies has not been looked at for the usual time."""
    days = number_policy(library, AUDIT_DAYS) or USUAL_AUDIT_DAYS
    first: dict[str, date] = {}
    for state in states:
        if state.is_out and state.spot.slot and state.last is not None:
            seen = max(state.last.on, state.audited.on if state.audited else state.last.on)
            due = seen + timedelta(days=days)
            first[state.spot.ward] = min(due, first.get(state.spot.ward, due))
    for ward, due in first.items():
        name = library.wards[ward].name if ward in library.wards else ward
        yield Due(f"audit/{ward}", due, f"Audit round: {name}")


def _refreshers(library: Library, states: Iterable[CopyState]) -> Iterator[Due]:
    """Only where the policy says how often; learners are known by number."""
    days = number_policy(library, REFRESHER_DAYS)
    for state in states:
        if days and state.is_out and state.spot.learner and state.last is not None:
            protocol = library.protocols.get(state.copy.subject)
            code = protocol.code if protocol else state.copy.subject
            due = state.last.on + timedelta(days=days)
            id_ = f"refresher/{state.spot.learner}/{state.copy.subject}/{state.copy.number}"
            yield Due(id_, due, f"Refresher {code}: learner {state.spot.learner}")


def calendar_of(library: Library, dates: Iterable[Due], made_on: date) -> bytes:
    """An iCalendar file (RFC 5545) of events that last a day and take no time of anybody's.

    An event keeps its UID, made of the library's address and what is due (RFC 9562, version 5), so that a
    calendar into which the file is read again moves it.
    """
    from icalendar import Calendar, Event  # noqa: PLC0415 - only for this file

    calendar = Calendar()
    calendar.add("prodid", "-//signage//review dates//EN")
    calendar.add("version", "2.0")
    for due in dates:
        event = Event()
        event.add("uid", str(uuid.uuid5(uuid.NAMESPACE_URL, f"{library.training_address}#{due.id}")))
        event.add("dtstamp", datetime.combine(made_on, time(), UTC))
        event.add("dtstart", due.on)
        event.add("dtend", due.on + timedelta(days=1))
        event.add("summary", due.what)
        event.add("transp", "TRANSPARENT")
        calendar.add_component(event)
    made: bytes = calendar.to_ical()
    return made
