"""Hands at the scale of a bust, about 18 units long, wrist at (0, 0), pointing towards +x."""

from __future__ import annotations

from typing import Literal

from signage.pictograms.kit.nodes import (
    SMALL_OUTLINE,
    Blob,
    Member,
    Node,
    Pigment,
    Stroke,
    Style,
    closed,
    group,
    stroked,
)
from signage.pictograms.kit.paths import limb, line, rounded_rectangle, spline
from signage.pictograms.kit.registry import part

Pose = Literal["flat", "pinch", "fist", "spread", "cup", "mitten"]


def _members(pose: Pose) -> tuple[Member, ...]:
    if pose == "flat":
        return (
            *closed(*limb([(0, 0, 4.4), (7, 0, 5.2), (18, -0.4, 3.0)])),
            *stroked(4.0, spline([(2, -3), (6, -7.5), (10.5, -9)])),
        )
    if pose == "pinch":
        return (
            *closed(*limb([(0, 0, 4.4), (5, -0.4, 5.4)])),
            *stroked(
                3.7,
                spline([(5, -3), (11, -6), (15.6, -4), (17.6, 0)]),
                spline([(4, -4), (8, -10.4), (14, -12.2)]),
            ),
            *stroked(3.8, spline([(4, 3.4), (9.6, 5.6), (17, 2.6)])),
        )
    if pose == "fist":
        return (
            *closed(rounded_rectangle(-3, -6.6, 15, 13.4, 5)),
            *stroked(4.0, spline([(1, -5), (6, -8.6), (11, -7.4)])),
        )
    if pose == "spread":
        return (
            *closed(*limb([(0, 0, 4.4), (5, 0, 6)])),
            *(
                Member(line((6, start), (15 - abs(start) * 0.2, end)), 3.5)
                for start, end in ((-4.6, -7.4), (0, -0.6), (4.4, 6))
            ),
            *stroked(3.7, spline([(1, -4), (3, -8.6), (6, -12)])),
        )
    if pose == "cup":
        return (
            *closed(*limb([(0, 0, 4.4), (5, -0.5, 5.4)])),
            *stroked(4.6, spline([(4, -2), (11, -4.5), (16, -1.5), (18, 3)])),
            *stroked(4.2, spline([(4, 3), (9, 6.5), (13, 7.5)])),
        )
    return (
        *closed(*limb([(0, 0, 4.6), (6, 0, 6.2), (14, 0, 5.0)])),
        *stroked(4.4, spline([(1, -3), (5, -8.4), (10.5, -9.8)])),
    )


@part("small-hand")
def small_hand(
    pose: Pose = "mitten", style: Style = "tone", outline: float | None = None, halo: float | None = None
) -> Node:
    """A hand of a figure: flat, pinch, fist, spread, cup or mitten."""
    edge = (0.0 if style == "ink" else SMALL_OUTLINE) if outline is None else outline
    hand = Blob(style, _members(pose), edge, halo)
    if pose != "fist":
        return hand
    pigment: Pigment = "ground" if style == "ink" else "ink"
    return group(hand, *(Stroke(line((7, y), (12, y)), 1.9, pigment) for y in (-2.2, 2.2)))
