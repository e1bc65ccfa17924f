"""Gowns: worn on a bust or a standing figure, and by themselves."""

from __future__ import annotations

from signage.pictograms.kit.nodes import (
    DETAIL,
    Blob,
    Node,
    Stroke,
    Style,
    closed,
    group,
    stroked,
)
from signage.pictograms.kit.paths import limb, line, rounded_polygon, spline
from signage.pictograms.kit.registry import part

_EDGE = 2.4
GOWN = rounded_polygon(
    [(40, 24), (56, 24), (59.6, 30), (59, 44), (62, 74), (34, 74), (37, 44), (36.4, 30)],
    [3, 3, 6, 8, 3, 3, 8, 6],
)


@part("gown-standing")
def gown_standing(
    style: Style = "accent",
    left_elbow: tuple[float, float] = (31, 41),
    left_hand: tuple[float, float] = (36, 51),
    open_back: bool = False,
) -> Node:
    """A gown with sleeves on a standing figure, both arms alike; ``open_back`` shows the slit of its back."""
    bones = [(39.4, 28.6, 5.0), (*left_elbow, 4.6), (*left_hand, 4.2)]
    twin = [(96 - x, y, radius) for x, y, radius in bones]
    nodes: list[Node] = [Blob(style, (*closed(GOWN), *closed(*limb(bones)), *closed(*limb(twin))), _EDGE)]
    if open_back:
        nodes.append(Stroke(line((48, 26), (48, 72)), DETAIL))
    return group(*nodes)


@part("gown-loose")
def gown_loose(style: Style = "accent", open_back: bool = True) -> Node:
    """A gown spread out, middle at (0, 0), 70 wide and 74 high."""
    outline = rounded_polygon(
        [
            (-9, -36),
            (9, -36),
            (17, -32),
            (34, -8),
            (26, -1),
            (15, -14),
            (20, 36),
            (-20, 36),
            (-15, -14),
            (-26, -1),
            (-34, -8),
            (-17, -32),
        ],
        [3, 3, 6, 3, 3, 3, 3, 3, 3, 3, 3, 6],
    )
    nodes: list[Node] = [Blob(style, closed(outline)), Stroke(spline([(-9, -35), (0, -28), (9, -35)]))]
    if open_back:
        nodes.append(Stroke(line((0, -28), (0, 34))))
    return group(*nodes)


@part("bow")
def bow(style: Style = "accent", size: float = 1.0) -> Node:
    """Two ties knotted into a bow, the knot at (0, 0), 24 wide."""
    loops = (
        spline([(0, 0), (-7 * size, -6 * size), (-12 * size, -2 * size), (-7 * size, 2.4 * size), (0, 0)]),
        spline([(0, 0), (7 * size, -6 * size), (12 * size, -2 * size), (7 * size, 2.4 * size), (0, 0)]),
    )
    ends = (line((0, 0), (-6 * size, 10 * size)), line((0, 0), (6 * size, 10 * size)))
    return Blob(style, stroked(2.6, *loops, *ends), 1.8)
