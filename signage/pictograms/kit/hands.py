"""Large hands, for pictures of hands alone. The wrist stands at (0, 0).

Styles say what the hand wears: ``ink`` bare skin, ``tone`` an inner glove, ``paper`` an outer glove
(with a cuff line), ``accent`` the glove that the step is about.
"""

from __future__ import annotations

from signage.ground.geometry import Affine, rotation, scaling, translation
from signage.pictograms.kit.nodes import (
    DETAIL,
    GAP,
    Blob,
    Member,
    Node,
    Patch,
    Pigment,
    Stroke,
    Style,
    closed,
    group,
    stroked,
)
from signage.pictograms.kit.paths import (
    Point,
    arc,
    limb,
    line,
    rounded_polygon,
    rounded_rectangle,
    spline,
)
from signage.pictograms.kit.registry import part

FINGER = 5.5
BARE_FINGER = 6.7
"""Widths of a gloved finger, which has an outline, and of a bare one, which has none."""

_ROOTS: tuple[Point, ...] = ((-10.8, -18), (-3.7, -19), (3.7, -19), (10.6, -18))
_TIPS: tuple[Point, ...] = ((-15.5, -37), (-5.6, -45), (4.6, -46.5), (14.2, -41.5))
_THUMB: tuple[Point, ...] = ((5, -5), (14, -10.5), (20.5, -17.5), (24.5, -24.5))
_KNUCKLES: tuple[Point, ...] = ((-11.6, -23.6), (-4.0, -25.8), (3.8, -26.2), (11.8, -24.4))


def finger_width(style: Style) -> float:
    """How wide a finger is under its outline."""
    return BARE_FINGER if style == "ink" else FINGER


def _forearm(length: float, radius: float) -> tuple[Member, ...]:
    return closed(*limb([(0, length, radius), (0, 0, radius - 0.8)])) if length else ()


def cuff(width: float, top: float, height: float, style: Style) -> Node:
    """The rolled edge of an outer glove across a forearm that runs along y."""
    band = Blob(style, closed(rounded_rectangle(-width / 2, top, width, height, 2.2)))
    seam = Stroke(line((-width / 2 + 2, top + height - 3.6), (width / 2 - 2, top + height - 3.6)), 2.0)
    return group(band, seam)


@part("hand-open")
def hand_open(
    style: Style = "ink",
    arm: float = 16.0,
    arm_style: Style | None = None,
    arm_radius: float = 9.4,
    spread: float = 1.0,
    finger: float | None = None,
    back: bool = False,
    cuffed: bool = False,
    cuff_at: float = 3.0,
    halo: float | None = None,
) -> Node:
    """An open hand, fingers towards -y, thumb right; ``back`` shows the knuckles, ``cuffed`` a glove edge."""
    width = finger if finger is not None else finger_width(style)
    palm = rounded_polygon(
        [(-8.8, 4), (8.8, 4), (13.4, -10), (13.6, -22), (-13.6, -22), (-13.4, -9)], [1, 1, 9, 4, 4, 9]
    )
    members = (
        *closed(palm),
        *(
            Member(line(root, (tip[0] * spread, tip[1])), width)
            for root, tip in zip(_ROOTS, _TIPS, strict=True)
        ),
        Member(spline(_THUMB), width + 0.8),
    )
    sleeve = _forearm(arm, arm_radius)
    nodes: list[Node] = []
    if arm_style is None:
        members = (*members, *sleeve)
        nodes.append(Blob(style, members, halo=halo))
    else:
        nodes += [Blob(style, members, halo=halo), Blob(arm_style, _sleeve_end(arm, arm_radius))]
    if back:
        line_pigment: Pigment = "ground" if style == "ink" else "ink"
        nodes += [Stroke(arc(x, y + 2.6, 2.8, 200, 340), 1.9, line_pigment) for x, y in _KNUCKLES]
    if cuffed:
        nodes.append(cuff(2 * arm_radius + 4.4, cuff_at, 10.0, style))
    return group(*nodes)


def _sleeve_end(length: float, radius: float) -> tuple[Member, ...]:
    half = radius + 1.6
    return closed(
        rounded_polygon(
            [(-half, 1), (half, 1), (half + 0.6, length), (-half - 0.6, length)], [2.6, 2.6, 0.5, 0.5]
        )
    )


