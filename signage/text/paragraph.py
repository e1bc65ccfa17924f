"""A paragraph: shaped once, set in lines of any width as often as a layout needs."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property, lru_cache, partial
from itertools import chain

from signage.ground import language as languages
from signage.ground.errors import RefusedError
from signage.text.bidi import first_strong_level
from signage.text.font_set import FontSet
from signage.text.fonts import face
from signage.text.forbidden import find_forbidden
from signage.text.itemize import itemize, uncovered
from signage.text.line import Line
from signage.text.measure import Measure
from signage.text.setting import CutText, Setting
from signage.text.shape import LANGUAGES_AT_ONCE, ShapedItem, shape_item
from signage.text.wrap import Wrap

_MOST_PARAGRAPHS = 8192


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

    @cached_property
    def width(self) -> float:
        """Width of the text in one line, or of its widest line where it forces breaks."""
        widths = (self.measure.width(stretch.start, stretch.end) for stretch in self._cut.stretches)
        return max(widths, default=0.0)

    def lines(self, width_em: float, *, balanced: bool = True) -> tuple[Line, ...]:
        """The text in lines that are at most ``width_em`` wide; at least one line.

        Balanced lines are as many as full ones, made as equal as the words allow. A word wider than the
        line is broken between graphemes, and its line says so by ``breaks_word``; a single grapheme
        that is wider still stands alone on its line, beyond the width.
        """
        return self.setting(width_em, balanced=balanced).lines

    def setting(self, width_em: float, *, balanced: bool = True) -> Setting:
        """Where the lines end that ``lines`` gives, and how wide they are; glyphs only when asked for.

        All widths at which the lines end at the same places give the same object.
        """
        wraps = self._wraps
        if len(wraps) == 1:
            ends = wraps[0].balanced(width_em) if balanced else wraps[0].full(width_em)
        else:
            each = (wrap.balanced(width_em) if balanced else wrap.full(width_em) for wrap in wraps)
            ends = tuple(chain.from_iterable(each))
        known = self._settings.get(ends)
        if known is None:
            known = self._settings[ends] = Setting(self._cut, ends)
        return known

    @property
    def measure(self) -> Measure:
        """Widths of parts of the text, as they would stand on lines of their own."""
        return self._cut.measure

    @cached_property
    def _cut(self) -> CutText:
        return CutText(self.text, self.language, self.is_right_to_left, self.items)

    @cached_property
    def _settings(self) -> dict[tuple[int, ...], Setting]:
        return {}

    @cached_property
    def _wraps(self) -> tuple[Wrap, ...]:
        cut = self._cut
        return tuple(
            Wrap(
                stretch,
                cut.measure,
                (partial(cut.hyphen_stretch, number), partial(cut.grapheme_stretch, number)),
            )
            for number, stretch in enumerate(cut.stretches)
        )


def shape_paragraph(
    text: str, language: str, weight: int, fonts: FontSet, right_to_left: bool | None = None
) -> Paragraph:
    """Shape a text in the fonts of a library; the same arguments give the same paragraph object.

    ``right_to_left`` None takes the direction of the first strong character (UAX #9 P2 and P3), and that
    of the language where there is none. Raises RefusedError for direction overrides; a character
    without a glyph is no error here but stands in ``missing``.
    """
    return texts_in(language, fonts).paragraph(text, weight, right_to_left)


class ShapedTexts:
    """The paragraphs of one language in the fonts of a library, each shaped once."""

    def __init__(self, language: str, fonts: FontSet) -> None:
        self._language, self._fonts = language, fonts
        self._paragraphs: dict[tuple[str, int, bool | None], Paragraph] = {}

    def paragraph(self, text: str, weight: int, right_to_left: bool | None = None) -> Paragraph:
        """The paragraph of a text; see ``shape_paragraph``."""
        key = text, weight, right_to_left
        known = self._paragraphs.get(key)
        if known is None:
            if len(self._paragraphs) >= _MOST_PARAGRAPHS:
                self._paragraphs.clear()
            known = self._paragraphs[key] = self._shaped(text, weight, right_to_left)
        return known

    def _shaped(self, text: str, weight: int, right_to_left: bool | None) -> Paragraph:
        language = self._language
        forbidden = find_forbidden(text)
        if forbidden:
            raise RefusedError(f"In the text '{_visible(text)}' {forbidden[0].message}")
        if right_to_left is None:
            level = first_strong_level(text)
            right_to_left = languages.is_right_to_left(language) if level is None else level == 1
        items = itemize(text, language, weight, 1 if right_to_left else 0, self._fonts)
        shaped = tuple(shape_item(text, item, language) for item in items)
        return Paragraph(text, language, weight, right_to_left, _missing(text, shaped), shaped)


@lru_cache(maxsize=LANGUAGES_AT_ONCE)
def texts_in(language: str, fonts: FontSet) -> ShapedTexts:
    """The shaped texts of a language. They are forgotten together when others have been asked for since."""
    return ShapedTexts(language, fonts)


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
