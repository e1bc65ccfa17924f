"""Protective garments, worn on a mannequin or lying by themselves."""

from __future__ import annotations

from signage.pictograms.kit.nodes import (
    DETAIL,
    Blob,
    Group,
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
    ellipse,
    line,
    parse_path,
    rounded_polygon,
    spline,
)
from signage.pictograms.kit.registry import part

RESPIRATOR_SIDE = parse_path(
    "M 58.5 31.5 C 62 32 69 35.6 72.6 40.6 C 74.6 44 72.6 48 68.6 50 C 64.6 52.4 60 54 56.4 53.6 "
    "C 51.4 49 51.6 38 58.5 31.5 Z"
)
RESPIRATOR_FRONT = parse_path(
    "M 43.6 37.6 C 45.6 35.6 50.4 35.6 52.4 37.6 C 56 40.4 59.6 42.6 60 45.4 C 59.6 50.6 54 54.2 48 54.2 "
    "C 42 54.2 36.4 50.6 36 45.4 C 36.4 42.6 40 40.4 43.6 37.6 Z"
)
UPPER_STRAP: tuple[Point, ...] = ((57, 37.4), (47, 28.6), (38, 21), (33, 19))
LOWER_STRAP: tuple[Point, ...] = ((56, 48), (47, 44.4), (38, 43.6), (33.4, 44.4))
"""The upper strap runs above the ear, the lower one below it (common practice)."""


@part("respirator-side")
def respirator_side(style: Style = "paper", upper: bool = True, lower: bool = True) -> Node:
    """A cup respirator on a side bust; its straps show as gaps on the dark head."""
    straps = [
        Stroke(spline(points), 3.0, "ground", has_butt_caps=True)
        for is_shown, points in ((upper, UPPER_STRAP), (lower, LOWER_STRAP))
        if is_shown
    ]
    nose_clip = Stroke(spline([(62, 36.4), (66.6, 39.8), (68.4, 43.6)]), 2.2)
    return group(*straps, Blob(style, closed(RESPIRATOR_SIDE), 2.4), nose_clip)


@part("respirator-front")
def respirator_front(style: Style = "paper", straps: bool = True) -> Node:
    """A cup respirator on a front bust; the nose clip makes it one."""
    nodes: list[Node] = []
    if straps:
        ends = (
            ((39, 41), (33, 35)),
            ((57, 41), (63, 35)),
            ((39, 47), (34.6, 43.6)),
            ((57, 47), (61.4, 43.6)),
        )
        nodes += [Stroke(line(start, end), 3.0, "ground") for start, end in ends]
    nodes += [Blob(style, closed(RESPIRATOR_FRONT), 2.4), Stroke(line((44.6, 40.8), (51.4, 40.8)), 2.2)]
    return group(*nodes)


@part("respirator")
def respirator(style: Style = "accent") -> Node:
    """A cup respirator by itself seen from outside, middle at (0, 0), about 52 wide, with both straps."""
    loops = (
        spline([(20, -16), (38, -31), (42, -14), (25, -5)]),
        spline([(-20, -16), (-38, -31), (-42, -14), (-25, -5)]),
    )
    cup = parse_path(
        "M -9.5 -18 C -5 -22.4 5 -22.4 9.5 -18 C 17.2 -12 25 -7.3 25.8 -1.3 C 25 9.9 12.9 17.6 0 17.6 "
        "C -12.9 17.6 -25 9.9 -25.8 -1.3 C -25 -7.3 -17.2 -12 -9.5 -18 Z"
    )
    return group(
        Blob(style, stroked(3.2, *loops), 2.0),
        Blob(style, closed(cup)),
        Stroke(line((-7, -10.6), (7, -10.6)), DETAIL),
    )


@part("goggles-front")
def goggles_front(style: Style = "paper", strap: bool = True) -> Node:
    """Goggles on a front bust, with glints."""
    frame = rounded_polygon(
        [
            (36.5, 25.5),
            (59.5, 25.5),
            (61, 33),
            (56, 37),
            (51, 36),
            (48, 33.6),
            (45, 36),
            (40, 37),
            (35, 33),
        ],
        [3, 3, 3, 3, 2, 2, 2, 3, 3],
    )
    glint: Pigment = "paper" if style == "accent" else "ink"
    nodes: list[Node] = [Stroke(line((33, 31), (63, 31)), 4, "ground", has_butt_caps=True)] if strap else []
    nodes += [
        Blob(style, closed(frame), 2.2),
        Stroke(line((40.5, 33), (44.5, 28.8)), 2.2, glint),
        Stroke(line((51.5, 33), (55.5, 28.8)), 2.2, glint),
    ]
    return group(*nodes)


@part("goggles-side")
def goggles_side(style: Style = "paper", strap: bool = True) -> Node:
    """Goggles on a side bust."""
    nodes: list[Node] = [Stroke(line((56, 29), (31, 27)), 3.6, "ground")] if strap else []
    frame = rounded_polygon([(53.4, 22.6), (62.6, 23.4), (65.4, 31.6), (55.4, 34)], 3)
    nodes.append(Blob(style, closed(frame), 2.2))
    return group(*nodes)


