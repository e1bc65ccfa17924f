"""The patterns of the zones as paths that cover a box; what sticks out of it is for a clip to cut."""

from __future__ import annotations

from collections.abc import Callable

from signage.ground.geometry import Box, Path, Segment, circle, rectangle


def speckle(box: Box, scale: float = 1.0) -> Path:
    """Round dots in two sizes: the dirty side."""
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


def bars(box: Box, scale: float = 1.0) -> Path:
    """Level bars: the clean side."""
    pitch = 2.4 * scale
    segments: list[Segment] = []
    y = box.y + pitch * 0.5
    while y < box.bottom:
        segments.extend(rectangle(Box(box.x, y - 0.3 * scale, box.width, 0.6 * scale)))
        y += pitch
    return tuple(segments)


def bricks(box: Box, scale: float = 1.0) -> Path:
    """Courses of bricks: the room."""
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


PATTERN_PATHS: dict[str, Callable[[Box, float], Path]] = {"speckle": speckle, "bars": bars, "bricks": bricks}
"""The paths by the name of the pattern; a blank one has none. The second argument is a scale."""
