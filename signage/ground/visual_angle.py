"""From the height of a letter to the distance at which it can be read, and back."""

import math

_RADIANS_PER_ARC_MINUTE = math.pi / (180 * 60)


def letter_height_mm(distance_mm: float, arc_minutes: float) -> float:
    """Height that is seen under an angle: ``h = 2 D tan(angle / 2)``."""
    return 2 * distance_mm * math.tan(arc_minutes * _RADIANS_PER_ARC_MINUTE / 2)


def reading_distance_mm(height_mm: float, arc_minutes: float) -> float:
    """Distance at which a height is seen under an angle: the inverse of ``letter_height_mm``."""
    return height_mm / (2 * math.tan(arc_minutes * _RADIANS_PER_ARC_MINUTE / 2))
