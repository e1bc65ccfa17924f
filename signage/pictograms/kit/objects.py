"""Things that are held or worn and are no protection: jewellery, cup, clipboard, magnifier, bottle."""

from __future__ import annotations

import math
from typing import Literal

from signage.pictograms.kit.nodes import (
    DETAIL,
    GAP,
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
    arc,
    ellipse,
    line,
    parse_path,
    rounded_polygon,
    rounded_rectangle,
)
from signage.pictograms.kit.registry import part


@part("watch")
def watch(style: Style = "accent") -> Node:
    """A wrist watch, middle at (0, 0), 32 high."""
    return group(
        Blob(style, closed(rounded_rectangle(-5.6, -16, 11.2, 32, 3))),
        Blob("paper", closed(ellipse(0, 0, 8.4))),
        Stroke(line((0, -4.6), (0, 0), (3.6, 0)), 2.2),
    )


@part("ring")
def ring(style: Style = "accent") -> Node:
    """A finger ring with a stone, 26 high, the middle of the band at (0, 4)."""
    stone = rounded_polygon([(-4.8, -12), (4.8, -12), (7.4, -7.6), (0, -0.6), (-7.4, -7.6)], 1)
    return group(
        Blob(style, stroked(4.4, ellipse(0, 5, 8)), 2.3),
        Blob(style, closed(stone), 2.3),
    )


@part("glass")
def glass(style: Style = "accent", level: float = 0.7) -> Node:
    """A drinking glass with water, the middle of its foot at (0, 0), 36 high."""
    inside = rounded_polygon([(-13, -36), (13, -36), (10, 0), (-10, 0)], [1, 1, 3, 3])
    top = -36 * level
    half = 10.6 + 3 * level
    fill = rounded_polygon([(-half, top), (half, top), (10.6, 0.6), (-10.6, 0.6)], [0.5, 0.5, 3, 3])
    return group(Blob("paper", closed(inside)), Patch(fill, "accent" if style == "accent" else "tone"))


@part("clipboard")
def clipboard(style: Style = "accent", rows: int = 3) -> Node:
    """A clipboard with ticked rows, middle at (0, 0), 30 wide and 38 high; fewer rows where it is small."""
    nodes: list[Node] = [
        Blob(style, closed(rounded_rectangle(-15, -17, 30, 36, 3))),
        Patch(rounded_rectangle(-10.4, -9.6, 20.8, 24.2, 1.6), "paper"),
        Blob("ink", closed(rounded_rectangle(-6.4, -20.4, 12.8, 7, 2)), halo=0),
    ]
    pitch = 22.0 / rows
    for row in range(rows):
        y = -10.6 + pitch * (row + 0.86)
        nodes.append(Stroke(line((0.4, y), (6.6, y)), 2.2))
        nodes.append(Stroke(line((-7.2, y - 0.2), (-5.4, y + 2), (-2.8, y - 2.4)), 2.2))
    return group(*nodes)


@part("card")
def card(style: Style = "paper", width: float = 34.0, height: float = 24.0) -> Node:
    """A card with a head and two lines, middle at (0, 0)."""
    left, top = -width / 2, -height / 2
    return group(
        Blob(style, closed(rounded_rectangle(left, top, width, height, 3))),
        Patch(ellipse(left + 9, top + 8.6, 3.4)),
        Patch(
            parse_path(
                f"M {left + 3.4} {top + 19.4} C {left + 3.4} {top + 14} {left + 6} {top + 13} "
                f"{left + 9} {top + 13} C {left + 12} {top + 13} {left + 14.6} {top + 14} "
                f"{left + 14.6} {top + 19.4} Z"
            )
        ),
        Stroke(line((left + 19, top + 8.6), (left + width - 5, top + 8.6)), 2.2),
        Stroke(line((left + 19, top + 15.6), (left + width - 8, top + 15.6)), 2.2),
    )


@part("magnifier")
def magnifier(
    x: float = 58.0, y: float = 54.0, radius: float = 17.0, angle: float = 48.0, style: Style = "ink"
) -> Node:
    """The rim and handle of a magnifying glass."""
    cos, sin = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    handle = line(
        (x + cos * (radius + 4), y + sin * (radius + 4)), (x + cos * (radius + 18), y + sin * (radius + 18))
    )
    members = (*stroked(7.4, handle), *stroked(4.6, ellipse(x, y, radius)))
    return Blob(style, members, halo=GAP, role="lens")


@part("pump-bottle")
def pump_bottle(style: Style = "tone") -> Node:
    """A bottle with a pump, the middle of its foot at (0, 0), 44 high, nozzle to the left."""
    body = rounded_polygon(
        [(-11, 0), (11, 0), (11, -22), (6, -28), (-6, -28), (-11, -22)], [4, 4, 5, 2, 2, 5]
    )
    pump = parse_path("M 0 -30 L 0 -39 L -13 -39 L -13 -35")
    return group(
        Stroke(pump, 4.4),
        Blob("ink", closed(rounded_rectangle(-5, -33, 10, 6, 1.6)), halo=0),
        Blob(style, closed(body)),
    )


@part("bottle")
def bottle(style: Style = "accent") -> Node:
    """A plain bottle with a screw cap, the middle of its foot at (0, 0), 40 high."""
    body = rounded_polygon(
        [(-9, 0), (9, 0), (9, -24), (4, -30), (4, -34), (-4, -34), (-4, -30), (-9, -24)],
        [3, 3, 4, 2, 1, 1, 2, 4],
    )
    cap = Blob("ink", closed(rounded_rectangle(-5.6, -40, 11.2, 6.6, 2)), halo=0)
    return group(Blob(style, closed(body)), cap)


@part("shoe")
def shoe(style: Style = "ink", halo: float = 0.0, laces: Literal[0, 1, 2] = 2) -> Node:
    """The wearer's own shoe from the side, heel at (0, 0) on the floor, 60 long, toe to the right.

    ``halo`` parts it from a second shoe behind it. Where it is small, fewer ``laces`` print.
    """
    upper = rounded_polygon(
        [(2, -52), (24, -52), (24, -24), (34, -17), (52, -14), (59, -8), (59, -9.4), (59, -0.4), (2, -0.4)],
        [3, 3, 8, 8, 6, 6, 1, 2, 2],
    )
    sole = rounded_polygon(
        [(0, 2.2), (61, 2.2), (61, 8.6), (27, 8.6), (25, 6.8), (21, 6.8), (19, 8.6), (0, 8.6)],
        [2, 3, 2, 1, 1, 1, 1, 2],
    )
    cut: list[Node] = [Stroke(line((2.4, -43.6), (23.6, -43.6)), DETAIL, "ground")]
    cut += [Stroke(line((14, y), (25.4, y - 1.4)), DETAIL, "ground") for y in (-35, -28)[:laces]]
    behind: list[Node] = [Blob("ground", closed(upper, sole), halo=halo)] if halo else []
    return group(*behind, Blob(style, closed(upper), halo=0), Blob(style, closed(sole), halo=0), *cut)


@part("cup")
def cup(style: Style = "paper") -> Node:
    """A cup with a handle, middle of its foot at (0, 0), 30 high."""
    body = rounded_polygon([(-13, -30), (13, -30), (11, 0), (-11, 0)], [2, 2, 5, 5])
    handle = Stroke(arc(13, -16, 8, -80, 80), 4.4)
    return group(handle, Blob(style, closed(body), SMALL_OUTLINE))
