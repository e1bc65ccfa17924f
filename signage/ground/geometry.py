"""Boxes, affine maps and paths. Lengths in millimetres, y grows downwards."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import chain
from typing import Any

Segment = tuple[str | float, ...]
"""``("M", x, y)``, ``("L", x, y)``, ``("C", x1, y1, x2, y2, x, y)`` or ``("Z",)``."""

Path = tuple[Segment, ...]

_CIRCLE = 0.5522847498
"""Distance of a Bézier handle that draws a quarter circle of radius 1."""


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle: its left top corner and its size."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """The x of the right edge."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """The y of the lower edge."""
        return self.y + self.height

    def contains(self, other: Box, tolerance: float = 0.0) -> bool:
        """Whether the other box lies inside this one, give or take the tolerance."""
        return (
            self.x - tolerance <= other.x
            and self.y - tolerance <= other.y
            and other.right <= self.right + tolerance
            and other.bottom <= self.bottom + tolerance
        )

    def overlap(self, other: Box) -> tuple[float, float]:
        """Width and height that two boxes share; a negative value is a gap."""
        return (
            min(self.right, other.right) - max(self.x, other.x),
            min(self.bottom, other.bottom) - max(self.y, other.y),
        )

    def union(self, other: Box) -> Box:
        """The smallest box round both."""
        x, y = min(self.x, other.x), min(self.y, other.y)
        return Box(x, y, max(self.right, other.right) - x, max(self.bottom, other.bottom) - y)


@dataclass(frozen=True, slots=True)
class Affine:
    """The map ``x' = a x + c y + e``, ``y' = b x + d y + f``."""

    a: float = 1.0
    b: float = 0.0
    c: float = 0.0
    d: float = 1.0
    e: float = 0.0
    f: float = 0.0

    def __matmul__(self, other: Affine) -> Affine:
        """The map that applies the other first, then this one."""
        return Affine(
            self.a * other.a + self.c * other.b,
            self.b * other.a + self.d * other.b,
            self.a * other.c + self.c * other.d,
            self.b * other.c + self.d * other.d,
            self.a * other.e + self.c * other.f + self.e,
            self.b * other.e + self.d * other.f + self.f,
        )

    def point(self, x: float, y: float) -> tuple[float, float]:
        """The image of a point."""
        return self.a * x + self.c * y + self.e, self.b * x + self.d * y + self.f

    def box(self, box: Box) -> Box:
        """The smallest upright box round the image of a box."""
        ax, cy, bx, dy = self.a * box.x, self.c * box.y, self.b * box.x, self.d * box.y
        right, bottom = box.x + box.width, box.y + box.height
        ar, cb, br, db = self.a * right, self.c * bottom, self.b * right, self.d * bottom
        xs = (ax + cy + self.e, ax + cb + self.e, ar + cy + self.e, ar + cb + self.e)
        ys = (bx + dy + self.f, bx + db + self.f, br + dy + self.f, br + db + self.f)
        x, y = min(xs), min(ys)
        return Box(x, y, max(xs) - x, max(ys) - y)

    @property
    def scale(self) -> float:
        """The factor by which lengths grow on average."""
        return math.sqrt(abs(self.a * self.d - self.b * self.c))

    @property
    def mirrors(self) -> bool:
        """Whether the map turns left hands into right hands."""
        return self.a * self.d - self.b * self.c < 0


IDENTITY = Affine()


def translation(x: float, y: float) -> Affine:
    """A shift."""
    return Affine(e=x, f=y)


def scaling(x: float, y: float | None = None) -> Affine:
    """A stretch about the origin."""
    return Affine(a=x, d=x if y is None else y)


def rotation(degrees: float, x: float = 0.0, y: float = 0.0) -> Affine:
    """A turn about a point, clockwise on the page since y grows downwards."""
    angle = math.radians(degrees)
    cos, sin = math.cos(angle), math.sin(angle)
    return translation(x, y) @ Affine(cos, sin, -sin, cos) @ translation(-x, -y)


def mirroring(x: float) -> Affine:
    """A reflection in the vertical line at x."""
    return Affine(a=-1.0, e=2 * x)


def transform_path(path: Path, affine: Affine) -> Path:
    """The path under an affine map."""
    a, b, c, d, e, f = map(float, (affine.a, affine.b, affine.c, affine.d, affine.e, affine.f))
    moved: list[Segment] = []
    segment: Any
    for segment in path:
        if len(segment) == 3:
            kind, x, y = segment
            moved.append((kind, a * x + c * y + e, b * x + d * y + f))
        elif len(segment) == 7:
            kind, x, y, x2, y2, x3, y3 = segment
            first = (a * x + c * y + e, b * x + d * y + f, a * x2 + c * y2 + e, b * x2 + d * y2 + f)
            moved.append((kind, *first, a * x3 + c * y3 + e, b * x3 + d * y3 + f))
        else:
            moved.append(segment)
    return tuple(moved)


def path_box(path: Path) -> Box:
    """The box round all points of a path, handles included."""
    values: list[Any] = list(chain.from_iterable([segment[1:] for segment in path]))
    xs, ys = values[0::2], values[1::2]
    x, y = min(xs), min(ys)
    return Box(x, y, max(xs) - x, max(ys) - y)


def polygon(points: Iterable[tuple[float, float]], closed: bool = True) -> Path:
    """Straight lines from point to point."""
    segments: list[Segment] = [("L" if i else "M", x, y) for i, (x, y) in enumerate(points)]
    return (*segments, ("Z",)) if closed else tuple(segments)


def rectangle(box: Box, radius: float = 0.0, rounded: Sequence[bool] = (True, True, True, True)) -> Path:
    """A rectangle; ``rounded`` says which of left top, right top, right bottom, left bottom are round."""
    x, y, right, bottom = box.x, box.y, box.right, box.bottom
    r = min(radius, box.width / 2, box.height / 2)
    if r <= 0:
        return polygon([(x, y), (right, y), (right, bottom), (x, bottom)])
    k = r * (1 - _CIRCLE)
    left_top, right_top, right_bottom, left_bottom = (r if is_round else 0.0 for is_round in rounded)
    segments: list[Segment] = [("M", x + left_top, y), ("L", right - right_top, y)]
    if right_top:
        segments.append(("C", right - k, y, right, y + k, right, y + r))
    segments.append(("L", right, bottom - right_bottom))
    if right_bottom:
        segments.append(("C", right, bottom - k, right - k, bottom, right - r, bottom))
    segments.append(("L", x + left_bottom, bottom))
    if left_bottom:
        segments.append(("C", x + k, bottom, x, bottom - k, x, bottom - r))
    segments.append(("L", x, y + left_top))
    if left_top:
        segments.append(("C", x, y + k, x + k, y, x + r, y))
    segments.append(("Z",))
    return tuple(segments)


def circle(x: float, y: float, radius: float) -> Path:
    """A circle from four Bézier quarters (largest error 0.03 % of the radius)."""
    k = radius * _CIRCLE
    left, right, top, bottom = x - radius, x + radius, y - radius, y + radius
    return (
        ("M", right, y),
        ("C", right, y + k, x + k, bottom, x, bottom),
        ("C", x - k, bottom, left, y + k, left, y),
        ("C", left, y - k, x - k, top, x, top),
        ("C", x + k, top, right, y - k, right, y),
        ("Z",),
    )