@part("glove-flat")
def glove_flat(style: Style = "accent") -> Node:
    """A glove that lies limp, cuff at the bottom, the middle of the cuff at (0, 0), about 36 long."""
    palm = rounded_polygon(
        [(-8, 0), (8, 0), (10, -12), (10, -20), (-10, -20), (-10, -12)], [1, 1, 5, 3, 3, 5]
    )
    fingers = (
        line((-7.4, -18), (-10, -31)),
        line((-2.4, -19), (-3.2, -35)),
        line((2.8, -19), (3.6, -35)),
        line((7.6, -18), (10, -31)),
    )
    members = (*closed(palm), *stroked(3.9, *fingers), *stroked(5, spline([(6, -8), (12, -11), (16, -17)])))
    return group(Blob(style, members), Stroke(line((-6.5, -3.9), (6.5, -3.9)), DETAIL))


@part("boot-cover")
def boot_cover(style: Style = "accent", height: float = 24.0, band: bool = True) -> Node:
    """A boot cover from the side that reaches the calf: ankle at (0, 0), leg towards -y, toe towards +x."""
    top = -height
    boot = rounded_polygon(
        [(-6.4, top), (6.4, top), (6.6, -4), (14, -0.6), (20, 2), (20.6, 8.2), (-6.6, 8.2)],
        [1.8, 1.8, 5, 4, 3.4, 3, 3.6],
    )
    nodes: list[Node] = [Blob(style, closed(boot), 2.4)]
    if band:
        nodes.append(Stroke(line((-4.6, top + 5), (4.6, top + 5)), 2.2))
    return group(*nodes)


@part("coverall")
def coverall(style: Style = "accent", zip_line: bool = True) -> Node:
    """A coverall spread out flat, middle at (0, 0), 78 high."""
    outline = rounded_polygon(
        [
            (-8, -38),
            (8, -38),
            (16, -33),
            (30, -6),
            (22, -1),
            (14, -14),
            (14, 8),
            (16, 40),
            (3, 40),
            (0, 14),
            (-3, 40),
            (-16, 40),
            (-14, 8),
            (-14, -14),
            (-22, -1),
            (-30, -6),
            (-16, -33),
        ],
        [3, 3, 6, 3, 3, 3, 4, 2, 2, 2, 2, 2, 4, 3, 3, 3, 6],
    )
    nodes: list[Node] = [Blob(style, closed(outline))]
    if zip_line:
        nodes += [Stroke(line((0, -34), (0, 8))), Stroke(spline([(-8, -38), (0, -32), (8, -38)]))]
    return group(*nodes)


HOOD_WINDOW = rounded_polygon(
    [(35, 23.4), (61, 23.4), (63.4, 38), (60, 55), (36, 55), (32.6, 38)], [8, 8, 9, 9, 9, 9]
)
"""The opening of a hood on a front bust: eyes, nose and mouth show, forehead and cheeks do not."""


@part("hood-front")
def hood_front(style: Style = "accent", worn: Style = "paper") -> Node:
    """A hood on a front bust with goggles and respirator in its window; the cape lies on the shoulders."""
    cape = parse_path(
        "M 48 10 C 64 10 71.6 20.6 71 35 C 70.6 45 70 53 75.4 65 C 66 70 57 71.4 48 71.4 "
        "C 39 71.4 30 70 20.6 65 C 26 53 25.4 45 25 35 C 24.4 20.6 32 10 48 10 Z"
    )
    inside = Group(
        (
            Patch(HOOD_WINDOW),
            goggles_front(style=worn, strap=False),
            respirator_front(style=worn, straps=False),
        ),
        within=closed(HOOD_WINDOW),
    )
    edge = Blob(style, closed(HOOD_WINDOW), only="outline", outline=1.6)
    return group(Blob(style, closed(cape)), edge, inside)


HOOD_SIDE = parse_path(
    "M 60 17 C 56 9 44 7.6 36 11 C 27 15 24.4 24 25 33 C 25.4 42 25 48 20 54 C 16 58.6 13 63 12.6 68 "
    "C 24 73 50 74 66 69 C 66.6 63 64 58 58.6 55.6 C 54 52 52.6 46 52.8 38 C 53 30 56 25.6 60.6 23.6 "
    "C 62 21.4 61.6 19 60 17 Z"
)


@part("hood-side")
def hood_side(style: Style = "accent") -> Node:
    """A hood on a side bust: it leaves the face free from brow to chin and covers cheek, neck and nape."""
    return Blob(style, closed(HOOD_SIDE))


@part("hood-empty")
def hood_empty(style: Style = "accent") -> Node:
    """A hood off the head, middle at (0, 0), 50 wide and high; the inside shows below and in the window."""
    bell = parse_path(
        "M 0 -25 C 13 -25 18.6 -15 18.6 -4 C 18.6 4 20 11 25 19 C 22 26 10 28.4 0 28.4 "
        "C -10 28.4 -22 26 -25 19 C -20 11 -18.6 4 -18.6 -4 C -18.6 -15 -13 -25 0 -25 Z"
    )
    mouth = ellipse(0, 19.6, 21.4, 6.2)
    window = rounded_polygon([(-5, -14), (10.6, -14), (11.6, 5), (-5, 5)], 6)
    return group(
        Blob(style, closed(bell)), Blob("lining", closed(mouth), 2.2), Blob("lining", closed(window), 2.2)
    )
