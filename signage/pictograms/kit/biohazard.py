"""The biohazard sign."""

from __future__ import annotations

import math

from signage.ground.geometry import scaling, translation
from signage.pictograms.kit.landmarks import PlacePoint
from signage.pictograms.kit.nodes import Group, Node, Patch, Pigment, Stroke, closed
from signage.pictograms.kit.paths import Point, ellipse, line
from signage.pictograms.kit.registry import part

LETTERS = {"A": 1.0, "B": 3.5, "C": 4.0, "D": 6.0, "E": 11.0, "F": 15.0, "G": 21.0, "H": 30.0}
"""Lengths of the construction of the sign, in units of A (the table as widely reproduced, from memory)."""

_EXTENT = LETTERS["E"] + LETTERS["F"]
"""How far the crescents reach from the middle."""


def _turned(length: float, turn: int) -> Point:
    angle = math.radians(turn - 90)
    return (length * math.cos(angle), length * math.sin(angle))


@part("biohazard")
def biohazard(
    centre: PlacePoint = (48, 66), radius: float = 14.4, style: Pigment = "ink", back: Pigment = "tone"
) -> Node:
    """The biohazard sign, three-fold symmetric, on a ground of the pigment ``back``.

    Below a radius of 14.4 units its ring is too thin to print.
    """
    turns = (0, 120, 240)
    a, b, c, d = (LETTERS[name] for name in "ABCD")
    e, f, g, h = (LETTERS[name] for name in "EFGH")
    crescents = [Patch(ellipse(*_turned(e, turn), h / 2), style) for turn in turns]
    hollows = [Patch(ellipse(*_turned(f, turn), g / 2), back) for turn in turns]
    mouths = [Stroke(line(_turned(f, turn), _turned(h, turn)), c * radius / _EXTENT, back) for turn in turns]
    slits = [Stroke(line((0, 0), _turned(d, turn)), 1.4 * a * radius / _EXTENT, back) for turn in turns]
    ring = Stroke(ellipse(0, 0, e + 0.75 * a), b * radius / _EXTENT, style)
    inner = tuple(ellipse(*_turned(f, turn), g / 2 - a) for turn in turns)
    rings = Group((ring,), within=closed(*inner))
    middle = Patch(ellipse(0, 0, d / 2), back)
    placed = translation(*centre) @ scaling(radius / _EXTENT)
    return Group((*crescents, *hollows, *mouths, *slits, middle, rings), placed, role="label")
