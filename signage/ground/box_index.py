"""Which of many boxes come near a place, without asking each of them."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence

from signage.ground.geometry import Box

_ROUNDING_MM = 1e-6


class BoxIndex:
    """Boxes by their upper edges: on a page of lines only a few lie on the height of a place."""

    def __init__(self, boxes: Sequence[Box]) -> None:
        rows = sorted((box.y, box.x, box.right, box.bottom, number) for number, box in enumerate(boxes))
        self._rows = rows
        self._tops = [row[0] for row in rows]
        self._tallest = max((row[3] - row[0] for row in rows), default=0.0)

    def near(self, box: Box, reach: float = 0.0) -> list[int]:
        """Numbers of the boxes whose gap to a box is at most ``reach`` in both directions, in their order."""
        left, top, right, bottom = box.x, box.y, box.right, box.bottom
        start = bisect_left(self._tops, top - reach - self._tallest - _ROUNDING_MM)
        end = bisect_right(self._tops, bottom + reach + _ROUNDING_MM)
        return sorted(
            [
                number
                for y, x, other_right, other_bottom, number in self._rows[start:end]
                if other_right - left >= -reach
                and right - x >= -reach
                and other_bottom - top >= -reach
                and bottom - y >= -reach
            ]
        )
