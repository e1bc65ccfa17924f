"""Things of a room: chair, bin, tub, door, sink, tap, mat, dispenser, mirror."""

from __future__ import annotations

from signage.ground.geometry import Path, rotation, translation
from signage.pictograms.kit.nodes import (
    DETAIL,
    OUTLINE,
    SMALL_OUTLINE,
    Blob,
    Group,
    Node,
    Patch,
    Stroke,
    Style,
    closed,
    group,
    stroked,
)
from signage.pictograms.kit.paths import (
    ellipse,
    line,
    parse_path,
    rounded_polygon,
    rounded_rectangle,
)
from signage.pictograms.kit.registry import part


@part("chair-side")
def chair_side(x: float = 14.0, seat: float = 66.0, back: float = 30.0, style: Style = "tone") -> Node:
    """A chair from the side whose sitter faces right; ``seat`` and ``back`` are the y of their tops."""
    pieces = (
        rounded_rectangle(x, back, 5.4, 59 - (back - 30), 2),
        rounded_rectangle(x, seat, 34, 5.4, 2),
        rounded_rectangle(x + 28, seat, 5.4, 89 - seat, 2),
    )
    return Blob(style, closed(*pieces), SMALL_OUTLINE, role="chair")


@part("bin-side")
def bin_side(
    x: float = 44.0,
    floor: float = 90.0,
    width: float = 42.0,
    height: float = 42.0,
    lid_angle: float = -54.0,
    style: Style = "tone",
) -> Node:
    """A waste bin with its lid hinged at the left; an angle of 0 is shut."""
    left, top = x - width / 2, floor - height
    body = rounded_polygon(
        [(left, top), (left + width, top), (left + width - 4, floor), (left + 4, floor)], [2, 2, 4, 4]
    )
    lid = Blob(style, closed(rounded_rectangle(-2, -3, width + 4, 6, 2.6)), role="lid")
    hinged = Group((lid,), translation(left, top - 4.6) @ rotation(lid_angle))
    return group(Blob(style, closed(body), role="bin"), hinged)


@part("tub")
def tub(
    x: float = 48.0, floor: float = 88.0, width: float = 58.0, height: float = 26.0, style: Style = "tone"
) -> Node:
    """A low wide tub with a rim, for things that are used again."""
    left, top = x - width / 2, floor - height
    body = rounded_polygon(
        [(left, top), (left + width, top), (left + width - 5, floor), (left + 5, floor)], [2, 2, 5, 5]
    )
    rim = rounded_rectangle(left - 3, top - 4, width + 6, 6, 2.6)
    return group(Blob(style, closed(body)), Blob(style, closed(rim)))


@part("door")
def door(
    x: float = 56.0, top: float = 6.0, width: float = 34.0, height: float = 84.0, style: Style = "tone"
) -> Node:
    """A closed door with a handle on the side of the person who comes from the left."""
    return group(
        Blob(style, closed(rounded_rectangle(x, top, width, height, 1.8))),
        Stroke(line((x + 5.4, top + height * 0.5), (x + 11, top + height * 0.5)), 3.2),
    )


@part("doorway")
def doorway(
    x: float = 50.0, top: float = 6.0, width: float = 38.0, height: float = 84.0, style: Style = "tone"
) -> Node:
    """An open doorway: a frame with the leaf swung away to the right."""
    leaf = rounded_polygon(
        [
            (x + width, top),
            (x + width - 14, top + 8),
            (x + width - 14, top + height - 2),
            (x + width, top + height),
        ],
        1.6,
    )
    frame = parse_path(f"M {x} {top + height} L {x} {top} L {x + width} {top} L {x + width} {top + height}")
    return group(
        Stroke(frame, 3.2),
        Blob(style, closed(leaf)),
        Stroke(line((x + width - 10.6, top + height * 0.5), (x + width - 10.6, top + height * 0.56)), 2.8),
    )


@part("floor")
def floor(y: float = 90.6, left: float = 5.4, right: float = 90.6, width: float = OUTLINE) -> Node:
    """The line of the floor."""
    return Stroke(line((left, y), (right, y)), width, role="floor")


@part("basin")
def basin(style: Style = "tone", top: float = 70.0) -> Node:
    """A wash basin from the front."""
    bowl = parse_path(
        f"M 8 {top} L 88 {top} C 87 {top + 12} 78 {top + 17} 66 {top + 17} L 30 {top + 17} "
        f"C 18 {top + 17} 9 {top + 12} 8 {top} Z"
    )
    return Blob(style, closed(bowl), role="basin")


@part("tap")
def tap(style: Style = "tone") -> Node:
    """A tap that comes from the right and pours at (0, 24); its handle stands on top."""
    pipe = parse_path("M 26 14 L 12 14 C 2 14 0 18 0 24")
    members = (
        *stroked(7, pipe),
        *stroked(5, line((14, 14), (14, 1))),
        *stroked(4.8, line((6, -0.6), (22, -0.6))),
    )
    return Blob(style, members, 2.4, role="tap")


