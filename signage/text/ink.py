"""Where the ink of set glyphs lies."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from signage.ground.glyphs import GlyphRun
from signage.text.fonts import face


@dataclass(frozen=True, slots=True)
class InkBox:
    """Bounds of ink in ems: left and right from the first glyph's origin, top and bottom above the baseline.

    ``bottom`` is negative where ink lies below the baseline. All are 0 without ink.
    """

    left: float
    right: float
    top: float
    bottom: float

    @property
    def height(self) -> float:
        """From the lowest to the highest ink."""
        return self.top - self.bottom


def ink_box(runs: Iterable[GlyphRun]) -> InkBox:
    """The ink of runs set one after the other from the left, such as the runs of a line."""
    x = 0.0
    lefts, rights, tops, bottoms = [], [], [], []
    for run in runs:
        opened = face(run.font)
        for glyph in run.glyphs:
            box = opened.glyph_box(glyph.id)
            if box is not None:
                left, right, top, bottom = box
                lefts.append(x + glyph.x_offset + left)
                rights.append(x + glyph.x_offset + right)
                tops.append(glyph.y_offset + top)
                bottoms.append(glyph.y_offset + bottom)
            x += glyph.advance
    if not tops:
        return InkBox(0.0, 0.0, 0.0, 0.0)
    return InkBox(min(lefts), max(rights), max(tops), min(bottoms))
