"""Waste bags: twisted at the neck, bent and tied."""

from __future__ import annotations

from typing import Literal

from signage.pictograms.kit.nodes import (
    DETAIL,
    SMALL_OUTLINE,
    Blob,
    Node,
    Stroke,
    Style,
    closed,
    group,
    stroked,
)
from signage.pictograms.kit.paths import (
    line,
    parse_path,
    rounded_polygon,
    rounded_rectangle,
    spline,
)
from signage.pictograms.kit.registry import part

Neck = Literal["twisted", "bent", "tied"]

_SACK = parse_path(
    "M -6 -42 C -12 -38 -26 -34 -28 -18 C -29 -6 -25 0 -17 0 L 17 0 C 25 0 29 -6 28 -18 "
    "C 26 -34 12 -38 6 -42 Z"
)
_FOLDS = (line((-4.4, -36), (-11, -29)), line((0.4, -35.4), (1.2, -26.6)), line((5, -36), (12.4, -30)))


@part("waste-bag")
def waste_bag(
    style: Style = "accent", neck: Neck = "tied", tie: Style | None = "paper", folds: bool = True
) -> Node:
    """A filled waste bag, the middle of its foot at (0, 0), 56 wide; the sack ends at y -42.

    ``twisted`` has its neck straight up to y -75, ``bent`` turns it down to the right, ``tied`` holds
    the bent neck with a band (the swan neck); ``tie`` is the style of the band or None for no band.
    Leave ``folds`` out below a scale of 0.7.
    """
    if neck == "twisted":
        return group(Blob(style, closed(_SACK, _TWIST)), *_folds(folds), *_turns())
    stem = spline([(0, -38), (-0.6, -50), (2.4, -58), (9, -59.6), (13.6, -54), (13, -45)])
    fan = rounded_polygon([(9.4, -47), (16.6, -47), (20.4, -36), (6.8, -36)], 1.6)
    nodes: list[Node] = [Blob(style, (*closed(_SACK, fan), *stroked(7.4, stem))), *_folds(folds)]
    if neck == "tied" and tie is not None:
        nodes.append(Blob(tie, closed(rounded_rectangle(-6.4, -50.4, 25, 6.4, 2.8)), SMALL_OUTLINE))
    return group(*nodes)


_TWIST = rounded_polygon(
    [(-6, -40), (-4.4, -54), (-10, -74), (-3.4, -70), (2.6, -75), (10, -72), (4.4, -54), (6, -40)],
    [2, 3, 2, 2, 2, 2, 3, 2],
)


def _folds(are_shown: bool) -> list[Node]:
    return [Stroke(fold, DETAIL) for fold in _FOLDS] if are_shown else []


def _turns() -> list[Node]:
    return [Stroke(line((-3.6, y), (3.6, y - 3.4)), 2.0) for y in (-42, -47.6)]


@part("bag-label")
def bag_label(style: Style = "accent", width: float = 26.0, height: float = 18.0) -> Node:
    """A label with lines of writing, middle at (0, 0)."""
    left, top = -width / 2, -height / 2
    return group(
        Blob(style, closed(rounded_rectangle(left, top, width, height, 2.4)), 2.4),
        Stroke(line((left + 4.6, top + height * 0.34), (-left - 4.6, top + height * 0.34)), 2.4),
        Stroke(line((left + 4.6, top + height * 0.68), (2, top + height * 0.68)), 2.4),
    )
