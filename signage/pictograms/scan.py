"""A small scan converter, so that pictures can be compared and measured without a painter."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterator, Sequence

from signage.ground.geometry import Path

Grid = list[list[float]]
"""Rows of values from top to bottom."""

_SUBDIVISIONS = 4
"""Scan lines a row."""

_CURVE_STEPS = 10

_Edge = tuple[float, float, float, float, int]


def coverage(path: Path, cells: int, side: float) -> Grid:
    """How much of each cell of a square of ``cells`` by ``cells`` a filled path covers, 0 to 1.

    ``side`` is the length of the square in the units of the path. Non-zero rule; exact along x, four
    scan lines a row along y.
    """
    lines = cells * _SUBDIVISIONS
    heights = [(line + 0.5) / _SUBDIVISIONS for line in range(lines)]
    crossings: list[list[tuple[float, int]]] = [[] for _ in range(lines)]
    for x, top, end, bottom, way in _edges(path, cells / side):
        for line in range(bisect_left(heights, top), bisect_left(heights, bottom)):
            crossings[line].append((x + (heights[line] - top) / (bottom - top) * (end - x), way))
    grid = [[0.0] * cells for _ in range(cells)]
    for line, crossed in enumerate(crossings):
        row = grid[line // _SUBDIVISIONS]
        for left, right in _spans(crossed):
            _cover(row, max(left, 0.0), min(right, float(cells)), 1 / _SUBDIVISIONS)
    return grid


def _cover(row: list[float], left: float, right: float, weight: float) -> None:
    if right <= left:
        return
    first, last = int(left), min(int(right), len(row) - 1)
    if first >= len(row):
        return
    if first == last:
        row[first] += (right - left) * weight
        return
    row[first] += (first + 1 - left) * weight
    for index in range(first + 1, last):
        row[index] += weight
    row[last] += (right - last) * weight


def _spans(crossings: list[tuple[float, int]]) -> Iterator[tuple[float, float]]:
    """Where a scan line is inside, from what it crosses and which way that runs."""
    winding = 0
    start = 0.0
    for x, way in sorted(crossings):
        if winding == 0:
            start = x
        winding += way
        if winding == 0:
            yield start, x


def _edges(path: Path, scale: float) -> Iterator[_Edge]:
    for contour in polygons(path):
        for (x, y), (end_x, end_y) in zip(contour, [*contour[1:], contour[0]], strict=True):
            if y <= end_y:
                yield x * scale, y * scale, end_x * scale, end_y * scale, 1
            else:
                yield end_x * scale, end_y * scale, x * scale, y * scale, -1


def polygons(path: Path) -> list[list[tuple[float, float]]]:
    """The contours of a path with its curves cut into short lines."""
    contours: list[list[tuple[float, float]]] = []
    for segment in path:
        numbers = [float(value) for value in segment[1:]]
        if segment[0] == "M":
            contours.append([(numbers[0], numbers[1])])
        elif segment[0] == "L":
            contours[-1].append((numbers[0], numbers[1]))
        elif segment[0] == "C":
            contours[-1].extend(_curve(contours[-1][-1], numbers))
    return contours


def _curve(start: tuple[float, float], numbers: Sequence[float]) -> Iterator[tuple[float, float]]:
    x1, y1, x2, y2, x3, y3 = numbers
    for step in range(1, _CURVE_STEPS + 1):
        t = step / _CURVE_STEPS
        u = 1 - t
        a, b, c, d = u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t
        yield a * start[0] + b * x1 + c * x2 + d * x3, a * start[1] + b * y1 + c * y2 + d * y3


def area(path: Path) -> float:
    """The area that a path encloses, its holes taken off (contours must not overlap)."""
    return abs(math.fsum(_signed_area(contour) for contour in polygons(path)))


def _signed_area(contour: Sequence[tuple[float, float]]) -> float:
    return (
        math.fsum(
            x * end_y - end_x * y
            for (x, y), (end_x, end_y) in zip(contour, [*contour[1:], contour[0]], strict=True)
        )
        / 2
    )
