"""Whole people: standing from the front, standing and seated from the side."""

from __future__ import annotations

from typing import Literal

from signage.ground.geometry import Path, rotation, transform_path, translation
from signage.pictograms.kit.landmarks import PlacePoint
from signage.pictograms.kit.nodes import (
    SMALL_OUTLINE,
    Blob,
    Node,
    Patch,
    Stroke,
    Style,
    closed,
    group,
)
from signage.pictograms.kit.paths import (
    Point,
    ellipse,
    limb,
    line,
    reach,
    rounded_polygon,
    rounded_rectangle,
)
from signage.pictograms.kit.registry import part

Headgear = Literal["bare", "respirator", "goggles", "hood"]

STANDING_TORSO = rounded_polygon(
    [(37, 24.5), (59, 24.5), (57, 44), (56.5, 56), (39.5, 56), (39, 44)], [6, 6, 8, 3, 3, 8]
)
_OUTLINE = 2.4


def standing_legs(width: float = 0.0) -> tuple[Path, ...]:
    """Both legs of a standing figure; ``width`` is added to their radii."""
    return (
        *limb([(43.4, 54, 5.2 + width), (42.2, 69, 4.6 + width), (41.6, 84, 4 + width)]),
        *limb([(52.6, 54, 5.2 + width), (53.8, 69, 4.6 + width), (54.4, 84, 4 + width)]),
    )


STANDING_FEET = (rounded_rectangle(35.5, 82.5, 10.5, 6.5, 3), rounded_rectangle(50, 82.5, 10.5, 6.5, 3))


def standing_arm(
    side: Literal["left", "right"], hand: Point, bend: int, elbow: Point | None
) -> tuple[Path, ...]:
    """An arm of a standing figure from the shoulder to the hand."""
    shoulder = (39.6, 28.5) if side == "left" else (56.4, 28.5)
    joint = elbow if elbow is not None else reach(shoulder, hand, 14.5, 13.5, bend)
    return limb([(*shoulder, 4.2), (*joint, 3.8), (*hand, 3.3)])


def head_front(headgear: Headgear) -> Node:
    """The head of a standing figure with what it wears."""
    skull = Blob("ink", closed(ellipse(48, 13, 6.9, 8), rounded_rectangle(45, 18, 6, 8, 1)), halo=0)
    mask = Blob(
        "paper",
        closed(
            rounded_polygon([(45, 12.6), (51, 12.6), (53.6, 16), (51, 20.2), (45, 20.2), (42.4, 16)], 2.4)
        ),
        1.8,
    )
    goggles = Patch(rounded_rectangle(43.2, 8.4, 9.6, 3.6, 1.6), "ground")
    if headgear == "bare":
        return skull
    if headgear == "respirator":
        return group(skull, mask)
    if headgear == "goggles":
        return group(skull, mask, goggles)
    hood = Blob("paper", closed(ellipse(48, 13, 8.6, 9.8)), _OUTLINE)
    window = Patch(rounded_rectangle(42.2, 7.2, 11.6, 11.6, 5))
    glass = Patch(rounded_rectangle(44, 8.8, 8, 3.4, 1.4), "ground")
    small_mask = Patch(rounded_polygon([(45.4, 13.8), (50.6, 13.8), (52, 17.8), (44, 17.8)], 1.6), "paper")
    return group(hood, window, glass, small_mask)


@part("standing")
def standing(
    body: Style = "ink",
    headgear: Headgear = "bare",
    hands: Style = "ink",
    left_hand: PlacePoint = (35, 54),
    right_hand: PlacePoint = (61, 54),
    left_elbow: PlacePoint | None = (35.4, 42),
    right_elbow: PlacePoint | None = (60.6, 42),
    apron: bool = False,
    shoes: Style = "ink",
    halo: float = 0.0,
) -> Node:
    """A standing person from the front: ``body`` ink in own clothes, paper in a coverall."""
    left = standing_arm("left", left_hand, 1, left_elbow)
    right = standing_arm("right", right_hand, -1, right_elbow)
    trunk = closed(*standing_legs(), STANDING_TORSO, *left, *right)
    fists = closed(ellipse(*left_hand, 3.9), ellipse(*right_hand, 3.9))
    edge = 0.0 if body == "ink" else _OUTLINE
    nodes: list[Node] = []
    if shoes != body:
        nodes.append(Blob(shoes, closed(*STANDING_FEET), None if shoes == "ink" else _OUTLINE, 0))
    else:
        trunk = (*trunk, *closed(*STANDING_FEET))
    if hands != body:
        nodes.append(Blob(hands, fists, 0.0 if hands == "ink" else SMALL_OUTLINE, 0))
    else:
        trunk = (*trunk, *fists)
    if body != "ink":
        nodes.append(Blob("ink", closed(rounded_rectangle(45, 18, 6, 8, 1)), halo=0))
    nodes.append(Blob(body, trunk, edge, halo))
    if apron:
        nodes.append(apron_front("paper"))
    nodes.append(head_front(headgear))
    return group(*nodes, role="body")


