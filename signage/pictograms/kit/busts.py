"""Head and shoulders from the front and from the side, and the arms that go with them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from signage.ground.geometry import Path, rotation, scaling, transform_path, translation
from signage.pictograms.kit.landmarks import PlacePoint
from signage.pictograms.kit.nodes import (
    CANVAS,
    DETAIL,
    Blob,
    Group,
    Node,
    Patch,
    Stroke,
    Style,
    closed,
    group,
)
from signage.pictograms.kit.paths import (
    Point,
    arc,
    direction,
    ellipse,
    limb,
    midpoint,
    parse_path,
    rounded_rectangle,
)
from signage.pictograms.kit.registry import part
from signage.pictograms.kit.small_hands import Pose, small_hand

FRONT_TORSO = parse_path(
    "M 16 89 C 16 72 20 63 34 60 C 39 59 42 58 42 56 L 54 56 C 54 58 57 59 62 60 C 76 63 80 72 80 89 Z"
)
SIDE_TORSO = parse_path("M 20 89 C 20 74 25 61 37 57 L 50 56 C 60 59 64 72 64 89 Z")
SIDE_HEAD = transform_path(
    parse_path(
        "M -9 27 L -9 18 C -9.5 13 -15 10 -15.6 0 C -16.4 -12 -8 -18 1 -18 C 9 -18 13.4 -13.4 13.6 -7 "
        "L 13.4 -3.6 C 14.4 -1 17.6 3 18 5 C 18.2 6.5 16 7 14.9 7.2 L 14.7 9.6 C 15.4 11.2 15.2 12.4 14.2 13 "
        "C 14.8 15.6 13.8 18.6 10 18.9 C 7 19.1 5.6 18.6 4 18 L 4 27 Z"
    ),
    translation(46, 32),
)

View = Literal["front", "side"]


Reach = tuple[PlacePoint, PlacePoint]
"""Elbow and wrist of an arm."""

_RADII = (5.8, 5.1, 4.4)
_SHOULDERS = {"front": (29.0, 75.0), "side": (37.0, 72.0)}


def _bones(shoulder: Point, reach: Reach) -> tuple[Path, ...]:
    elbow, wrist = reach
    return limb([(*shoulder, _RADII[0]), (*elbow, _RADII[1]), (*wrist, _RADII[2])])


def _twin(reach: Reach) -> Reach:
    (x, y), (wrist_x, wrist_y) = reach
    return ((CANVAS - x, y), (CANVAS - wrist_x, wrist_y))


@part("front-bust")
def front_bust(
    torso: Style = "ink",
    eyes: bool = True,
    ears: bool = True,
    arms: Reach | None = None,
    right_arm: Reach | None = None,
    neck: bool = True,
) -> Node:
    """Head and shoulders from the front; ``torso`` is ink for own clothes, paper for a coverall.

    ``arms`` are elbow and wrist of the arm on the left; the other side is its twin unless
    ``right_arm`` says otherwise. The hands are a part of their own, ``bust-hand``, painted later.
    """
    head = [ellipse(48, 33, 14, 17)]
    if neck:
        head.append(rounded_rectangle(42, 44, 12, 14, 3))
    if ears:
        head += [ellipse(34.4, 34, 2.6, 4), ellipse(61.6, 34, 2.6, 4)]
    trunk = [FRONT_TORSO]
    if arms is not None:
        right = right_arm if right_arm is not None else _twin(arms)
        trunk += [*_bones((29, 75), arms), *_bones((67, 75), right)]
    nodes = _body(torso, trunk, head)
    if eyes:
        nodes += [Patch(ellipse(42.6, 31, 1.9), "ground"), Patch(ellipse(53.4, 31, 1.9), "ground")]
    return group(*nodes, role="body")


def _body(torso: Style, trunk: Sequence[Path], head: Sequence[Path]) -> list[Node]:
    """Own clothes melt with the head; a coverall closes its collar over the neck."""
    if torso == "ink":
        return [Blob("ink", closed(*head, *trunk), halo=0)]
    return [Blob("ink", closed(*head), halo=0), Blob(torso, closed(*trunk), halo=0)]


@part("side-bust")
def side_bust(torso: Style = "ink", ear: bool = True, arm: Reach | None = None) -> Node:
    """Head and shoulders from the side, facing right, with an arm if its elbow and wrist are given."""
    trunk = [SIDE_TORSO]
    if arm is not None:
        trunk += _bones(_SHOULDERS["side"], arm)
    nodes = _body(torso, trunk, [SIDE_HEAD])
    if ear:
        nodes.append(Stroke(arc(44.8, 34, 3.2, -150, 110), DETAIL, "ground"))
    return group(*nodes, role="body")


LEAN = translation(-15, 8) @ rotation(26, 40, 80)
"""From the head of a side bust to that of a leaning one; garments take the same at, rot and about."""


@part("leaning-bust")
def leaning_bust(torso: Style = "ink", ear: bool = True, arm: Reach | None = None, drop: float = 0.0) -> Node:
    """Head and shoulders from the side, bent forward so that what comes off falls away from the body.

    What the head wears takes ``at: [-15, 8 + drop]``, ``rot: 26``, ``about: [40, 80]``. ``drop``
    lowers the person; the body ends level at y 89 whatever the drop.
    """
    floor = 89 - drop
    left, right = 3 + drop * 0.7, 55 - drop * 0.18
    back = parse_path(
        f"M {left} {floor} C 9 {78 - drop * 0.4} 19 66.6 32.4 66 L 44.5 70.8 "
        f"C 51 75 54.6 {81 - drop * 0.5} {right} {floor} Z"
    )
    trunk = [transform_path(back, translation(0, drop))]
    if arm is not None:
        trunk += _bones((22 + drop * 0.3, min(77 + drop, 80)), arm)
    lowered = translation(0, drop) @ LEAN
    nodes = _body(torso, trunk, [transform_path(SIDE_HEAD, lowered)])
    if ear:
        nodes.append(Stroke(transform_path(arc(44.8, 34, 3.2, -150, 110), lowered), DETAIL, "ground"))
    return group(*nodes, role="body")


@part("bust-hand")
def bust_hand(
    reach: Reach = ((12, 66), (17, 43)),
    style: Style = "tone",
    sleeve: Style = "paper",
    pose: Pose = "mitten",
    angle: float | None = None,
    flip: bool = False,
    size: float = 1.0,
    view: View = "front",
    shoulder: PlacePoint | None = None,
    halo: float | None = None,
    cuffed: bool = False,
) -> Node:
    """The hand of an arm of a bust, tucked under the end of its sleeve; ``reach`` is that of the arm.

    ``angle`` is the heading of the hand in degrees; without it the hand follows the forearm.
    ``cuffed`` lays the hand over the sleeve instead, as an outer glove is worn.
    """
    elbow, wrist = reach
    heading = direction(elbow, wrist) if angle is None else angle
    placed = translation(*wrist) @ rotation(heading) @ scaling(size, -size if flip else size)
    held = Group((small_hand(pose=pose, style=style, halo=halo),), placed, role="hand")
    root = shoulder if shoulder is not None else _SHOULDERS[view]
    forearm = limb([(*elbow, _RADII[1]), (*wrist, _RADII[2])])
    upper = midpoint(root, elbow)
    inside = limb([(*upper, _RADII[1]), (*elbow, _RADII[1]), (*wrist, _RADII[2])])
    over = group(
        Blob(sleeve, closed(*forearm), halo=halo), Blob(sleeve, closed(*inside), only="fill", role="body")
    )
    if cuffed:
        return group(over, held, role="arm")
    if style == sleeve == "ink":
        skin = Group((small_hand(pose=pose, style="ink", halo=0),), placed, role="hand")
        return group(held, over, skin, role="arm")
    return group(held, over, role="arm")
