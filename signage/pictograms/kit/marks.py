"""Signs that carry meaning of their own: arrows, prohibition, tick and cross, germ, drop, clock."""

from __future__ import annotations

import math
from typing import Literal

from signage.ground.geometry import Path, polygon
from signage.pictograms.kit.landmarks import PlacePoint
from signage.pictograms.kit.nodes import (
    DETAIL,
    SMALL_OUTLINE,
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
    arc,
    ellipse,
    line,
    parse_path,
    rounded_polygon,
    spline,
)
from signage.pictograms.kit.registry import part

SHAFT = 4.6
HEAD = 11.0
"""Width of the shaft of an arrow and length of its head."""

Centre = PlacePoint


def _head(tip: Point, before: Point, length: float) -> Path:
    angle = math.atan2(tip[1] - before[1], tip[0] - before[0])
    x, y = math.cos(angle), math.sin(angle)
    point = (tip[0] + x * length * 0.45, tip[1] + y * length * 0.45)
    base = (tip[0] - x * length * 0.42, tip[1] - y * length * 0.42)
    half = length * 0.58
    return rounded_polygon(
        [point, (base[0] - y * half, base[1] + x * half), (base[0] + y * half, base[1] - x * half)], 1.6
    )


def arrow(
    path: Path,
    *,
    width: float = SHAFT,
    head: float = HEAD,
    is_double: bool = False,
    style: Style = "mark",
    halo: float | None = None,
) -> Blob:
    """A flat arrow along an open path; its head stands at the end of the path, or at both ends."""
    numbers = [float(value) for segment in path for value in segment[1:]]
    points = list(zip(numbers[0::2], numbers[1::2], strict=True))
    heads = [_head(points[-1], points[-2], head)]
    if is_double:
        heads.append(_head(points[0], points[1], head))
    return Blob(style, (*stroked(width, path), *closed(*heads)), halo=halo, role="arrow")


@part("prohibition")
def prohibition(centre: Centre = (48, 48), radius: float = 39.5, width: float = 6.5) -> Node:
    """A ring with a bar from the upper left to the lower right, which stays so when mirrored."""
    x, y = centre
    reach = radius * math.cos(math.pi / 4)
    bar = line((x - reach, y - reach), (x + reach, y + reach))
    sign = Blob("bad", stroked(width, ellipse(x, y, radius), bar), role="prohibition")
    return Group((sign,), upright=x)


@part("tick")
def tick(centre: Centre = (78, 78), radius: float = 10.5) -> Node:
    """A disc with a tick cut out."""
    x, y = centre
    hook = line(
        (x - radius * 0.48, y + radius * 0.04),
        (x - radius * 0.12, y + radius * 0.42),
        (x + radius * 0.5, y - radius * 0.38),
    )
    disc = Blob("good", closed(ellipse(x, y, radius)), role="tick")
    return Group((disc, Stroke(hook, radius * 0.3, "paper", role="tick")), upright=x)


@part("cross")
def cross(centre: Centre = (78, 18), radius: float = 10.5) -> Node:
    """An octagon with a cross cut out."""
    x, y = centre
    corners = [
        (
            x + radius * 1.08 * math.cos(math.radians(22.5 + 45 * index)),
            y + radius * 1.08 * math.sin(math.radians(22.5 + 45 * index)),
        )
        for index in range(8)
    ]
    arm = radius * 0.4
    bars = (line((x - arm, y - arm), (x + arm, y + arm)), line((x + arm, y - arm), (x - arm, y + arm)))
    sign = Blob("bad", closed(rounded_polygon(corners, 1.2)), role="cross")
    return group(sign, *(Stroke(bar, radius * 0.3, "paper", role="cross") for bar in bars))


