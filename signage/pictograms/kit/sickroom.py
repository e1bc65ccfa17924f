"""The patient's room and what happens there: a bed with a patient, a wearer whose knees give way."""

from __future__ import annotations

import math

from signage.ground.geometry import Path, rotation, translation
from signage.pictograms.kit.figures_side import head_side, placed_foot, skull_side
from signage.pictograms.kit.landmarks import PlacePoint
from signage.pictograms.kit.nodes import (
    SMALL_OUTLINE,
    Blob,
    Group,
    Node,
    Style,
    closed,
    group,
    stroked,
)
from signage.pictograms.kit.paths import (
    Point,
    arc,
    ellipse,
    limb,
    parse_path,
    rounded_polygon,
    rounded_rectangle,
)
from signage.pictograms.kit.registry import part

_EDGE = 2.4


@part("patient-bed")
def patient_bed(style: Style = "tone", length: float = 44.0) -> Node:
    """A bed from the side with a lying patient, the left end of its floor at (0, 0); the head lies right."""
    frame = (
        rounded_rectangle(0, -21, 4, 21, 1.6),
        rounded_rectangle(length - 4, -31, 4, 31, 1.6),
        rounded_rectangle(0, -14, length, 5, 1.6),
    )
    blanket = parse_path(
        f"M 5.6 -15 C 5.6 -24 9 -25.4 15 -24.6 C 20 -23 25 -23 {length - 16} -25 "
        f"C {length - 14} -24 {length - 14} -16 {length - 14} -15 Z"
    )
    return group(
        Blob(style, closed(*frame), SMALL_OUTLINE, role="bed"),
        Blob("paper", closed(rounded_rectangle(length - 14, -20, 10, 5, 2.4)), SMALL_OUTLINE),
        Blob("ink", closed(ellipse(length - 9.4, -26, 5.2)), halo=1.4, role="patient"),
        Blob("paper", closed(blanket), SMALL_OUTLINE, role="blanket"),
    )


@part("sagging")
def sagging(
    body: Style = "paper",
    hands: Style = "paper",
    shoes: Style = "paper",
    hold: PlacePoint = (78, 34),
) -> Node:
    """A person in a hood from the side whose knees give way, one hand on the head, one on a wall."""
    shoulder: Point = (41, 42)
    far_leg = limb([(33, 62, 6), (55, 66, 5.2), (43, 83, 4.4)])
    near_leg = limb([(33, 62, 6.8), (48, 71, 5.6), (27, 83, 4.6)])
    trunk = limb([(*shoulder, 7.6), (34, 52, 7.6), (33, 62, 7.6)])
    far_arm = limb([(43, 42, 4.2), (60, 44, 4), (*hold, 3.6)])
    near_arm = limb([(39, 42, 4.8), (22, 36, 4.3), (32, 20, 3.7)])
    edge = 0.0 if body == "ink" else _EDGE
    head: Point = (45.6, 25)
    tilted = Group(
        (skull_side(head, shoulder), head_side("hood", head, (shoulder[0] + 1, shoulder[1] - 2))),
        translation(*head) @ rotation(14) @ translation(-head[0], -head[1]),
    )
    return group(
        Blob(hands, closed(ellipse(*hold, 4.2)), SMALL_OUTLINE),
        Blob(body, closed(*far_arm), edge),
        Blob(shoes, closed(placed_foot((43, 82.4), 0)), edge, 0),
        Blob(body, closed(*far_leg), edge),
        Blob(shoes, closed(placed_foot((26, 82), 8)), edge, 0),
        Blob(body, closed(*trunk, *near_leg), edge),
        tilted,
        Blob(hands, closed(ellipse(35.6, 17, 4.6)), SMALL_OUTLINE),
        Blob(body, closed(*near_arm), edge),
        Blob(body, closed(*limb([(34, 41, 4.4), (41, 44, 4.8)])), only="fill"),
        role="body",
    )


@part("stars")
def stars(style: Style = "accent", radius: float = 6.0, width: float = 22.0) -> Node:
    """Stars that circle over a dizzy head, the middle of their path at (0, 0)."""
    ring = arc(0, 0, width, 150, 390, width * 0.36)
    places: tuple[Point, ...] = ((-width, 2), (width, 2), (0, -width * 0.36))
    return group(
        Blob(style, stroked(2.6, ring), 1.7),
        *(Blob(style, closed(_star(place, radius)), 2.0) for place in places),
    )


def _star(centre: Point, radius: float) -> Path:
    x, y = centre
    points: list[Point] = []
    for index in range(10):
        angle, distance = math.radians(36 * index - 90), radius * (0.5 if index % 2 else 1.0)
        points.append((x + distance * math.cos(angle), y + distance * math.sin(angle)))
    return rounded_polygon(points, [0.8, 0.4] * 5)
