"""Head and shoulders from the front and from the side, and the arms that go with them."""

from __future__ import annotations

from typing import Literal

from signage.ground.geometry import rotation, scaling, transform_path, translation
from signage.pictograms.kit.landmarks import PlacePoint
from signage.pictograms.kit.nodes import (
    DETAIL,
    GAP,
    OUTLINE,
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
    arc,
    direction,
    ellipse,
    limb,
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

View = Literal["front", "side", "none"]
_TORSOS = {"front": FRONT_TORSO, "side": SIDE_TORSO}


@part("front-bust")
def front_bust(torso: Style = "ink", eyes: bool = True, ears: bool = True) -> Node:
    """Head and shoulders from the front; ``torso`` is ink for own clothes, paper for a coverall."""
    head = [ellipse(48, 33, 14, 17), rounded_rectangle(41.5, 44, 13, 16, 2)]
    if ears:
        head += [ellipse(34.4, 34, 2.6, 4), ellipse(61.6, 34, 2.6, 4)]
    nodes: list[Node] = []
    if torso == "ink":
        nodes.append(Blob("ink", closed(*head, FRONT_TORSO), halo=0))
    else:
        nodes += [Blob("ink", closed(*head), halo=0), Blob(torso, closed(FRONT_TORSO))]
    if eyes:
        nodes += [Patch(ellipse(42.8, 32, 1.8), "ground"), Patch(ellipse(53.2, 32, 1.8), "ground")]
    return group(*nodes, role="body")


@part("side-bust")
def side_bust(torso: Style = "ink", ear: bool = True) -> Node:
    """Head and shoulders from the side, facing right."""
    nodes: list[Node] = []
    if torso == "ink":
        nodes.append(Blob("ink", closed(SIDE_HEAD, SIDE_TORSO), halo=0))
    else:
        nodes += [Blob("ink", closed(SIDE_HEAD), halo=0), Blob(torso, closed(SIDE_TORSO))]
    if ear:
        nodes.append(Stroke(arc(44.8, 34, 3.2, -150, 110), DETAIL, "ground"))
    return group(*nodes, role="body")


@part("bust-arm")
def bust_arm(
    shoulder: PlacePoint = (29, 75),
    elbow: PlacePoint = (12, 66),
    wrist: PlacePoint = (17, 43),
    style: Style = "paper",
    hand: Style = "tone",
    pose: Pose = "mitten",
    angle: float | None = None,
    flip: bool = False,
    hand_size: float = 1.0,
    view: View = "front",
    radii: tuple[float, float, float] = (5.6, 4.9, 4.2),
    halo: float | None = None,
    cuffed: bool = False,
) -> Node:
    """An arm of a bust with its hand under the end of the sleeve, its shoulder open into the torso.

    ``angle`` is the heading of the hand in degrees; without it the hand follows the forearm.
    ``view`` names the torso that the shoulder melts into. ``cuffed`` lays the hand over the sleeve,
    as an outer glove is worn.
    """
    heading = direction(elbow, wrist) if angle is None else angle
    placed = translation(*wrist) @ rotation(heading) @ scaling(hand_size, -hand_size if flip else hand_size)
    held = Group((small_hand(pose=pose, style=hand),), placed, role="hand")
    bones = limb([(*shoulder, radii[0]), (*elbow, radii[1]), (*wrist, radii[2])])
    edge = 0.0 if style == "ink" else OUTLINE
    gap = GAP if style == "ink" and halo is None else (halo or 0.0)
    sleeve = Blob(style, closed(*bones), edge, gap)
    nodes: list[Node] = [sleeve, held] if cuffed else [held, sleeve]
    if style == hand == "ink":
        skin = small_hand(pose=pose, style=hand, halo=0)
        nodes = [held, sleeve, Group((skin,), placed, role="hand")]
    if view != "none":
        joint = ellipse(*shoulder, radii[0] + edge + gap + 0.6)
        patch = Blob(style, closed(_TORSOS[view]), only="fill", role="body")
        nodes.append(Group((patch,), within=closed(joint)))
    return group(*nodes, role="arm")