@part("sparkle")
def sparkle(centre: Centre = (78, 20), radius: float = 8.0, style: Style = "ink") -> Node:
    """A star of four points: clean."""
    x, y = centre
    points: list[Point] = []
    for index in range(4):
        outer, inner = math.radians(90 * index - 90), math.radians(90 * index - 45)
        points += [
            (x + radius * math.cos(outer), y + radius * math.sin(outer)),
            (x + radius * 0.27 * math.cos(inner), y + radius * 0.27 * math.sin(inner)),
        ]
    return Blob(style, closed(rounded_polygon(points, [0.9, 1.6] * 4)), role="sparkle")


@part("germ")
def germ(centre: Centre = (80, 80), radius: float = 4.4, knobs: int = 7, style: Style = "ink") -> Node:
    """A germ with knobs, and one light spot."""
    x, y = centre
    spikes = []
    balls = []
    for index in range(knobs):
        angle = 2 * math.pi * index / knobs - 0.5
        distance = radius * 1.78
        end = (x + distance * math.cos(angle), y + distance * math.sin(angle))
        spikes.append(line(centre, end))
        balls.append(ellipse(*end, max(1.35, radius * 0.36)))
    members = (*closed(ellipse(x, y, radius)), *stroked(max(1.8, radius * 0.42), *spikes), *closed(*balls))
    spot = Patch(ellipse(x - radius * 0.26, y - radius * 0.24, radius * 0.34), "ground")
    return group(Blob(style, members, role="germ"), spot)


@part("drop")
def drop(
    centre: Centre = (48, 18), radius: float = 6.0, style: Style = "accent", outline: float | None = None
) -> Node:
    """A drop of liquid; ``radius`` is half its width."""
    x, y = centre
    r = radius
    outer = parse_path(
        f"M {x} {y - r * 1.9} C {x + r * 0.5} {y - r} {x + r} {y - r * 0.5} {x + r} {y + r * 0.1} "
        f"C {x + r} {y + r * 0.75} {x + r * 0.5} {y + r * 1.1} {x} {y + r * 1.1} "
        f"C {x - r * 0.5} {y + r * 1.1} {x - r} {y + r * 0.75} {x - r} {y + r * 0.1} "
        f"C {x - r} {y - r * 0.5} {x - r * 0.5} {y - r} {x} {y - r * 1.9} Z"
    )
    return Blob(style, closed(outer), outline=outline, role="drop")


@part("bubble")
def bubble(centre: Centre = (20, 50), radius: float = 4.6, style: Style = "paper") -> Node:
    """A bubble of foam."""
    x, y = centre
    return Blob(style, closed(ellipse(x, y, radius)), outline=SMALL_OUTLINE, role="bubble")


@part("clock")
def clock(
    centre: Centre = (76, 74), radius: float = 13.0, share: float = 0.4, style: Style = "paper"
) -> Node:
    """A clock face with a sector of time; stays upright when mirrored."""
    x, y = centre
    end = -90 + 360 * share
    inner = radius * 0.78
    rim = arc(x, y, inner, -90, end)
    sector: Path = (("M", x, y), ("L", *rim[0][1:]), *rim[1:], ("Z",))
    hand = (x + inner * math.cos(math.radians(end)), y + inner * math.sin(math.radians(end)))
    face = Blob("paper", closed(ellipse(x, y, radius)), role="clock")
    fill: Pigment = "mark" if style == "paper" else "accent"
    return Group(
        (
            face,
            Patch(sector, fill),
            Stroke(line((x, y - inner), (x, y), hand), DETAIL),
        ),
        upright=x,
    )


WARNING_CORNER = math.sqrt(3) / 2 - 0.817
"""Radius of the corners in bases: rounding lowers each corner by as much, from 0.866 to 0.817 of the base."""


