"""Thick and thin: growing, shrinking and splitting filled shapes."""

from __future__ import annotations

from collections.abc import Iterable

import pathops

from signage.ground.geometry import Path
from signage.pictograms.compile import combine, rim, skia_shape
from signage.pictograms.kit.nodes import CompiledLayer, Pigment


def grown(shape: pathops.Path, radius: float) -> pathops.Path:
    """The shape with everything nearer than a radius."""
    return combine(shape, rim(shape, 2 * radius), pathops.PathOp.UNION)


def shrunk(shape: pathops.Path, radius: float) -> pathops.Path:
    """The shape without everything nearer to its edge than a radius."""
    return combine(shape, rim(shape, 2 * radius), pathops.PathOp.DIFFERENCE)


def lost_when_opened(shape: pathops.Path, radius: float) -> list[float]:
    """Areas of the pieces into which no disc of the radius fits: lines that are too thin."""
    opened = grown(shrunk(shape, radius), radius * 1.04)
    return piece_areas(combine(shape, opened, pathops.PathOp.DIFFERENCE))


def filled_when_closed(shape: pathops.Path, radius: float) -> float:
    """Area of the gaps into which no disc of the radius fits."""
    closing = shrunk(grown(shape, radius), radius * 1.02)
    return float(abs(combine(closing, shape, pathops.PathOp.DIFFERENCE).area))


def piece_areas(shape: pathops.Path) -> list[float]:
    """The areas of the connected pieces of a shape, each with its holes taken off."""
    contours = sorted(shape.contours, key=lambda contour: -abs(contour.area))
    pieces: list[tuple[pathops.Path, float]] = []
    for contour in contours:
        size = abs(contour.area)
        if contour.clockwise == contours[0].clockwise:
            pieces.append((contour, size))
            continue
        for index in range(len(pieces) - 1, -1, -1):
            outer, area = pieces[index]
            if _holds(outer, contour):
                pieces[index] = (outer, area - size)
                break
    return [area for _, area in pieces]


def _holds(outer: pathops.Path, inner: pathops.Path) -> bool:
    left, top, right, bottom = outer.bounds
    inner_left, inner_top, inner_right, inner_bottom = inner.bounds
    return bool(left <= inner_left and top <= inner_top and right >= inner_right and bottom >= inner_bottom)


def visible_shapes(layers: Iterable[CompiledLayer]) -> dict[Pigment, pathops.Path]:
    """What is seen of each pigment once all layers lie on each other."""
    seen: dict[Pigment, pathops.Path] = {}
    for pigment, path in layers:
        shape = skia_shape(path)
        for other in list(seen):
            seen[other] = combine(seen[other], shape, pathops.PathOp.DIFFERENCE)
        seen[pigment] = combine(seen[pigment], shape, pathops.PathOp.UNION) if pigment in seen else shape
    return seen


def united(paths: Iterable[Path]) -> pathops.Path:
    """All paths as one shape."""
    shape = pathops.Path()
    for path in paths:
        shape = combine(shape, skia_shape(path), pathops.PathOp.UNION)
    return shape
