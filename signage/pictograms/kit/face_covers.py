"""What covers the face beside respirators: a pleated mask and a face shield."""

from __future__ import annotations

from signage.pictograms.kit.nodes import (
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


@part("visor")
def visor(style: Style = "accent") -> Node:
    """The clear pane of a face shield over a front bust: a thick rim and a brow band."""
    rim = spline(
        [(32, 24), (30.6, 38), (33, 52), (41, 61), (48, 62.4), (55, 61), (63, 52), (65.4, 38), (64, 24)]
    )
    nodes: list[Node] = [
        Blob(style, stroked(4.6, rim), SMALL_OUTLINE),
        Blob(style, closed(rounded_rectangle(29.4, 17.4, 37.2, 9, 3.4)), 2.4),
    ]
    return group(*nodes)
