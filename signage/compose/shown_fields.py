"""Which fields of a protocol each kind of sheet shows: decided here, proved on composed sheets by SH-22.

Whoever leaves a field out of a kind of sheet changes this table, and says where the field stands instead.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType


class Shown(StrEnum):
    """Fields of steps, then those of phases."""

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

_ALL = dict.fromkeys(Shown, Duty.OWED)

SHOWN_FIELDS: Mapping[str, Mapping[Shown, Duty]] = MappingProxyType(
    {
        "poster": {**_ALL, Shown.WHY: Duty.ELSEWHERE, Shown.NOTES: Duty.IF_ROOM},
        "poster-hands": {**_ALL, Shown.WHY: Duty.ELSEWHERE, Shown.NOTES: Duty.ELSEWHERE},
        "step-cards": {**_ALL, Shown.NOTES: Duty.ELSEWHERE},
        "pocket-checklist": {
            **dict.fromkeys(Shown, Duty.ELSEWHERE),
            **dict.fromkeys(NEVER_LEFT_OUT, Duty.OWED),
            Shown.PHASE_CAUTION: Duty.IF_ROOM,
        },
        "page": _ALL,
    }
)
"""By kind of sheet; ``page`` are the training pages of a protocol taken together."""
