"""How a text is lettered and where it goes: what ``Canvas`` is asked for."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from signage.compose.typesetting import Face
from signage.drawing.roles import TypeRole


class Align(StrEnum):
    """Where lines stand in their width."""

    START = "start"
    CENTRE = "centre"
    END = "end"


class Anchor(StrEnum):
    """Which part of a text stands at the y of its place."""

    TOP = "top"
    MIDDLE = "middle"
    BOTTOM = "bottom"


@dataclass(frozen=True, slots=True)
class Lettering:
    """Role, face and size of a text, in points. ``floor`` is the least size, by default ``points``.

    ``wanted`` is the size of the role where ``points`` has been found for all its texts together;
    ``colour`` is the ink unless given.
    """

    role: TypeRole
    face: Face
    points: float
    floor: float | None = None
    wanted: float | None = None
    colour: str | None = None

    @property
    def least(self) -> float:
        """The size below which it is not set."""
        return self.points if self.floor is None else self.floor


@dataclass(frozen=True, slots=True)
class TextPlace:
    """Where a text goes, in logical millimetres: from ``x`` over ``width``, at most ``height`` and ``lines``.

    ``y`` is the top of its ascent, its middle (about which it keeps to its ``height``) or its bottom, by
    ``anchor``.
    """

    x: float
    y: float
    width: float
    height: float | None = None
    lines: int | None = None
    align: Align = Align.START
    anchor: Anchor = Anchor.TOP