def apron_front(style: Style) -> Node:
    """An apron with a bib and a neck loop on a standing figure."""
    bib = rounded_polygon(
        [(42.5, 29), (53.5, 29), (54.5, 40), (59, 46), (60.6, 74), (35.4, 74), (37, 46), (41.5, 40)],
        [2, 2, 5, 3, 3, 3, 3, 5],
    )
    loops = (line((43.4, 30), (44.6, 23.6)), line((52.6, 30), (51.4, 23.6)))
    return group(*(Stroke(loop, 2.2) for loop in loops), Blob(style, closed(bib), _OUTLINE))


SEATED_HEAD: Point = (51, 20)
SEATED_HIP: Point = (34, 58)
SEATED_SHOULDER: Point = (41, 35)
FOOT = rounded_polygon([(-4, -8), (4, -8), (5, -2), (13, 1), (14.5, 6.5), (-5, 6.5)], [2, 2, 3, 4, 2.6, 3])
"""A shoe from the side: the ankle stands at (0, 0), the toe points towards +x."""


def placed_foot(ankle: Point, degrees: float) -> Path:
    """The shoe at an ankle, turned."""
    return transform_path(FOOT, translation(*ankle) @ rotation(degrees))


@part("seated")
def seated(
    body: Style = "ink",
    headgear: Headgear = "bare",
    knee: PlacePoint = (55, 44),
    ankle: PlacePoint = (72, 60),
    foot_angle: float = -48,
    shoulder: PlacePoint = (41, 35),
    head: PlacePoint = (51, 20),
    shoes: Style = "ink",
    far_leg: bool = True,
) -> Node:
    """A seated person from the side, facing right, without the near arm; the near leg may be raised."""
    edge = 0.0 if body == "ink" else _OUTLINE
    hip = SEATED_HIP
    far = limb([(*hip, 6), (55, 60, 5.2), (54, 82, 4.2)])
    near = limb([(*hip, 6.8), (*knee, 5.8), (*ankle, 4.6)])
    trunk = limb([(*shoulder, 7.4), (36, 46, 7.8), (*hip, 7.8)])
    skull = closed(ellipse(*head, 8.6), *limb([(head[0] - 1.5, head[1] + 4, 4), (*shoulder, 5)]))
    shoe_edge = None if shoes == "ink" else _OUTLINE
    nodes: list[Node] = []
    if far_leg:
        nodes += [
            Blob(shoes, closed(rounded_rectangle(49.6, 80.5, 15.4, 8.5, 3.4)), shoe_edge, 0),
            Blob(body, closed(*far), edge, 0),
        ]
    nodes += [
        Blob(shoes, closed(placed_foot(ankle, foot_angle)), shoe_edge, 0),
        Blob("ink", skull, halo=0),
        Blob(body, closed(*trunk, *near), edge, 2.0 if body == "ink" and far_leg else 0),
    ]
    nodes.append(head_side(headgear, head))
    return group(*nodes, role="body")


def head_side(headgear: Headgear, head: Point) -> Node:
    """What a small head from the side wears, facing right."""
    x, y = head
    mask = Blob(
        "paper",
        closed(rounded_polygon([(x + 3, y + 0.4), (x + 8.6, y + 1.4), (x + 11, y + 5), (x + 6, y + 9)], 2)),
        1.8,
    )
    glass = Blob("paper", closed(rounded_rectangle(x + 4, y - 4.6, 6, 4.6, 1.6)), 1.8)
    if headgear == "bare":
        return group()
    if headgear == "respirator":
        return mask
    if headgear == "goggles":
        return group(mask, glass)
    hood = Blob(
        "paper",
        (
            *closed(ellipse(x - 1, y - 0.4, 9.4, 10)),
            *closed(*limb([(x - 2, y + 4, 6.5), (x - 9, y + 13, 7)])),
        ),
        _OUTLINE,
    )
    window = Patch(rounded_polygon([(x + 3, y - 7), (x + 12, y - 7), (x + 12, y + 8), (x + 3, y + 8)], 3))
    return group(hood, window, mask, glass)
