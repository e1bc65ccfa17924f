"""One set line, and how it is put together from the shaped items of its paragraph."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from signage.ground.glyphs import FontKey, Glyph, GlyphRun
from signage.text.bidi import in_visual_order
from signage.text.breaks import FORCED_BREAKS, SOFT_HYPHEN
from signage.text.fonts import bundled_fallbacks, face
from signage.text.ink import InkBox, ink_box
from signage.text.itemize import Item
from signage.text.shape import ShapedItem, shape_item

_BLANKS = frozenset(" \t\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2008\u2009\u200a\u205f\u3000")
"""Spaces that hang outside the width at the end of a line (UAX #14: break after, class BA or SP)."""

_HANGING = _BLANKS | FORCED_BREAKS | frozenset("\u200b\u200e\u200f\u061c\u2066\u2067\u2068\u2069")
"""Blanks, and invisible characters that may stand between or behind them."""

_HYPHENS = ("\u2010", "-")
"""What a soft hyphen shows at the end of a line, the first that the font has."""


@dataclass(frozen=True)
class Line:
    """A line ``text[start:end]`` of a paragraph. All lengths in ems.

    ``runs`` stand in visual order from the left. ``width`` is the width of the visible part: blanks at the
    end are set as glyphs outside it, to the right, or in a right-to-left paragraph to the left, where
    ``lead`` is their width: such a line begins ``lead`` left of its visible part.
    ``breaks_word`` is True where the line ends inside a word because nothing else fitted.
    """

    runs: tuple[GlyphRun, ...]
    start: int
    end: int
    width: float
    lead: float
    breaks_word: bool

    @cached_property
    def ink(self) -> InkBox:
        """Bounds of the ink; left and right count from the first glyph's origin."""
        return ink_box(self.runs)

    @property
    def ink_top(self) -> float:
        """Highest ink above the baseline."""
        return self.ink.top

    @property
    def ink_bottom(self) -> float:
        """Lowest ink above the baseline; negative where it lies below."""
        return self.ink.bottom


@dataclass(frozen=True, slots=True)
class _Piece:
    """A run with its embedding level, in logical order."""

    run: GlyphRun
    level: int


def visible_end(text: str, start: int, end: int) -> int:
    """Where the visible part of ``text[start:end]`` ends as a line: blanks at its end hang outside."""
    while end > start and text[end - 1] in _HANGING:
        end -= 1
    return end


def set_line(
    text: str,
    language: str,
    items: Sequence[ShapedItem],
    start: int,
    end: int,
    *,
    is_right_to_left: bool,
    breaks_word: bool = False,
) -> Line:
    """The line ``text[start:end]``: items sliced, shaped again where the slice would differ, put in order."""
    visible = visible_end(text, start, end)
    pieces: list[_Piece] = []
    hanging: list[_Piece] = []
    base_level = 1 if is_right_to_left else 0
    for shaped in items:
        item = shaped.item
        if item.end <= start or item.start >= end:
            continue
        low, high = max(start, item.start), min(visible, item.end)
        if low < high:
            glyphs = slice_glyphs(text, language, shaped, low, high)
            pieces.append(_piece(item, low, high, item.level, glyphs))
        low, high = max(visible, item.start), min(end, item.end)
        if low < high:
            glyphs = slice_glyphs(text, language, shaped, low, high)
            hanging.append(_piece(item, low, high, base_level, glyphs))
    hyphen = _soft_hyphen(text, visible, end, items)
    if hyphen is not None:
        pieces.append(hyphen)
    ordered = [piece.run for piece in in_visual_order(pieces, [piece.level for piece in pieces])]
    width = sum((run.advance for run in ordered), 0.0)
    tail = [piece.run for piece in (reversed(hanging) if is_right_to_left else hanging)]
    lead = sum((run.advance for run in tail), 0.0) if is_right_to_left else 0.0
    runs = [*tail, *ordered] if is_right_to_left else [*ordered, *tail]
    return Line(tuple(run for run in runs if run.glyphs), start, end, width, lead, breaks_word)


def slice_glyphs(text: str, language: str, shaped: ShapedItem, start: int, end: int) -> tuple[Glyph, ...]:
    """Glyphs of a part of an item: a slice where that is safe, else shaped anew."""
    if shaped.is_safe_boundary(start) and shaped.is_safe_boundary(end):
        return shaped.between(start, end)
    item = shaped.item
    return shape_item(text, Item(start, end, item.level, item.script, item.font), language).glyphs


def hyphen_of(font: FontKey) -> tuple[FontKey, Glyph]:
    """The hyphen that a soft hyphen shows in a font; its cluster is 0."""
    for key in (font, *bundled_fallbacks(font.weight)):
        opened = face(key)
        for hyphen in _HYPHENS:
            if ord(hyphen) in opened.coverage:
                glyph = opened.font.get_nominal_glyph(ord(hyphen))
                advance = opened.font.get_glyph_h_advance(glyph) / opened.units_per_em
                return key, Glyph(glyph, advance, 0.0, 0.0, 0)
    raise AssertionError("the Latin font has a hyphen")


def ends_with_soft_hyphen(text: str, visible: int, end: int) -> bool:
    """Whether a line whose visible part ends there shows the hyphen of a soft hyphen.

    At the end of the text or of a forced line a soft hyphen stays invisible.
    """
    is_break = end < len(text) and visible == end
    return is_break and text[visible - 1 : visible] == SOFT_HYPHEN


def _soft_hyphen(text: str, visible: int, end: int, items: Sequence[ShapedItem]) -> _Piece | None:
    if not ends_with_soft_hyphen(text, visible, end):
        return None
    item = next(shaped.item for shaped in items if shaped.item.start < visible <= shaped.item.end)
    font, glyph = hyphen_of(item.font)
    placed = Glyph(glyph.id, glyph.advance, 0.0, 0.0, visible - 1)
    run = GlyphRun(font, visible - 1, visible, item.level % 2 == 1, (placed,))
    return _Piece(run, item.level)


def _piece(item: Item, start: int, end: int, level: int, glyphs: tuple[Glyph, ...]) -> _Piece:
    return _Piece(GlyphRun(item.font, start, end, item.level % 2 == 1, glyphs), level)
