"""What covers the face beside respirators: a pleated mask and a face shield."""

from __future__ import annotations

from signage.ground.geometry import translation
from signage.pictograms.kit.nodes import (
    Blob,
    Group,
    Node,
    Patch,
    Stroke,
    Style,
    closed,
    group,
    stroked,
)
from signage.pictograms.kit.paths import (
    ellipse,
    line,
    parse_path,
    rounded_polygon,
    rounded_rectangle,
    spline,
)
from signage.pictograms.kit.registry import part

_MASK = parse_path(
    "M 38.4 37.4 C 43 36.4 53 36.4 57.6 37.4 C 59.6 42 59.4 47 57.2 51 C 53 54.6 43 54.6 38.8 51 "
    "C 36.6 47 36.4 42 38.4 37.4 Z"
)


@part("mask-front")
def mask_front(style: Style = "paper", loops: bool = True) -> Node:
    """A pleated mask on a front bust with its loops behind the ears."""
    nodes: list[Node] = []
    if loops:
        ends = (
            ((39, 40), (34, 36)),
            ((39.6, 49), (34.4, 40)),
            ((57, 40), (62, 36)),
            ((56.4, 49), (61.6, 40)),
        )
        nodes += [Stroke(line(start, end), 2.8, "ground") for start, end in ends]
    nodes.append(Blob(style, closed(_MASK), 2.4))
    nodes += [Stroke(line((42.4, y), (53.6, y)), 2.2) for y in (42.6, 47.8)]
    return group(*nodes)


@part("mask-loose")
def mask_loose(style: Style = "accent", loops: bool = True) -> Node:
    """A pleated mask by itself, middle at (0, 0), 30 wide, with both loops."""
    sheet = rounded_polygon([(-15, -9.4), (15, -9.4), (15, 9.4), (-15, 9.4)], 3.4)
    nodes: list[Node] = []
    if loops:
        nodes += [
            Blob(
                style,
                stroked(2.6, spline([(x, -7), (x * 1.6, -8), (x * 1.74, 0), (x * 1.6, 8), (x, 7)])),
                1.7,
            )
            for x in (-14.0, 14.0)
        ]
    nodes.append(Blob(style, closed(sheet)))
    nodes += [Stroke(line((-9, y), (9, y)), 2.2) for y in (-3.2, 3.2)]
    return group(*nodes)


_PANE = rounded_polygon([(26, 27), (70, 27), (67.6, 64), (59, 72), (37, 72), (28.4, 64)], [2, 2, 9, 9, 9, 9])
_GLASS = rounded_polygon(
    [(31.2, 28), (64.8, 28), (62.8, 61), (57, 67), (39, 67), (33.2, 61)], [1, 1, 6, 6, 6, 6]
)


@part("visor")
def visor(style: Style = "accent") -> Node:
    """The clear pane of a face shield before a front bust: its edge, glints and the band on the brow.

    The pane is wider than the face, which shows through it with a mask; the crown stays free.
    """
    face = (ellipse(48, 33, 14, 17), rounded_rectangle(42, 44, 12, 28, 1))
    glints = (line((35, 46), (31.8, 55)), line((63.6, 39), (60.8, 47)), line((64, 50), (62.6, 54)))
    return group(
        Blob(style, closed(_PANE), 2.4),
        Blob("tone", closed(_GLASS), 2.0),
        Group((Blob("ink", closed(*face), halo=0),), within=closed(_GLASS)),
        Patch(ellipse(42.6, 34.4, 1.8), "paper"),
        Patch(ellipse(53.4, 34.4, 1.8), "paper"),
        Group((mask_front(loops=False),), translation(0, 1.6)),
        *(Stroke(glint, 2.4, "paper") for glint in glints),
        Blob(style, closed(rounded_rectangle(24, 22.4, 48, 7.6, 3.4)), 2.4),
    )


@part("visor-side")
def visor_side(style: Style = "accent") -> Node:
    """A face shield by itself from the side, facing right: the middle of its band at (0, 0), 58 high."""
    pane = parse_path("M -13 -5 L 7 -5 C 17.6 10 17.6 32 9 52 L -12 47 C -4.6 32 -4.6 12 -13 -5 Z")
    inside = parse_path("M -4.6 2.8 L 4.4 2.8 C 12 14 12 31 6.4 45.6 L -4.6 43 C 2 30 2 15 -4.6 2.8 Z")
    return group(
        Blob(style, closed(pane), 2.4),
        Blob("tone", closed(inside), 1.8),
        Stroke(line((4.6, 31), (6.4, 15)), 2.6, "paper"),
    )
