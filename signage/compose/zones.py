"""The patterns that say where one stands; each always beside the name of the zone."""

from __future__ import annotations

from signage.compose.canvas import Canvas
from signage.drawing.marks import Group, PathMark, Structure
from signage.drawing.roles import GroupRole
from signage.drawing.zone_patterns import PATTERN_PATHS
from signage.ground.geometry import rectangle
from signage.model.library import Zone
from signage.model.zone_pattern import Pattern, pattern_of

__all__ = ["Pattern", "draw_pattern", "draw_rail", "pattern_of", "tint_of"]


def tint_of(canvas: Canvas, zone: Zone) -> str:
    """The ground of the panel of a zone: decoration only."""
    pattern = pattern_of(zone)
    if pattern is Pattern.SPECKLE:
        return canvas.style.dirty_tint
    return canvas.style.paper if pattern is Pattern.BRICKS else canvas.style.clean_tint


def draw_pattern(
    canvas: Canvas, pattern: Pattern, x: float, y: float, width: float, height: float, scale: float = 1.0
) -> None:
    """Fill a logical box with a zone pattern in ink, on paper, cut at its edges."""
    box = canvas.box(x, y, width, height)
    marks = [PathMark(rectangle(box), canvas.style.paper)]
    if pattern in PATTERN_PATHS:
        marks.append(PathMark(PATTERN_PATHS[pattern](box, scale), canvas.style.ink))
    canvas.add(
        Group(
            tuple(marks),
            role=GroupRole.PATTERN,
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
    """The patterned rail of a zone with its outline; a blank zone has none, it would look like a gauge."""
    if pattern_of(zone) is Pattern.BLANK:
        return
    draw_pattern(canvas, pattern_of(zone), x, y, width, height, scale)
    with canvas.artefact():
        canvas.rect(x, y, width, height, None, canvas.style.ink, line)
