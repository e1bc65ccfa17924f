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
        self._is_safe: dict[int, bool] = {}

    def width(self, start: int, end: int) -> float:
        """Width in ems of ``text[start:end]`` as a line: without blanks at its end, with its hyphen."""
        visible = visible_end(self.text, start, end)
        if visible <= start:
            return 0.0
        if self._safe(start) and self._safe(visible):
            width = self._before[visible] - self._before[start]
        else:
            width = self._exact_width(start, visible)
        if ends_with_soft_hyphen(self.text, visible, end):
            width += hyphen_of(self._item_at(visible - 1).item.font)[1].advance
        return width

    def _safe(self, index: int) -> bool:
        known = self._is_safe.get(index)
        if known is None:
            known = index in {0, len(self.text)} or self._item_at(index - 1).is_safe_boundary(index)
            self._is_safe[index] = known
        return known

    def _item_at(self, index: int) -> ShapedItem:
        return self._items[bisect_right(self._starts, index) - 1]

    def _exact_width(self, start: int, end: int) -> float:
        width = 0.0
        for shaped in self._items:
            low, high = max(start, shaped.item.start), min(end, shaped.item.end)
            if low < high:
                width += sum(
                    glyph.advance for glyph in slice_glyphs(self.text, self._language, shaped, low, high)
                )
        return width