@part("hand-pinch")
def hand_pinch(
    style: Style = "tone",
    arm: float = 14.0,
    arm_style: Style | None = None,
    arm_radius: float = 8.0,
    gap: float = 0.0,
    cuffed: bool = False,
    halo: float | None = None,
) -> Node:
    """A hand that pinches at (36.5, 1.5): index above, thumb below, three fingers fanned behind.

    Points towards +x. Lay the tips on the thing, and keep the hole between the fingers open.
    """
    width = 6.4 if style == "ink" else 4.9
    members = (
        *closed(*limb([(0, 0, 7.6), (12, -1, 10.6)])),
        *stroked(width, spline([(14, -7), (24, -11), (32, -7), (36.5, -0.6 - gap)])),
        *stroked(width + 0.6, spline([(8, 6), (18, 11), (28, 9), (36.5, 3.4 + gap)])),
        *stroked(width, spline([(12, -8), (18.5, -18.6), (27, -22.4), (35, -19.8)])),
        *stroked(width, spline([(6, -6), (9, -20), (16, -28.6), (25, -31)])),
        *stroked(width, spline([(0, -4), (-1, -17), (2, -27), (9, -34)])),
    )
    if arm_style is None:
        return Blob(style, (*members, *closed(*limb([(-arm, 0, arm_radius), (0, 0, arm_radius)]))), halo=halo)
    return _on_sleeve(Blob(style, members, halo=halo), style, arm_style, arm, arm_radius, cuffed)


def _on_sleeve(hand: Node, style: Style, sleeve: Style, length: float, radius: float, cuffed: bool) -> Node:
    """A hand towards +x with a sleeve: the sleeve ends over the hand, or under the flared glove cuff."""
    half = radius + 2
    end = rounded_polygon(
        [(-length, -half), (-1, -half - 0.4), (-1, half + 0.4), (-length, half)], [0.5, 2.4, 2.4, 0.5]
    )
    arm = Blob(sleeve, closed(end))
    if not cuffed:
        return group(hand, arm)
    flare = rounded_polygon([(-14, -half - 2.4), (2, -7), (2, 7), (-14, half + 2.4)], [2.4, 3, 3, 2.4])
    edge = Stroke(line((-10.2, -half - 0.2), (-10.2, half + 0.2)), 2.2)
    return group(arm, Blob(style, closed(flare)), hand, Blob(style, closed(flare), only="fill"), edge)


@part("hand-grip")
def hand_grip(
    style: Style = "ink",
    arm: float = 30.0,
    arm_style: Style | None = None,
    arm_radius: float = 8.0,
    cuffed: bool = False,
    halo: float | None = None,
) -> Node:
    """The back of a hand that grips an edge, pointing towards +x, finger tips at x 36, thumb at +y."""
    width = 5.0
    tips = ((-10.8, 32), (-3.6, 36), (3.6, 35.4), (10.6, 31))
    fingers = [line((15, y), (x, y)) for y, x in tips]
    members = (
        *closed(
            rounded_polygon(
                [(-2, -8.6), (11, -13), (20, -13.3), (20, 13.1), (8, 12), (-2, 8.6)], [3, 6, 3, 3, 6, 3]
            )
        ),
        *stroked(width, *fingers),
        *stroked(width + 0.6, spline([(4, 7), (11, 15), (19, 19), (26, 18)])),
    )
    wrist = closed(*limb([(-arm, 0, arm_radius), (2, 0, arm_radius)])) if arm else ()
    if style == "ink":
        creases = [Stroke(line((19, y), (32, y)), 1.8, "ground", has_butt_caps=True) for y in (-7.2, 0, 7.1)]
        return group(Blob("ink", (*members, *wrist), halo=halo), *creases)
    if arm_style is None:
        return Blob(style, (*members, *wrist), halo=halo)
    return _on_sleeve(Blob(style, members, halo=halo), style, arm_style, arm, arm_radius, cuffed)


@part("hand-flat")
def hand_flat(
    style: Style = "tone",
    arm: float = 16.0,
    arm_style: Style | None = None,
    arm_radius: float = 7.5,
    length: float = 36.0,
    thumb: bool = True,
    halo: float | None = None,
) -> Node:
    """A straight hand seen on its edge, pointing towards +x, palm towards +y, thumb above."""
    members: tuple[Member, ...] = closed(
        *limb([(0, 0, arm_radius), (14, 0, 7), (26, -0.5, 5), (length, -1.5, 3.4)])
    )
    if thumb:
        members = (*members, Member(spline([(6, -3), (13, -10), (21, -12.5)]), 6.2))
    if arm_style is None:
        return Blob(style, (*members, *closed(*limb([(-arm, 0, arm_radius), (0, 0, arm_radius)]))), halo=halo)
    sleeve = closed(*limb([(-arm, 0, arm_radius + 1.6), (-2, 0, arm_radius + 1.6)]))
    return group(Blob(style, members, halo=halo), Blob(arm_style, sleeve))


@part("hand-cupped")
def hand_cupped(style: Style = "ink", thumb: bool = True, halo: float | None = None) -> Node:
    """A hollow palm that holds something up, from the left edge; on the canvas, bottom at y 88."""
    contour = spline(
        [
            (-6, 70),
            (10, 69.6),
            (24, 70.4),
            (36, 72.6),
            (52, 72),
            (66, 65.4),
            (75, 57.4),
            (80.6, 57.6),
            (82, 63),
            (75.5, 72),
            (64, 80.6),
            (50, 85.6),
            (30, 87),
            (10, 88),
            (-6, 89),
        ],
        closed=True,
    )
    members = closed(contour)
    if thumb:
        members = (*members, Member(spline([(18, 78), (26, 70), (33, 62), (42, 58)]), 8.4))
    return Blob(style, members, halo=halo)


