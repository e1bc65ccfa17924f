"""The patterns that say where one stands; each always beside the name of the zone."""

from __future__ import annotations

from enum import StrEnum

from signage.compose.canvas import Canvas
from signage.drawing.marks import Group, PathMark, Structure
from signage.ground.geometry import Box, Path, Segment, circle, rectangle
from signage.model.library import Zone


class Pattern(StrEnum):
    """A rail of the design system."""

    SPECKLE = "speckle"
    BARS = "bars"
    BRICKS = "bricks"
    BLANK = "blank"


def pattern_of(zone: Zone) -> Pattern:
    """Room: bricks. Dirty floor elsewhere: speckle. A floor between: bars. Clean: blank."""
    if zone.zone_class == "contaminated":
        return Pattern.BRICKS
    if zone.floor == "dirty":
        return Pattern.SPECKLE
    return Pattern.BARS if zone.floor == "transition" else Pattern.BLANK


def tint_of(canvas: Canvas, zone: Zone) -> str:
    """The ground of the panel of a zone: decoration only."""
    pattern = pattern_of(zone)
    if pattern is Pattern.SPECKLE:
        return canvas.style.dirty_tint
    return canvas.style.paper if pattern is Pattern.BRICKS else canvas.style.clean_tint


def _speckle(box: Box, scale: float) -> Path:
    pitch, radius = 2.0 * scale, 0.52 * scale
    segments: list[Segment] = []
    row, y = 0, box.y + pitch * 0.5
    while y < box.bottom:
        x = box.x + (pitch * 0.5 if row % 2 == 0 else pitch)
        column = 0
        while x < box.right:
            is_large = (row * 7 + column * 5) % 3 == 0
            segments.extend(circle(x, y, radius * (1.25 if is_large else 0.85)))
            x += pitch
            column += 1
        y += pitch * 0.86
        row += 1
    return tuple(segments)


def _bars(box: Box, scale: float) -> Path:
    pitch = 2.4 * scale
    segments: list[Segment] = []
    y = box.y + pitch * 0.5
    while y < box.bottom:
        segments.extend(rectangle(Box(box.x, y - 0.3 * scale, box.width, 0.6 * scale)))
        y += pitch
    return tuple(segments)


def _bricks(box: Box, scale: float) -> Path:
    height, line = 3.0 * scale, 0.45 * scale
    segments: list[Segment] = []
    row, y = 0, box.y
    while y < box.bottom:
        segments.extend(rectangle(Box(box.x, y, box.width, line)))
        x = box.x + height * (0.6 if row % 2 else 1.4)
        while x < box.right:
            segments.extend(rectangle(Box(x, y, line, height)))
            x += height * 1.6
        y += height
        row += 1
    return tuple(segments)


_DRAWN = {Pattern.SPECKLE: _speckle, Pattern.BARS: _bars, Pattern.BRICKS: _bricks}


def draw_pattern(
    canvas: Canvas, pattern: Pattern, x: float, y: float, width: float, height: float, scale: float = 1.0
) -> None:
    """Fill a logical box with a zone pattern in ink, on paper, cut at its edges."""
    box = canvas.box(x, y, width, height)
    marks = [PathMark(rectangle(box), canvas.style.paper)]
    if pattern in _DRAWN:
        marks.append(PathMark(_DRAWN[pattern](box, scale), canvas.style.ink))
    canvas.add(
        Group(
            tuple(marks),
            role="pattern",
            name=pattern.value,
            structure=Structure.ARTEFACT,
            box=box,
            clip=rectangle(box),
        )
    )


def draw_rail(
    canvas: Canvas,
    zone: Zone,
    x: float,
    y: float,
    width: float,
    height: float,
    scale: float = 1.0,
    line: float = 0.45,
) -> None:
    """The patterned rail of a zone with its outline."""
    draw_pattern(canvas, pattern_of(zone), x, y, width, height, scale)
    with canvas.artefact():
        canvas.rect(x, y, width, height, None, canvas.style.ink, line)
