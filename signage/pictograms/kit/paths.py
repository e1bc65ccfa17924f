"""Outlines in the units of a pictogram: 96 a side, y downwards."""

from __future__ import annotations

import itertools
import math
import re
from collections.abc import Sequence

from signage.ground.geometry import Path, Segment, polygon

Point = tuple[float, float]

_CIRCLE = 0.5522847498
"""Distance of a Bézier handle that draws a quarter circle of radius 1."""

_ROUNDING = 0.56
"""Share of a cut corner at which the handles of its rounding stand: a soft, nearly circular turn."""

_POINTS_OF = {"M": 1, "L": 1, "C": 3, "Q": 2, "Z": 0}

_WORD = re.compile(r"[MLCQZ]|-?\d*\.?\d+")


def parse_path(text: str) -> Path:
    """The path written with the absolute commands M, L, C, Q and Z of SVG 1.1.

    Raises ValueError on any other sign, on a missing number and on text that does not begin with M.
    """
    if re.sub(r"[MLCQZ\s,\d.\-]", "", text):
        raise ValueError(f"path {text!r} holds a sign other than M, L, C, Q, Z and numbers")
    words = _WORD.findall(text)
    if not words or words[0] != "M":
        raise ValueError(f"path {text!r} does not begin with M")
    segments: list[Segment] = []
    position = 0
    command = "M"
    end: Point = (0.0, 0.0)
    while position < len(words):
        if words[position] in _POINTS_OF:
            command = words[position]
            position += 1
        count = 2 * _POINTS_OF[command]
        numbers = words[position : position + count]
        if len(numbers) < count or any(word in _POINTS_OF for word in numbers):
            raise ValueError(f"path {text!r}: {command} wants {count} numbers")
        position += count
        values = [float(word) for word in numbers]
        segments.append(_segment(command, values, end))
        if values:
            end = (values[-2], values[-1])
        command = "L" if command == "M" else command
    return tuple(segments)


def _segment(command: str, values: Sequence[float], start: Point) -> Segment:
    if command != "Q":
        return (command, *values)
    x, y, end_x, end_y = values
    return (
        "C",
        start[0] + (x - start[0]) * 2 / 3,
        start[1] + (y - start[1]) * 2 / 3,
        end_x + (x - end_x) * 2 / 3,
        end_y + (y - end_y) * 2 / 3,
        end_x,
        end_y,
    )


def line(*points: Point) -> Path:
    """An open line from point to point."""
    return polygon(points, closed=False)


def ellipse(x: float, y: float, radius_x: float, radius_y: float | None = None) -> Path:
    """An ellipse, or a circle if only one radius is given."""
    radius_y = radius_x if radius_y is None else radius_y
    k, m = radius_x * _CIRCLE, radius_y * _CIRCLE
    left, right, top, bottom = x - radius_x, x + radius_x, y - radius_y, y + radius_y
    return (
        ("M", right, y),
        ("C", right, y + m, x + k, bottom, x, bottom),
        ("C", x - k, bottom, left, y + m, left, y),
        ("C", left, y - m, x - k, top, x, top),
        ("C", x + k, top, right, y - m, right, y),
        ("Z",),
    )


def _toward(corner: Point, neighbour: Point, radius: float) -> Point:
    distance = math.dist(corner, neighbour)
    share = min(radius, distance / 2) / distance if distance else 0.0
    return (
        corner[0] + (neighbour[0] - corner[0]) * share,
        corner[1] + (neighbour[1] - corner[1]) * share,
    )


def _mix(start: Point, end: Point, share: float) -> Point:
    return (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)


def rounded_polygon(
    points: Sequence[Point], radii: float | Sequence[float] = 3.0, *, closed: bool = True
) -> Path:
    """A polygon with softened corners; one radius for all, or one a corner."""
    count = len(points)
    each = [float(radii)] * count if isinstance(radii, int | float) else list(radii)
    if len(each) != count:
        raise ValueError(f"{count} corners want {count} radii, found {len(each)}")
    segments: list[Segment] = []
    for index, corner in enumerate(points):
        if not closed and index in {0, count - 1}:
            segments.append(("L" if segments else "M", *corner))
            continue
        start = _toward(corner, points[index - 1], each[index])
        end = _toward(corner, points[(index + 1) % count], each[index])
        segments.append(("L" if segments else "M", *start))
        segments.append(("C", *_mix(start, corner, _ROUNDING), *_mix(end, corner, _ROUNDING), *end))
    return (*segments, ("Z",)) if closed else tuple(segments)


