"""How far and how much a scene may draw: far more than a picture of 15 mm needs, and soon drawn.

Outlines are joined by arithmetic whose time grows with the square of what crosses, so a single line of
a scene could otherwise hold a machine for hours or fill its memory.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Annotated, Any

from pydantic import AfterValidator, Field

FARTHEST = 960.0
"""Units from the corner of the canvas, ten times its side: no coordinate, length or radius is larger."""

WIDEST = 96.0
"""Units: a line, an outline or a gap as wide as the canvas."""

LARGEST_TURN = 720.0
"""Degrees of an angle; two full turns."""

LONGEST_ARC = 360.0
"""Degrees from the first angle of an arc to the last; a full turn."""

SMALLEST_SCALE, LARGEST_SCALE = 0.01, 20.0

MOST_REPEATS = 60
"""Bars, knobs, jets, rows or columns of a part."""

MOST_POINTS = 120
"""Points of one curve, or commands of a path."""

MOST_MEMBERS = 60
"""Curves that melt into one shape, or that cut one layer."""

MOST_LAYERS = 100
"""Layers of a scene, those in groups included."""

DEEPEST_GROUP = 5
"""Groups within each other."""


class BeyondBoundsError(ValueError):
    """A number or a count that no picture needs: what was found, and what was wanted."""


def _scale(value: float) -> float:
    if not SMALLEST_SCALE <= abs(value) <= LARGEST_SCALE:
        raise BeyondBoundsError(
            f"a scale of {value:g} was found; from {SMALLEST_SCALE:g} to {LARGEST_SCALE:g} was wanted, "
            "with a minus for a mirror image"
        )
    return value


Coordinate = Annotated[float, Field(ge=-FARTHEST, le=FARTHEST)]
"""A place, a length or a radius in units."""

Angle = Annotated[float, Field(ge=-LARGEST_TURN, le=LARGEST_TURN)]
"""Degrees."""

Width = Annotated[float, Field(ge=0, le=WIDEST)]
"""The width of a line, an outline or a gap in units."""

Scale = Annotated[float, AfterValidator(_scale)]
"""A factor; negative for a mirror image."""


def bounded(value: Any) -> Any:
    """An argument of a part, unchanged. Raises BeyondBoundsError where a number in it is too large."""
    for number in _numbers(value):
        if abs(number) > FARTHEST:
            raise BeyondBoundsError(
                f"{number:g} was found; at most {FARTHEST:g} units, either way, were wanted"
            )
    return value


def countable(value: int) -> int:
    """How often a part repeats something, unchanged. Raises BeyondBoundsError beyond what can be seen."""
    if not 1 <= value <= MOST_REPEATS:
        raise BeyondBoundsError(f"{value} was found; from 1 to {MOST_REPEATS} was wanted")
    return value


def _numbers(value: Any) -> Iterable[float]:
    if isinstance(value, tuple | list):
        for each in value:
            yield from _numbers(each)
    elif isinstance(value, float | int) and not isinstance(value, bool):
        yield value
