"""Copies and events for tests of the register."""

from datetime import date

from signage.control.register.store import NewCopy, NewEvent
from signage.model.copies import EventKind, Spot

DAY = date(2026, 11, 26)


def new_copy(subject="p", locale="en", whole="h1", sheet="poster put-on", letters="LB"):
    return NewCopy(letters, sheet, subject, locale, "3YH6-K2MP", whole, "none")


def mounted(number, slot="s1", ward="w", on=DAY):
    return NewEvent(number, EventKind.MOUNTED, on, "porter", spot=Spot(ward, slot))


def happened(number, kind, note="", on=DAY):
    return NewEvent(number, EventKind(kind), on, "porter", note)


def add(register, *events):
    with register.changing():
        register.add_events(events)
