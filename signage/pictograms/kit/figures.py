"""Whole people from the front."""

from __future__ import annotations

import math
from typing import Literal

from signage.ground.geometry import Path
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
    stroked,
)
from signage.pictograms.kit.paths import (
    Point,
    ellipse,
    limb,
    line,
    midpoint,
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
    shoulder = (39.4, 28.6) if side == "left" else (56.6, 28.6)
    joint = elbow if elbow is not None else reach(shoulder, hand, 14.5, 13.5, bend)
    return limb([(*shoulder, 4.3), (*joint, 3.8), (*hand, 3.4)])


def head_front(headgear: Headgear) -> Node:
    """The head of a standing figure with what it wears."""
    skull = Blob("ink", closed(ellipse(48, 13, 6.9, 8), rounded_rectangle(45, 18, 6, 8, 1)), halo=0)
    mask = Blob(
        "paper",
        closed(
            rounded_polygon(
                [(45.4, 14.6), (50.6, 14.6), (53.4, 17.4), (51, 21.2), (45, 21.2), (42.6, 17.4)], 2.4
            )
        ),
        1.8,
    )
    goggles = Blob("paper", closed(rounded_rectangle(42, 8.8, 12, 4, 1.8)), 1.9)
    if headgear == "bare":
        return skull
    if headgear == "respirator":
        return group(skull, mask)
    if headgear == "goggles":
        return group(skull, mask, goggles)
    cape = rounded_polygon([(43, 17), (53, 17), (60, 27.6), (36, 27.6)], [1, 1, 3, 3])
    hood = Blob("paper", closed(ellipse(48, 13, 8.6, 9.8), cape), _OUTLINE)
    window = Patch(rounded_rectangle(41.6, 6.4, 12.8, 13.2, 5))
    glass = Patch(rounded_rectangle(43.6, 8.4, 8.8, 3.2, 1.4), "paper")
    small_mask = Patch(rounded_polygon([(45.6, 13.6), (50.4, 13.6), (52, 17.7), (44, 17.7)], 1.6), "paper")
    return group(hood, window, glass, small_mask)


def small_cuff(elbow: Point, hand: Point, distance: float = 5.0) -> Node:
    """The edge of an outer glove across a forearm of a figure, at a distance from the hand."""
    length = math.dist(elbow, hand) or 1.0
    x, y = (elbow[0] - hand[0]) / length, (elbow[1] - hand[1]) / length
    middle = (hand[0] + x * distance, hand[1] + y * distance)
    half = 3.6
    return Stroke(
        line((middle[0] - y * half, middle[1] + x * half), (middle[0] + y * half, middle[1] - x * half)), 2.0
    )


@part("standing")
def standing(
    body: Style = "ink",
    headgear: Headgear = "bare",
    hands: Style = "ink",
    left_hand: PlacePoint = (32.6, 53),
    right_hand: PlacePoint = (63.4, 53),
    left_elbow: PlacePoint | None = (33.6, 41),
    right_elbow: PlacePoint | None = (62.4, 41),
    apron: bool = False,
    shoes: Style = "ink",
    halo: float = 0.0,
) -> Node:
    """A standing person from the front: ``body`` ink in own clothes, paper in a coverall.

    ``hands`` paper are outer gloves and show their edge.
    """
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
    if hands == body == "paper":
        elbows = (left_elbow or (33.6, 41), right_elbow or (62.4, 41))
        nodes += [small_cuff(elbows[0], left_hand), small_cuff(elbows[1], right_hand)]
    nodes.append(head_front(headgear))
    if apron:
        nodes.append(apron_front(style="paper", loop=False))
    return group(*nodes, role="body")


APRON = rounded_polygon(
    [(42, 29), (54, 29), (54.6, 39), (59, 45), (61, 75), (35, 75), (37, 45), (41.4, 39)],
    [2, 2, 5, 3, 3, 3, 3, 5],
)


@part("apron-front")
def apron_front(style: Style = "accent", loop: bool = True) -> Node:
    """An apron with a bib on a standing figure, its neck loop running up behind the head."""
    loops = (line((43.6, 30), (44.8, 22)), line((52.4, 30), (51.2, 22)))
    nodes: list[Node] = [Blob(style, stroked(2.2, *loops), 1.7)] if loop else []
    nodes.append(Blob(style, closed(APRON), _OUTLINE))
    return group(*nodes)


@part("standing-arm")
def standing_arm_over(
    elbow: PlacePoint = (30, 42),
    hand: PlacePoint = (37, 50),
    sleeve: Style = "paper",
    style: Style = "tone",
    cuffed: bool = False,
    hand_radius: float = 4.0,
) -> Node:
    """The left forearm of a standing figure once more, over what it holds; its twin is ``mirror_at: 48``.

    The figure must have the same elbow and hand. A glove is worn under a paper sleeve and over bare skin.
    """
    edge, gap = (0.0, 2.0) if sleeve == "ink" else (_OUTLINE, 0.0)
    fist = Blob(
        style,
        closed(ellipse(*hand, hand_radius)),
        0.0 if style == "ink" else SMALL_OUTLINE,
        2.0 if style == "ink" else 0.0,
    )
    arm = Blob(sleeve, closed(*limb([(*elbow, 3.8), (*hand, 3.4)])), edge, gap)
    upper = midpoint((39.4, 28.6), elbow)
    inside = closed(*limb([(*upper, 3.9), (*elbow, 3.8), (*hand, 3.4)]))
    melted = Blob(sleeve, inside, only="fill")
    is_over = cuffed or sleeve == "ink"
    nodes: list[Node] = [arm, melted, fist] if is_over else [fist, arm, melted]
    if cuffed:
        nodes.append(small_cuff(elbow, hand))
    return group(*nodes, role="arm")
