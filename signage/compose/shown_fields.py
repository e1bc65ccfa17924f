"""Which fields of a protocol a kind of sheet can show: its value says which, SH-22 proves it on sheets.

Whoever leaves a field out of a kind of sheet says so there, and where the field stands instead.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum


class Shown(StrEnum):
    """Fields of steps, then those of phases, then those of the protocol."""

    HEADLINE = "headline"
    DETAIL = "detail"
    WHY = "why"
    CAUTION = "caution"
    CONDITION = "condition"
    CONTAINER = "container"
    TIME = "time"
    CRITICAL = "critical"
    PICTURE = "picture"
    STOP_RULE = "stop rule"
    PHASE_CAUTION = "caution of the phase"
    NOTES = "notes"
    POINTERS = "pointers to local documents"


class Duty(StrEnum):
    """``owed``: without it there is no sheet. ``if-room``: it may go. ``elsewhere``: on other kinds only."""

    OWED = "owed"
    IF_ROOM = "if-room"
    ELSEWHERE = "elsewhere"


NEVER_LEFT_OUT = (
    Shown.HEADLINE,
    Shown.CONDITION,
    Shown.CONTAINER,
    Shown.TIME,
    Shown.CRITICAL,
    Shown.STOP_RULE,
)
"""On every kind of sheet and page: without them a reader does the wrong thing, not less of the right one."""


def all_fields(but: Mapping[Shown, Duty]) -> Mapping[Shown, Duty]:
    """Every field owed, but for those named."""
    return {**dict.fromkeys(Shown, Duty.OWED), **but}
