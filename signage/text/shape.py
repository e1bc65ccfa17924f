"""Items to glyphs by HarfBuzz."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Any

import uharfbuzz

from signage.ground.glyphs import FontKey, Glyph
from signage.text.fonts import face
from signage.text.itemize import Item

_UNSAFE_TO_BREAK = int(uharfbuzz.GlyphFlags.UNSAFE_TO_BREAK)

_JOINING_SCRIPTS = frozenset({"Arab", "Syrc", "Mong", "Nkoo", "Rohg", "Adlm", "Mand", "Phag"})
_CONTEXT_OF_JOINING = 5
"""Characters of context for letters that join: marks may stand between a letter and its neighbour."""

LANGUAGES_AT_ONCE = 3
"""Languages whose shaped texts are remembered: a sheet speaks its own and that of its source, and sheets of
another come next. What is remembered stays as much however many languages a library has."""

_MOST_STRETCHES = 8192

Shaped = tuple[tuple[Glyph, ...], tuple[Any, ...]]
"""Glyphs in visual order, clusters counted from the start of the stretch, and HarfBuzz's records of them."""


@dataclass(frozen=True, slots=True, eq=False)
class ShapedItem:
    """An item with its glyphs in visual order, and what slicing needs in logical order."""

    item: Item
    glyphs: tuple[Glyph, ...]
    clusters: tuple[int, ...]
    records: tuple[Any, ...]
    _safe: dict[int, bool] = field(default_factory=dict)

    @property
    def is_right_to_left(self) -> bool:
        """Whether the level of the item is odd."""
        return self.item.level % 2 == 1

    def is_safe_boundary(self, index: int) -> bool:
        """Whether the glyphs on both sides of a character index are the same when set apart.

        HarfBuzz marks the clusters before whose first character a break would change the shaping; the
        flag is read only where a line may break since reading it is slow.
        """
        if index <= self.item.start or index >= self.item.end:
            return True
        known = self._safe.get(index)
        if known is None:
            known = self._safe[index] = self._can_be_cut(index)
        return known

    def _can_be_cut(self, index: int) -> bool:
        at = bisect_left(self.clusters, index)
        if at == len(self.clusters) or self.clusters[at] != index:
            return False
        end = bisect_right(self.clusters, index, at)
        return not any(int(record.flags) & _UNSAFE_TO_BREAK for record in self.records[at:end])

    def between(self, start: int, end: int) -> tuple[Glyph, ...]:
        """The glyphs of the clusters that begin in ``start`` … ``end``, in visual order."""
        if start <= self.item.start and end >= self.item.end:
            return self.glyphs
        low, high = bisect_left(self.clusters, start), bisect_left(self.clusters, end)
        if self.is_right_to_left:
            low, high = len(self.glyphs) - high, len(self.glyphs) - low
        return self.glyphs[low:high]


def shape_item(text: str, item: Item, language: str) -> ShapedItem:
    """Shape an item within its text; cluster values are indices into the text."""
    is_right_to_left = item.level % 2 == 1
    reach = _CONTEXT_OF_JOINING if item.script in _JOINING_SCRIPTS else 1
    stretch = (
        text[item.start : item.end],
        text[max(0, item.start - reach) : item.start],
        text[item.end : item.end + reach],
        item.font,
        item.script,
        is_right_to_left,
    )
    glyphs, records = _shape(language, stretch)
    if item.start:
        glyphs = tuple(
            Glyph(glyph.id, glyph.advance, glyph.x_offset, glyph.y_offset, item.start + glyph.cluster)
            for glyph in glyphs
        )
    clusters = tuple([glyph.cluster for glyph in glyphs])
    if is_right_to_left:
        return ShapedItem(item, glyphs, clusters[::-1], records[::-1])
    return ShapedItem(item, glyphs, clusters, records)


_Stretch = tuple[str, str, str, FontKey, str, bool]
"""A stretch with the characters before and after it, its font, its script and its direction."""


@lru_cache(maxsize=LANGUAGES_AT_ONCE)
def _stretches_in(_language: str) -> dict[_Stretch, Shaped]:
    """What has been shaped in a language; forgotten together when others have been asked for since."""
    return {}


def _shape(language: str, stretch: _Stretch) -> Shaped:
    """The glyphs of a stretch, shaped once: words and numbers come again in other texts."""
    known = _stretches_in(language)
    if stretch not in known:
        if len(known) >= _MOST_STRETCHES:
            known.clear()
        known[stretch] = _shaped(language, *stretch)
    return known[stretch]


def _shaped(
    language: str, text: str, before: str, after: str, font: FontKey, script: str, is_right_to_left: bool
) -> Shaped:
    """Shape a stretch; the characters beside it tell HarfBuzz how letters join across its ends.

    Right-to-left runs keep marks apart from their letters (cluster level MONOTONE_CHARACTERS), since readers
    of finished files then find the words; other runs keep a grapheme together.
    """
    opened = face(font)
    buffer = uharfbuzz.Buffer()
    buffer.add_codepoints([ord(character) for character in before + text + after], len(before), len(text))
    buffer.direction = "rtl" if is_right_to_left else "ltr"
    buffer.script = script
    buffer.language = language
    levels = uharfbuzz.BufferClusterLevel
    buffer.cluster_level = levels.MONOTONE_CHARACTERS if is_right_to_left else levels.MONOTONE_GRAPHEMES
    flags = uharfbuzz.BufferFlags.REMOVE_DEFAULT_IGNORABLES
    if not before:
        flags |= uharfbuzz.BufferFlags.BOT
    if not after:
        flags |= uharfbuzz.BufferFlags.EOT
    buffer.flags = flags
    uharfbuzz.shape(opened.font, buffer)
    unit = 1 / opened.units_per_em
    records = tuple(buffer.glyph_infos)
    glyphs = []
    for record, position in zip(records, buffer.glyph_positions, strict=True):
        x_offset, y_offset, advance, _ = position.position
        cluster = record.cluster - len(before)
        glyphs.append(Glyph(record.codepoint, advance * unit, x_offset * unit, y_offset * unit, cluster))
    return tuple(glyphs), records