@part("water")
def water(
    x: float = 48.0, top: float = 28.0, bottom: float = 42.0, style: Style = "accent", jets: int = 3
) -> Node:
    """Jets of water side by side, 5.4 apart."""
    first = x - 5.4 * (jets - 1) / 2
    lines = [line((first + 5.4 * index, top), (first + 5.4 * index, bottom)) for index in range(jets)]
    return Blob(style, stroked(3.2, *lines), 0, 0, role="water")


@part("dispenser")
def dispenser(style: Style = "tone") -> Node:
    """A wall dispenser of hand rub, nozzle at (0, 32)."""
    return group(
        Blob(style, closed(rounded_rectangle(-4.4, 24, 8.8, 8, 1.8))),
        Blob(style, closed(rounded_rectangle(-12, 0, 24, 27, 4))),
        Patch(rounded_rectangle(-6.4, 6, 12.8, 11, 2), "ground"),
    )


@part("mat")
def mat(
    style: Style = "accent",
    top: float = 62.0,
    height: float = 26.0,
    width: float = 84.0,
    border: bool = True,
    soles: bool = False,
) -> Node:
    """A mat on the floor with a line along its edge; ``soles`` shows where the feet stand."""
    left, right, floor = 56 - width / 2, 40 + width / 2, top + height
    sheet = rounded_polygon([(left, top), (right, top), (right + 8, floor), (left - 8, floor)], 3)
    nodes: list[Node] = [Blob(style, closed(sheet))]
    if border:
        inset = 5.6
        lean = 8 * inset / height
        corners = [
            (left + 6 - lean, top + inset),
            (right - 6 + lean, top + inset),
            (right + lean, floor - inset),
            (left - lean, floor - inset),
        ]
        nodes.append(Stroke(rounded_polygon(corners, 2), 2.2))
    if soles:
        nodes += [Patch(path) for path in _soles(top + height / 2, height * 0.6)]
    return group(*nodes)


def _soles(middle: float, length: float) -> list[Path]:
    """Two shoe prints side by side whose toes point away, ``length`` long."""
    half = length / 2
    ball = [(-4.4, 0.24), (-6.4, -0.3), (-4.8, -0.82), (0.8, -1.0), (5.0, -0.76), (6.0, -0.2), (4.4, 0.24)]
    heel = [(-4.2, 0.48), (4.2, 0.48), (4.6, 0.8), (0, 1.0), (-4.6, 0.8)]
    return [
        rounded_polygon([(x + way * dx, middle + dy * half) for dx, dy in points], 2.4)
        for x, way in ((38.6, -1), (57.4, 1))
        for points in (ball, heel)
    ]


@part("mirror")
def mirror(
    x: float = 60.0, top: float = 8.0, width: float = 28.0, height: float = 80.0, style: Style = "tone"
) -> Node:
    """A tall mirror with two glints."""
    return group(
        Blob(style, closed(rounded_rectangle(x, top, width, height, width * 0.3))),
        Stroke(
            line((x + width * 0.3, top + height * 0.3), (x + width * 0.6, top + height * 0.2)),
            DETAIL,
            "paper",
        ),
        Stroke(
            line((x + width * 0.3, top + height * 0.44), (x + width * 0.7, top + height * 0.3)),
            DETAIL,
            "paper",
        ),
    )


@part("toilet")
def toilet(style: Style = "paper") -> Node:
    """A toilet from the side, facing left, 36 wide and 46 high, its foot at (0, 0) in the middle."""
    tank = rounded_rectangle(4, -46, 13, 26, 2.4)
    bowl = parse_path("M -18 -24 L 10 -24 C 10 -16 6 -10 5 -2 L 5 0 L -8 0 C -8 -6 -17 -10 -18 -24 Z")
    return group(
        Blob(style, closed(tank)),
        Blob(style, closed(bowl)),
        Blob(style, closed(rounded_rectangle(-20, -28.4, 27, 5, 2.4))),
    )


@part("towel")
def towel(style: Style = "accent") -> Node:
    """A paper towel that hangs in folds, middle of its top at (0, 0), 26 wide and 34 high."""
    sheet = rounded_polygon(
        [(-13, 0), (13, 0), (14, 30), (7, 34), (1, 30.6), (-6, 34), (-14, 30.6)], [2, 2, 2, 3, 3, 3, 2]
    )
    return group(Blob(style, closed(sheet)), Stroke(line((-4, 6), (-4.6, 24)), 2.2))


@part("wall-clock")
def wall_clock(x: float = 76.0, y: float = 20.0, radius: float = 12.0, style: Style = "paper") -> Node:
    """A plain clock face without a sector."""
    face = Blob(style, closed(ellipse(x, y, radius)))
    hands = (line((x, y - radius * 0.62), (x, y)), line((x, y), (x + radius * 0.5, y + radius * 0.24)))
    return Group((face, *(Stroke(hand, DETAIL) for hand in hands)), upright=x)