@part("hand-fist")
def hand_fist(
    style: Style = "ink",
    arm: float = 16.0,
    arm_style: Style | None = None,
    arm_radius: float = 8.5,
    halo: float | None = None,
) -> Node:
    """A fist pointing towards +x whose fingers close round something that runs along y at x 17."""
    width = 6.4 if style == "ink" else 5.0
    gap = 1.8 if style == "ink" else 0.0
    wrist = closed(*limb([(-arm, 0, arm_radius), (2, 0, arm_radius)])) if arm else ()
    nodes: list[Node] = []
    if arm_style is not None:
        nodes.append(Blob(arm_style, wrist))
        wrist = ()
    nodes.append(Blob(style, (*closed(rounded_rectangle(-2, -13, 20, 26, 8)), *wrist), halo=halo))
    for y, length in ((-10.4, 20.4), (-3.5, 21), (3.4, 20), (10.2, 18.4)):
        nodes.append(Blob(style, stroked(width, line((9.5, y), (length, y))), halo=gap))
    nodes.append(Blob(style, closed(rounded_rectangle(-1, -9, 12, 18, 6)), only="fill"))
    nodes.append(Blob(style, stroked(width + 0.3, spline([(2, -10), (8, -16), (17, -17)])), halo=gap))
    return group(*nodes)


@part("hands-rubbing")
def hands_rubbing(
    style: Style = "ink", size: float = 1.0, cuffed: bool = False, sleeve: Style | None = None
) -> Node:
    """Two hands palm to palm, crossing; about 70 wide with ``size`` 1, middle at (48, 66)."""
    x, y = 48.0, 72.0
    far = hand_open(style=style, arm=70, arm_style=sleeve, cuffed=cuffed, cuff_at=11.0)
    near = hand_open(style=style, arm=60, arm_style=sleeve, cuffed=cuffed, halo=GAP)
    web = Patch(rounded_polygon([(4, -4), (24, -20), (18, -35), (8, -20)], 2), "ground", role="halo")
    near = group(web, near)
    return group(
        group(far, transform=_placed(x - 11 * size, y - 8 * size, 58, size, size)),
        group(near, transform=_placed(x + 15 * size, y, -26, -1.02 * size, 1.02 * size)),
    )


def _placed(x: float, y: float, degrees: float, scale_x: float, scale_y: float) -> Affine:
    return translation(x, y) @ rotation(degrees) @ scaling(scale_x, scale_y)


@part("hand-point")
def hand_point(
    style: Style = "ink",
    arm: float = 30.0,
    arm_style: Style | None = None,
    arm_radius: float = 8.0,
    halo: float | None = None,
) -> Node:
    """A hand that points towards +x with its index finger, tip at (40, -3); the other fingers are closed."""
    width = 6.6 if style == "ink" else 5.2
    fist = rounded_polygon(
        [(-2, -8.4), (14, -8.8), (21, -5), (22, 6), (17, 12), (6, 11.4), (-2, 8.4)], [3, 5, 4, 6, 5, 5, 3]
    )
    members = (*closed(fist), *stroked(width, line((12, -5), (24, -4.6), (41, -3.4))))
    wrist = closed(*limb([(-arm, 0, arm_radius), (2, 0, arm_radius)])) if arm else ()
    pigment: Pigment = "ground" if style == "ink" else "ink"
    folds = [
        Stroke(line((12, 0.6), (20.4, 0.2)), 1.9, pigment),
        Stroke(line((11.4, 6.2), (18.6, 6)), 1.9, pigment),
    ]
    if arm_style is None:
        return group(Blob(style, (*members, *wrist), halo=halo), *folds)
    return group(Blob(style, members, halo=halo), *folds, Blob(arm_style, wrist))


@part("glove-worn")
def glove_worn(style: Style = "accent", cuff_length: float = 27.0, line_at: float | None = 21.6) -> Node:
    """A glove on a hand, fingers towards -y, thumb right, with a flared cuff and its edge line."""
    palm = rounded_polygon(
        [
            (-15, cuff_length),
            (15, cuff_length),
            (11, 4),
            (13.4, -11),
            (13.6, -22),
            (-13.6, -22),
            (-13.4, -10),
            (-11, 4),
        ],
        [3, 3, 6, 6, 4, 4, 7, 6],
    )
    tips = ((-13, -37), (-4.6, -44), (4, -45), (12.4, -40))
    fingers = [line(root, tip) for root, tip in zip(_ROOTS, tips, strict=True)]
    members = (*closed(palm), *stroked(5.6, *fingers), *stroked(6, spline(_THUMB)))
    nodes: list[Node] = [Blob(style, members)]
    if line_at is not None:
        nodes.append(Stroke(line((-11.6, line_at), (11.6, line_at)), DETAIL))
    return group(*nodes)
