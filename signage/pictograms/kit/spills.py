"""Things of cleaning up: puddle, cone, cloth, bucket."""

from __future__ import annotations

from signage.pictograms.kit.nodes import (
    DETAIL,
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
    arc,
    line,
    rounded_polygon,
    rounded_rectangle,
    spline,
)
from signage.pictograms.kit.registry import part


@part("puddle")
def puddle(style: Style = "tone", width: float = 64.0, height: float = 18.0) -> Node:
    """Spilt liquid on the floor seen from above the side, middle at (0, 0)."""
    x, y = width / 2, height / 2
    contour = spline(
        [
            (-x, 0.1 * y),
            (-0.72 * x, -0.7 * y),
            (-0.3 * x, -0.56 * y),
            (0.1 * x, -y),
            (0.5 * x, -0.6 * y),
            (0.86 * x, -0.62 * y),
            (x, 0.2 * y),
            (0.62 * x, 0.62 * y),
            (0.2 * x, y),
            (-0.34 * x, 0.7 * y),
            (-0.72 * x, 0.9 * y),
        ],
        closed=True,
    )
    return Blob(style, closed(contour), role="puddle")


@part("cone")
def cone(style: Style = "accent") -> Node:
    """A warning cone with a light band, the middle of its foot at (0, 0), 40 high."""
    body = rounded_polygon([(-3.4, -40), (3.4, -40), (11, -4), (-11, -4)], [3, 3, 1, 1])
    band = rounded_polygon([(-6.4, -25), (6.4, -25), (8.2, -16.4), (-8.2, -16.4)], 0.6)
    foot = rounded_rectangle(-15, -5, 30, 5, 2)
    return group(
        Blob(style, closed(body, foot)),
        Group((Patch(band, "paper"),), within=closed(body)),
        Stroke(line((-9.4, -5), (9.4, -5)), DETAIL),
    )


@part("bucket")
def bucket(style: Style = "tone", liquid: Style | None = None, handle: bool = True) -> Node:
    """A bucket with a handle, the middle of its foot at (0, 0), 34 wide and 30 high without the handle."""
    body = rounded_polygon([(-17, -30), (17, -30), (13.4, 0), (-13.4, 0)], [1.4, 1.4, 4, 4])
    nodes: list[Node] = [Blob("ink", stroked(3.2, arc(0, -28, 16, 190, 350)), halo=0)] if handle else []
    nodes.append(Blob(style, closed(body)))
    if liquid is not None:
        fill = rounded_polygon([(-16.2, -22), (16.2, -22), (13.4, 0), (-13.4, 0)], [0.6, 0.6, 4, 4])
        nodes.append(Blob(liquid, closed(fill), only="fill"))
        nodes.append(Stroke(line((-15, -22), (15, -22)), DETAIL))
    return group(*nodes)


@part("cloth-pad")
def cloth_pad(style: Style = "accent", width: float = 34.0) -> Node:
    """A crumpled cloth that is pressed on something below, the middle of its foot at (0, 0), 20 high."""
    x = width / 2
    contour = spline(
        [
            (-x, -3),
            (-0.86 * x, -12),
            (-0.46 * x, -17),
            (-0.1 * x, -15.6),
            (0.34 * x, -19),
            (0.8 * x, -14),
            (x, -4),
            (0.7 * x, 0.4),
            (0, -0.6),
            (-0.7 * x, 0.6),
        ],
        closed=True,
    )
    folds = (
        line((-0.5 * x, -9), (-0.3 * x, -4.6)),
        line((0.46 * x, -10), (0.3 * x, -5)),
    )
    return group(Blob(style, closed(contour)), *(Stroke(fold, 2.2) for fold in folds))


@part("cloth-sheet")
def cloth_sheet(style: Style = "accent", width: float = 60.0, height: float = 20.0) -> Node:
    """A sheet that is laid over something, held at both upper corners, middle of its top at (0, 0)."""
    x = width / 2
    contour = spline(
        [
            (-x, 0),
            (-0.5 * x, 0.3 * height),
            (0, 0.36 * height),
            (0.5 * x, 0.3 * height),
            (x, 0),
            (0.98 * x, 0.6 * height),
            (0.8 * x, height),
            (0.4 * x, 0.86 * height),
            (0, height),
            (-0.4 * x, 0.86 * height),
            (-0.8 * x, height),
            (-0.98 * x, 0.6 * height),
        ],
        closed=True,
    )
    folds = (
        line((-0.42 * x, 0.5 * height), (-0.4 * x, 0.72 * height)),
        line((0.42 * x, 0.5 * height), (0.4 * x, 0.72 * height)),
    )
    return group(Blob(style, closed(contour)), *(Stroke(fold, 2.2) for fold in folds))
