"""Whole people from the side, facing right."""

from __future__ import annotations

from signage.ground.geometry import Path, rotation, scaling, transform_path, translation
from signage.pictograms.kit.busts import SIDE_HEAD
from signage.pictograms.kit.figures import Headgear
from signage.pictograms.kit.landmarks import PlacePoint
from signage.pictograms.kit.nodes import (
    SMALL_OUTLINE,
    Blob,
    Node,
    Patch,
    Style,
    closed,
    group,
)
from signage.pictograms.kit.paths import (
    Point,
    ellipse,
    limb,
    rounded_polygon,
    rounded_rectangle,
)
from signage.pictograms.kit.registry import part

_OUTLINE = 2.4
Joints = list[tuple[float, float, float]]
SEATED_HIP: Point = (34, 58)
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
    shoe_edge = None if shoes == "ink" else _OUTLINE
    nodes: list[Node] = []
    if far_leg:
        nodes += [
            Blob(shoes, closed(rounded_rectangle(49.6, 80.5, 15.4, 8.5, 3.4)), shoe_edge, 0),
            Blob(body, closed(*far), edge, 0),
        ]
    nodes += [
        Blob(shoes, closed(placed_foot(ankle, foot_angle)), shoe_edge, 0),
        skull_side(head, shoulder),
        Blob(body, closed(*trunk, *near), edge, 2.0 if body == "ink" and far_leg else 0),
    ]
    nodes.append(head_side(headgear, head, (shoulder[0] + 0.6, shoulder[1] - 2)))
    return group(*nodes, role="body")


def skull_side(head: Point, shoulder: Point) -> Blob:
    """A small head in profile on its neck, its middle at ``head``."""
    profile = transform_path(SIDE_HEAD, translation(*head) @ scaling(0.5) @ translation(-47, -32))
    neck = limb([(head[0] - 1.4, head[1] + 4, 3.8), (*shoulder, 4.4)])
    return Blob("ink", closed(profile, *neck), halo=0)


def head_side(headgear: Headgear, head: Point, shoulder: Point) -> Node:
    """What a small head from the side wears, facing right; a hood's cape runs down to the shoulder."""
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
            *closed(*limb([(x - 2, y + 4, 6.5), (*shoulder, 7.2)])),
        ),
        _OUTLINE,
    )
    window = Patch(rounded_polygon([(x + 3, y - 7), (x + 12, y - 7), (x + 12, y + 8), (x + 3, y + 8)], 3))
    return group(hood, window, mask, glass)


def _edge(style: Style) -> float:
    return 0.0 if style == "ink" else _OUTLINE


def _open_shoulder(body: Style, shoulder: Point) -> list[Node]:
    """Where a dark arm melts into a dark body."""
    return [Blob("ink", closed(ellipse(*shoulder, 6.9)), halo=0)] if body == "ink" else []


@part("walking")
def walking(
    body: Style = "ink",
    headgear: Headgear = "bare",
    hands: Style = "ink",
    shoes: Style = "ink",
    apron: bool = False,
) -> Node:
    """A person who walks to the right."""
    far_arm: Joints = [(46, 30, 4), (55, 41, 3.8), (63.5, 44, 3.3)]
    near_arm: Joints = [(44.5, 30, 4.4), (36.5, 42, 4), (38.5, 53, 3.5)]
    far_leg: Joints = [(43.5, 55, 5.6), (41, 69, 4.8), (29.5, 80, 4)]
    near_leg: Joints = [(43.5, 55, 6.2), (53.5, 68, 5.2), (57, 83, 4.2)]
    trunk = limb([(45, 31, 7), (44, 42, 6.6), (43.5, 55, 6.6)])
    edge, shoe_edge, hand_edge = _edge(body), _edge(shoes), 0.0 if hands == "ink" else SMALL_OUTLINE
    parting = 2.0 if body == "ink" else 0.0
    nodes: list[Node] = [
        Blob(shoes, closed(placed_foot((29, 79.4), 44)), shoe_edge, 0),
        Blob(body, closed(*limb(far_leg)), edge, 0),
        Blob(hands, closed(ellipse(64.5, 44.2, 3.9)), hand_edge, 0),
        Blob(body, closed(*limb(far_arm)), edge, 0),
        Blob(shoes, closed(placed_foot((57, 82.4), 0)), shoe_edge, 0),
        skull_side((47.4, 14.6), (45.4, 27)),
        Blob(body, closed(*trunk, *limb(near_leg)), edge, 0),
    ]
    if apron:
        front = rounded_polygon(
            [(44, 29), (52.4, 28), (53.4, 44), (60.6, 66), (46, 72), (41.6, 48)], [3, 3, 6, 3, 3, 6]
        )
        nodes.append(Blob("paper", closed(front), _OUTLINE))
    nodes += [
        head_side(headgear, (47.4, 14.6), (45.6, 28)),
        Blob(hands, closed(ellipse(39, 54, 3.9)), hand_edge, parting),
        Blob(body, closed(*limb(near_arm)), edge, parting),
        *_open_shoulder(body, (44.5, 30)),
    ]
    return group(*nodes, role="body")


@part("standing-side")
def standing_side(
    body: Style = "ink",
    headgear: Headgear = "bare",
    hands: Style = "ink",
    shoes: Style = "ink",
    elbow: PlacePoint = (42, 43),
    hand: PlacePoint = (45, 54),
) -> Node:
    """A person who stands and faces right; the near arm goes through elbow and hand."""
    legs = (*limb([(45, 55, 6.4), (45.4, 69, 5.4), (45, 83, 4.6)]),)
    trunk = limb([(45.6, 31, 7.2), (45, 42, 6.8), (45, 55, 6.6)])
    edge, shoe_edge, hand_edge = _edge(body), _edge(shoes), 0.0 if hands == "ink" else SMALL_OUTLINE
    parting = 2.0 if body == "ink" else 0.0
    arm = limb([(45, 31, 4.4), (*elbow, 4), (*hand, 3.5)])
    nodes: list[Node] = [
        Blob(shoes, closed(placed_foot((45, 82.4), 0)), shoe_edge, 0),
        skull_side((47.4, 14.6), (45.6, 27)),
        Blob(body, closed(*trunk, *legs), edge, 0),
        head_side(headgear, (47.4, 14.6), (45.6, 28)),
        Blob(hands, closed(ellipse(*hand, 3.9)), hand_edge, parting),
        Blob(body, closed(*arm), edge, parting),
        *_open_shoulder(body, (45, 31)),
    ]
    return group(*nodes, role="body")
