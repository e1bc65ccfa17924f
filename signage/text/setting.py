"""A shaped text cut into lines; each line is put together once, and only when somebody draws it.

Nothing here holds what holds it, so all of it goes with its paragraph, at once.
"""

from __future__ import annotations

from functools import cached_property
from itertools import pairwise

from signage.text.breaks import FORCED_BREAKS, grapheme_ends, line_opportunities, without_hyphens
from signage.text.line import Line, set_line
from signage.text.measure import Measure
from signage.text.shape import ShapedItem
from signage.text.wrap import Stretch, stretch_of


class CutText:
    """A shaped text with the places where its lines may end, and the lines that have been set of it."""

    def __init__(
        self, text: str, language: str, is_right_to_left: bool, items: tuple[ShapedItem, ...]
    ) -> None:
        self.is_right_to_left = is_right_to_left
        self.measure = Measure(text, language, items)
        self._text, self._language, self._items = text, language, items
        self._opportunities = line_opportunities(text, language)
        self._lines: dict[tuple[int, int], Line] = {}

    @cached_property
    def stretches(self) -> tuple[Stretch, ...]:
        """Parts between forced breaks, with the places where lines may end."""
        return self._cut(without_hyphens(self._text, self._opportunities))

    def hyphen_stretch(self, number: int) -> Stretch:
        """The same part; lines may end after hyphens inside words too."""
        return self._hyphen_stretches[number]

    def grapheme_stretch(self, number: int) -> Stretch:
        """The same part, with the ends of all graphemes."""
        return self._grapheme_stretches[number]

    @cached_property
    def _hyphen_stretches(self) -> tuple[Stretch, ...]:
        return self._cut(self._opportunities)

    @cached_property
    def _grapheme_stretches(self) -> tuple[Stretch, ...]:
        return self._cut(grapheme_ends(self._text))

    def _cut(self, ends: tuple[int, ...]) -> tuple[Stretch, ...]:
        stretches: list[Stretch] = []
        first = 0
        for i, end in enumerate(ends):
            if self._text[end - 1] in FORCED_BREAKS or end == len(self._text):
                start = ends[first - 1] if first else 0
                stretches.append(stretch_of(self.measure, start, ends[first : i + 1]))
                first = i + 1
        return tuple(stretches)

    def is_word_end(self, end: int) -> bool:
        """Whether a line that ends there breaks no word."""
        return end in self._word_ends

    @cached_property
    def _word_ends(self) -> frozenset[int]:
        return frozenset(self._opportunities)

    def line(self, start: int, end: int) -> Line:
        """The line ``text[start:end]``, set once."""
        known = self._lines.get((start, end))
        if known is None:
            known = self._lines[start, end] = set_line(
                self._text,
                self._language,
                self._items,
                start,
                end,
                is_right_to_left=self.is_right_to_left,
                breaks_word=not self.is_word_end(end),
            )
        return known


class Setting:
    """A text cut into lines, ``count`` of them, at least one. Lengths in ems of the type size."""

    def __init__(self, cut: CutText, ends: tuple[int, ...]) -> None:
        self._cut = cut
        self._parts = tuple(pairwise((0, *ends)))
        self.count = len(ends) or 1

    @property
    def is_right_to_left(self) -> bool:
        """The direction of the text as a whole."""
        return self._cut.is_right_to_left

    @cached_property
    def lines(self) -> tuple[Line, ...]:
        """The lines with their glyphs."""
        lines = tuple(self._cut.line(start, end) for start, end in self._parts)
        return lines or (Line((), 0, 0, 0.0, 0.0, breaks_word=False),)

    @cached_property
    def breaks_word(self) -> bool:
        """Whether a word had to be broken."""
        return not all(self._cut.is_word_end(end) for _, end in self._parts)

    @cached_property
    def widths(self) -> tuple[float, ...]:
        """The widths of the lines."""
        return tuple(self._cut.measure.width(start, end) for start, end in self._parts) or (0.0,)

    @cached_property
    def widest(self) -> float:
        """The width of the longest line."""
        return max(self.widths)

    @cached_property
    def evenness(self) -> float:
        """The shortest line as a share of the longest."""
        return min(self.widths) / self.widest if self.widest else 1.0
