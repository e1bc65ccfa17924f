"""Ink bounds of lines, against the bounds that fontTools finds in the same font file."""

import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont
from text_samples import shape_paragraph

from signage.text.fonts import font_for, font_path
from signage.text.ink import ink_box


def line_of(text, language):
    (line,) = shape_paragraph(text, language, 400).lines(100)
    return line


def outside_bounds(character, script):
    """Bounds of a character in ems at the default weight, 400."""
    with TTFont(font_path(font_for(script, 400)), lazy=True) as font:
        glyphs = font.getGlyphSet()
        pen = BoundsPen(glyphs)
        glyphs[font.getBestCmap()[ord(character)]].draw(pen)
        return [value / font["head"].unitsPerEm for value in pen.bounds]


@pytest.mark.parametrize(
    ("character", "language", "script"),
    [("H", "en", "Latn"), ("g", "en", "Latn"), ("ח", "he", "Hebr"), ("ሰ", "am", "Ethi"), ("ก", "th", "Thai")],
)
def test_the_ink_of_a_letter_is_that_of_its_outline(character, language, script):
    left, bottom, right, top = outside_bounds(character, script)
    box = line_of(character, language).ink
    assert (box.left, box.bottom, box.right, box.top) == pytest.approx((left, bottom, right, top), abs=0.002)


def test_marks_reach_beyond_their_letters():
    plain, marked = line_of("กป", "th"), line_of("กู้ปู่", "th")
    assert marked.ink_top > plain.ink_top + 0.1
    assert marked.ink_bottom < plain.ink_bottom - 0.1


def test_ink_lies_within_the_advances_but_for_overhang():
    line = line_of("wash hands", "en")
    assert 0 <= line.ink.left < 0.1
    assert line.width - 0.1 < line.ink.right <= line.width
    assert line.ink.height == line.ink_top - line.ink_bottom


def test_blank_text_has_no_ink():
    assert ink_box(()).height == 0
    assert line_of(" ", "en").ink.height == 0
