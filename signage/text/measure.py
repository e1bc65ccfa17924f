"""Widths of parts of a shaped text, as they would stand on lines of their own."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence

from signage.text.line import ends_with_soft_hyphen, hyphen_of, slice_glyphs, visible_end
from signage.text.shape import ShapedItem


class Measure:
    """Cumulative advances of a text; a part costs two look-ups where its ends are safe to cut."""

    def __init__(self, text: str, language: str, items: Sequence[ShapedItem]) -> None:
        self.text = text
        self._language = language
        self._items = items
        self._starts = [shaped.item.start for shaped in items]
        advances = [0.0] * len(text)
        for shaped in items:
            for glyph in shaped.glyphs:
                advances[glyph.cluster] += glyph.advance
        self._before = [0.0]
        for advance in advances:
            self._before.append(self._before[-1] + advance)
        self._widths: dict[tuple[int, int], float] = {}

    def before(self, index: int) -> float:
        """Advances of all characters before an index, in one line."""
        return self._before[index]

    def width(self, start: int, end: int) -> float:
        """Width in ems of ``text[start:end]`` as a line: without blanks at its end, with its hyphen."""
        known = self._widths.get((start, end))
        if known is None:
            known = self._widths[start, end] = self._measured(start, end)
        return known

    def _measured(self, start: int, end: int) -> float:
        visible = visible_end(self.text, start, end)
        if visible <= start:
            return 0.0
        if self._is_safe(start) and self._is_safe(visible):
            width = self._before[visible] - self._before[start]
        else:
            width = self._width_of_slices(start, visible)
        return width + self._hyphen_width(visible, end)

    def limits(self, start: int, ends: Sequence[int]) -> list[float]:
        """For each end, the advances before it as far as they are visible in a line that ends there.

        Exact for lines that are cut where shaping does not change, close for others.
        """
        limits: list[float] = []
        for end in ends:
            visible = visible_end(self.text, start, end)
            limits.append(self._before[visible] + self._hyphen_width(visible, end))
        return limits

    def _hyphen_width(self, visible: int, end: int) -> float:
        if not ends_with_soft_hyphen(self.text, visible, end):
            return 0.0
        return hyphen_of(self._item_at(visible - 1).item.font)[1].advance

    def _is_safe(self, index: int) -> bool:
        return index in {0, len(self.text)} or self._item_at(index - 1).is_safe_boundary(index)

    def _item_at(self, index: int) -> ShapedItem:
        return self._items[bisect_right(self._starts, index) - 1]

    def _width_of_slices(self, start: int, end: int) -> float:
        width = 0.0
        for shaped in self._items:
            low, high = max(start, shaped.item.start), min(end, shaped.item.end)
            if low < high:
                glyphs = slice_glyphs(self.text, self._language, shaped, low, high)
                width += sum(glyph.advance for glyph in glyphs)
        return width
