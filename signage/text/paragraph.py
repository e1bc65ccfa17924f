"""A paragraph: shaped once, set in lines of any width as often as a layout needs."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import pairwise

from signage.ground import language as languages
from signage.ground.errors import RefusedError
from signage.text.bidi import first_strong_level
from signage.text.breaks import FORCED_BREAKS, grapheme_ends, line_opportunities, without_hyphens
from signage.text.font_set import FontSet
from signage.text.fonts import face
from signage.text.forbidden import find_forbidden
from signage.text.itemize import itemize, uncovered
from signage.text.line import Line, set_line
from signage.text.measure import Measure
from signage.text.shape import ShapedItem, shape_item
from signage.text.wrap import Stretch, balanced_breaks, greedy_breaks, stretch_of

_REMEMBERED_WIDTHS = 64
"""Widths for which a paragraph keeps its lines; a layout asks for the same few again and again."""


@dataclass(frozen=True, slots=True)
class MissingGlyph:
    """A character without a glyph: what it is, the font file that was tried, its index in the text."""

    character: str
    code_point: int
    font: str
    index: int


@dataclass(frozen=True, eq=False)
class Paragraph:
    """A text shaped in one language and weight. Lengths in ems of the type size."""

    text: str
    language: str
    weight: int
    is_right_to_left: bool
    missing: tuple[MissingGlyph, ...]
    items: tuple[ShapedItem, ...]

    @property
    def width(self) -> float:
        """Width of the text in one line, or of its widest line where it forces breaks."""
        return max(
            (self.measure.width(stretch.start, stretch.end) for stretch in self._stretches), default=0.0
        )

    def lines(self, width_em: float, *, balanced: bool = True) -> tuple[Line, ...]:
        """The text in lines that are at most ``width_em`` wide; at least one line.

        Balanced lines are as many as full ones, made as equal as the words allow. A word wider than the
        line is broken between graphemes, and its line says so by ``breaks_word``; a single grapheme
        that is wider still stands alone on its line, beyond the width.
        """
        key = (width_em, balanced)
        if key not in self._set_lines:
            if len(self._set_lines) >= _REMEMBERED_WIDTHS:
                self._set_lines.clear()
            self._set_lines[key] = self._lines(width_em, balanced)
        return self._set_lines[key]

    @cached_property
    def measure(self) -> Measure:
        """Widths of parts of the text, as they would stand on lines of their own."""
        return Measure(self.text, self.language, self.items)

    @cached_property
    def _set_lines(self) -> dict[tuple[float, bool], tuple[Line, ...]]:
        return {}

    @cached_property
    def _stretches(self) -> tuple[Stretch, ...]:
        """Parts between forced breaks, with the places where lines may end."""
        return self._cut(without_hyphens(self.text, line_opportunities(self.text, self.language)))

    @cached_property
    def _hyphen_stretches(self) -> tuple[Stretch, ...]:
        """The same parts; lines may end after hyphens inside words too."""
        return self._cut(line_opportunities(self.text, self.language))

    @cached_property
    def _grapheme_stretches(self) -> tuple[Stretch, ...]:
        """The same parts, with the ends of all graphemes."""
        return self._cut(grapheme_ends(self.text))

    def _cut(self, ends: tuple[int, ...]) -> tuple[Stretch, ...]:
        stretches: list[Stretch] = []
        first = 0
        for i, end in enumerate(ends):
            if self.text[end - 1] in FORCED_BREAKS or end == len(self.text):
                stretches.append(
                    stretch_of(self.measure, ends[first - 1] if first else 0, ends[first : i + 1])
                )
                first = i + 1
        return tuple(stretches)

    def _lines(self, width: float, is_balanced: bool) -> tuple[Line, ...]:
        lines: list[Line] = []
        for number, stretch in enumerate(self._stretches):

            def hyphens(number: int = number) -> Stretch:
                return self._hyphen_stretches[number]

            def graphemes(number: int = number) -> Stretch:
                return self._grapheme_stretches[number]

            breaks = greedy_breaks(stretch, width, self.measure, (hyphens, graphemes))
            if is_balanced and len(breaks) > 1:
                breaks = balanced_breaks(stretch, width, self.measure, breaks)
            for start, end in pairwise((stretch.start, *breaks)):
                is_word_end = end in stretch.ends or end in self._hyphen_stretches[number].ends
                lines.append(self._line(start, end, breaks_word=not is_word_end))
        return tuple(lines) or (Line((), 0, 0, 0.0, 0.0, breaks_word=False),)

    def _line(self, start: int, end: int, *, breaks_word: bool) -> Line:
        return set_line(
            self.text,
            self.language,
            self.items,
            start,
            end,
            is_right_to_left=self.is_right_to_left,
            breaks_word=breaks_word,
        )


@lru_cache(maxsize=8192)
def shape_paragraph(
    text: str, language: str, weight: int, fonts: FontSet, right_to_left: bool | None = None
) -> Paragraph:
    """Shape a text in the fonts of a library; the same arguments give the same paragraph object.

    ``right_to_left`` None takes the direction of the first strong character (UAX #9 P2 and P3), and that
    of the language where there is none. Raises RefusedError for direction overrides; a character
    without a glyph is no error here but stands in ``missing``.
    """
    forbidden = find_forbidden(text)
    if forbidden:
        raise RefusedError(f"In the text '{_visible(text)}' {forbidden[0].message}")
    if right_to_left is None:
        level = first_strong_level(text)
        right_to_left = languages.is_right_to_left(language) if level is None else level == 1
    items = itemize(text, language, weight, 1 if right_to_left else 0, fonts)
    shaped = tuple(shape_item(text, item, language) for item in items)
    return Paragraph(text, language, weight, right_to_left, _missing(text, shaped), shaped)


def _missing(text: str, items: tuple[ShapedItem, ...]) -> tuple[MissingGlyph, ...]:
    """Characters of all clusters in which a glyph 0 stands after shaping."""
    missing: list[MissingGlyph] = []
    for shaped in items:
        if all(glyph.id for glyph in shaped.glyphs):
            continue
        ends = dict(zip(shaped.clusters, (*shaped.clusters[1:], shaped.item.end), strict=True))
        for start in sorted({glyph.cluster for glyph in shaped.glyphs if not glyph.id}):
            cluster = text[start : ends[start]]
            without = uncovered(cluster, face(shaped.item.font)) or list(cluster)
            missing += [
                MissingGlyph(
                    character, ord(character), shaped.item.font.file, start + cluster.index(character)
                )
                for character in without
            ]
    return tuple(missing)


def _visible(text: str) -> str:
    return text.translate({code: f"<U+{code:04X}>" for code in range(0x202A, 0x202F)})