def rounded_rectangle(x: float, y: float, width: float, height: float, radius: float = 3.0) -> Path:
    """A rectangle with softened corners."""
    corners = [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]
    return rounded_polygon(corners, min(radius, width / 2, height / 2))


def spline(points: Sequence[Point], *, closed: bool = False) -> Path:
    """A smooth curve through all points (Catmull-Rom, uniform, as cubic Béziers)."""
    count = len(points)

    def at(index: int) -> Point:
        return points[index % count] if closed else points[max(0, min(count - 1, index))]

    segments: list[Segment] = [("M", *points[0])]
    for index in range(count if closed else count - 1):
        before, start, end, after = at(index - 1), at(index), at(index + 1), at(index + 2)
        segments.append(
            (
                "C",
                start[0] + (end[0] - before[0]) / 6,
                start[1] + (end[1] - before[1]) / 6,
                end[0] - (after[0] - start[0]) / 6,
                end[1] - (after[1] - start[1]) / 6,
                *end,
            )
        )
    return (*segments, ("Z",)) if closed else tuple(segments)


def arc(x: float, y: float, radius: float, start: float, end: float, radius_y: float | None = None) -> Path:
    """Part of a circle or ellipse, from one angle to the other in degrees, 0 right and 90 down."""
    radius_y = radius if radius_y is None else radius_y
    count = max(1, int(abs(end - start) / 45) + 1)
    step = math.radians(end - start) / count
    k = 4 / 3 * math.tan(step / 4)
    segments: list[Segment] = []
    for index in range(count):
        a = math.radians(start) + index * step
        b = a + step
        p = (x + radius * math.cos(a), y + radius_y * math.sin(a))
        q = (x + radius * math.cos(b), y + radius_y * math.sin(b))
        if not segments:
            segments.append(("M", *p))
        segments.append(
            (
                "C",
                p[0] - k * radius * math.sin(a),
                p[1] + k * radius_y * math.cos(a),
                q[0] + k * radius * math.sin(b),
                q[1] - k * radius_y * math.cos(b),
                *q,
            )
        )
    return tuple(segments)


def capsule(start: Point, end: Point, start_radius: float, end_radius: float) -> Path:
    """The outline round two discs: a bone of a limb."""
    distance = math.dist(start, end)
    if distance <= abs(start_radius - end_radius) + 1e-6:
        centre = start if start_radius > end_radius else end
        return ellipse(*centre, max(start_radius, end_radius))
    heading = direction(start, end)
    spread = math.degrees(math.acos((start_radius - end_radius) / distance))
    tip = arc(*end, end_radius, heading - spread, heading + spread)
    root = arc(*start, start_radius, heading + spread, heading - spread + 360)
    return (*tip, ("L", *root[0][1:]), *root[1:], ("Z",))


def limb(joints: Sequence[tuple[float, float, float]]) -> tuple[Path, ...]:
    """The bones between joints, each joint given as x, y and the radius of the limb there."""
    return tuple(capsule(start[:2], end[:2], start[2], end[2]) for start, end in itertools.pairwise(joints))


def direction(start: Point, end: Point) -> float:
    """The heading from one point to another in degrees, 0 right and 90 down."""
    return math.degrees(math.atan2(end[1] - start[1], end[0] - start[0]))


def reach(start: Point, end: Point, upper: float, lower: float, bend: int = 1) -> Point:
    """The joint of a limb of two bones that reaches from start to end; ``bend`` 1 or -1 says which side.

    The law of cosines; a limb too short is stretched straight.
    """
    distance = math.dist(start, end) or 0.01
    span = min(distance, upper + lower - 0.01)
    along = (upper * upper - lower * lower + span * span) / (2 * span)
    across = math.sqrt(max(0.0, upper * upper - along * along)) * bend
    x, y = (end[0] - start[0]) / distance, (end[1] - start[1]) / distance
    return (start[0] + x * along - y * across, start[1] + y * along + x * across)


def midpoint(start: Point, end: Point) -> Point:
    """The point half way between two."""
    return _mix(start, end, 0.5)
