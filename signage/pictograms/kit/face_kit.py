"""What the face wears, seen off the face and large: goggles by their strap, a pleated mask in profile."""

from __future__ import annotations

from signage.pictograms.kit.nodes import (
    Blob,
    Node,
    Patch,
    Stroke,
    Style,
    closed,
    group,
)
from signage.pictograms.kit.paths import ellipse, line, parse_path, rounded_polygon, spline
from signage.pictograms.kit.registry import part


@part("goggles-loose")
def goggles_loose(style: Style = "accent") -> Node:
    """Goggles by themselves from the front, middle at (0, 0), 38 wide and 20 high, without their strap."""
    frame = rounded_polygon(
        [(-16, -10), (16, -10), (19, 1), (13, 10), (5, 8.6), (0, 4.6), (-5, 8.6), (-13, 10), (-19, 1)],
        [5, 5, 5, 5, 3, 3, 3, 5, 5],
    )
    lens = rounded_polygon(
        [
            (-13.4, -5.8),
            (13.4, -5.8),
            (14.8, 0.6),
            (11, 5.6),
            (5.8, 4.4),
            (0, 0),
            (-5.8, 4.4),
            (-11, 5.6),
            (-14.8, 0.6),
        ],
        [3, 3, 3, 3, 2, 2, 2, 3, 3],
    )
    return group(
        Blob(style, closed(frame), 2.2),
        Blob("paper", closed(lens), 0.0),
        Stroke(line((-10, 2.4), (-5.4, -2.6)), 2.2),
        Stroke(line((5.8, 2), (10, -2.6)), 2.2),
    )


@part("face-side")
def face_side(mouth: bool = True) -> Node:
    """The eye and the mouth of a bare face on a side bust."""
    nodes: list[Node] = [Patch(ellipse(55, 29.6, 1.9, 2.2), "paper")]
    if mouth:
        nodes.append(Stroke(spline([(55.4, 42.2), (58, 43), (61.6, 42)]), 2.2, "paper"))
    return group(*nodes)


@part("mask-side")
def mask_side(style: Style = "accent") -> Node:
    """A pleated mask in profile, its striped inside to the left, middle at (0, 0), 20 wide and 36 high."""
    inside = parse_path("M -8 -17 C -13 -7 -13 7 -8 17 C -1 10 -1 -10 -8 -17 Z")
    sheet = parse_path("M -8 -17 C 5 -14 12 -6 12 1 C 12 8 4 14 -8 17 C -2 9 -2 -9 -8 -17 Z")
    pleats = [Stroke(line((1.6, y), (9.4, y + 0.8)), 2.2) for y in (-6, 0.8, 7.2)]
    return group(Blob("lining", closed(inside), 2.2), Blob(style, closed(sheet), 2.2), *pleats)