@part("warning-triangle")
def warning_triangle(centre: Centre = (48, 48), radius: float = 30.0, style: Style = "paper") -> Node:
    """A triangle with an exclamation mark; ``radius`` runs from the centre to where its sides would meet.

    An equilateral triangle whose visible height is 0.817 of its base, as ISO 3864-1 counts it: the corners
    are rounded by 0.049 of the base, and the border is as wide.
    """
    x, y = centre
    border = radius * math.sqrt(3) * WARNING_CORNER
    inner = radius - 2 * border
    half, foot = inner * math.sqrt(3) / 2, y + inner / 2
    corners = [(x, y - inner), (x + half, foot), (x - half, foot)]
    bar = rounded_polygon(
        [
            (x - radius * 0.11, y - radius * 0.44),
            (x + radius * 0.11, y - radius * 0.44),
            (x + radius * 0.06, y + radius * 0.09),
            (x - radius * 0.06, y + radius * 0.09),
        ],
        radius * 0.06,
    )
    return group(
        Blob(style, closed(polygon(corners)), outline=border, role="warning"),
        Patch(bar),
        Patch(ellipse(x, y + radius * 0.28, radius * 0.11)),
    )


@part("eye")
def eye(centre: Centre = (48, 20), width: float = 22.0, style: Style = "paper") -> Node:
    """An open eye: watching."""
    x, y = centre
    half = width / 2
    almond = parse_path(
        f"M {x - half} {y} Q {x} {y - half * 1.06} {x + half} {y} Q {x} {y + half * 1.06} {x - half} {y} Z"
    )
    return group(
        Blob(style, closed(almond), role="eye"),
        Patch(ellipse(x, y, half * 0.36)),
        Patch(ellipse(x + half * 0.12, y - half * 0.13, half * 0.12), "ground"),
    )


@part("air")
def air(
    centre: Centre = (76, 20),
    length: float = 18.0,
    width: float = 3.0,
    style: Pigment = "ink",
    lines: Literal[1, 2] = 2,
) -> Node:
    """Moving air: one or two lines that end in a hook, blowing to the right from the centre's x."""
    x, y = centre
    upper = (
        line((x, y), (x + length * 0.62, y))
        + parse_path(
            f"M {x + length * 0.62} {y} C {x + length} {y} {x + length} {y - 8.4} {x + length * 0.66} {y - 8}"
        )[1:]
    )
    drawn = [Stroke(upper, width, style)]
    if lines == 2:
        lower = (
            line((x, y + 6.4), (x + length * 0.8, y + 6.4))
            + parse_path(
                f"M {x + length * 0.8} {y + 6.4} C {x + length * 1.16} {y + 6.4} "
                f"{x + length * 1.16} {y + 14.6} {x + length * 0.84} {y + 14.2}"
            )[1:]
        )
        drawn.append(Stroke(lower, width, style))
    return group(*drawn)


@part("vapour")
def vapour(
    centre: Centre = (48, 14), height: float = 19.0, width: float = 3.2, style: Pigment = "mark"
) -> Node:
    """A rising wave: drying."""
    x, y = centre
    half, swing = height / 2, height * 0.18
    points = [
        (x, y + half),
        (x - swing, y + half * 0.36),
        (x + swing, y - half * 0.36),
        (x, y - half),
    ]
    return Stroke(spline(points), width, style, role="vapour")


@part("speckle")
def speckle(
    left: float = 6, top: float = 74, columns: int = 8, rows: int = 2, pitch: float = 6.4, radius: float = 1.6
) -> Node:
    """Dots in staggered rows: the pattern of the dirty side."""
    dots = [
        ellipse(left + column * pitch + (pitch / 2 if row % 2 else 0), top + row * pitch * 0.8, radius)
        for row in range(rows)
        for column in range(columns - row % 2)
    ]
    return Blob("ink", closed(*dots), halo=0, role="speckle")


@part("bars")
def bars(
    left: float = 52,
    top: float = 74,
    count: int = 7,
    height: float = 8,
    pitch: float = 5.6,
    width: float = 2.2,
) -> Node:
    """Upright bars: the pattern of the clean side."""
    drawn = [
        Stroke(line((left + index * pitch, top), (left + index * pitch, top + height)), width, role="bars")
        for index in range(count)
    ]
    return group(*drawn)
