"""Shaped lines against RAQM (with FriBiDi) as Pillow carries it: the same ink at 64 pixels an em.

Both use HarfBuzz, so this checks how we call it: script, language, direction, order, clusters, offsets.
"""

import unicodedata

import pytest
from glyph_raster import OVERSAMPLING, PIXELS_PER_EM, raster_of, worst_window
from outside_readers import outside
from samples import SAMPLES
from text_samples import shape_paragraph

from signage.ground.glyphs import Glyph, GlyphRun
from signage.ground.language import script_of
from signage.text.fonts import face, font_for, font_path

SAME = 0.97
SCRIPT_OF_FONT = {"ja": "Jpan", "ko": "Kore"}
SHAPE_WITHOUT_JOINING = {"ka", "hy", "el", "ru", "zh", "ja", "ko"}
"""Languages whose letters neither join nor stack: only kerning is shaped."""


TEXT_WITH_STACKS = {"th": "ที่นี่มีป้ากู้"}
"""Where the sample has few letters that shaping moves. Unverified."""


def font_of(language):
    return font_for(SCRIPT_OF_FONT.get(language, script_of(language)), 400)


def single_font_text(language):
    """The sample without the characters that come from a fallback font, which RAQM has not."""
    covers = face(font_of(language)).covers
    return "".join(character for character in SAMPLES[language] if covers(character) or character == "\u200c")


def raqm_raster(text, language):
    import numpy as np

    outside("PIL")
    from PIL import Image, ImageDraw, ImageFont, features

    if not (features.check("raqm") and features.check("fribidi")):
        outside("Pillow with RAQM and FriBiDi")
    em = PIXELS_PER_EM * OVERSAMPLING  # Pillow sets glyphs on whole pixels, so these are made small
    path = str(font_path(font_of(language)))
    font = ImageFont.truetype(path, em, layout_engine=ImageFont.Layout.RAQM)
    font.set_variation_by_axes([400])
    image = Image.new("L", (em * (len(text) + 4), em * 4))
    ImageDraw.Draw(image).text((em, em), text, 255, font, language=language)
    return np.asarray(image.reduce(OVERSAMPLING))


def our_runs(text, language):
    (line,) = shape_paragraph(text, language, 400).lines(1000)
    return line.runs


def unshaped_run(text, language):
    """The nominal glyph of each character, one after the other."""
    key = font_of(language)
    opened = face(key)
    glyphs = []
    for index, character in enumerate(text):
        glyph = opened.font.get_nominal_glyph(ord(character)) or 0
        advance = opened.font.get_glyph_h_advance(glyph) / opened.units_per_em
        glyphs.append(Glyph(glyph, advance, 0.0, 0.0, index))
    return GlyphRun(key, 0, len(text), False, tuple(glyphs))


@pytest.mark.parametrize("language", sorted(SAMPLES))
def test_a_line_has_the_ink_of_raqm(language):
    text = single_font_text(language)
    assert worst_window(raster_of(our_runs(text, language)), raqm_raster(text, language)) >= SAME


@pytest.mark.parametrize("language", sorted(SAMPLES))
def test_the_comparison_notices_a_reversed_text(language):
    text = single_font_text(language)
    assert worst_window(raster_of(our_runs(text[::-1], language)), raqm_raster(text, language)) < SAME


@pytest.mark.parametrize("language", sorted(set(SAMPLES) - SHAPE_WITHOUT_JOINING))
def test_the_comparison_notices_text_without_shaping(language):
    text = TEXT_WITH_STACKS.get(language, single_font_text(language))
    ours = raster_of([unshaped_run(text, language)])
    assert worst_window(ours, raqm_raster(text, language)) < SAME


@pytest.mark.parametrize(
    ("text", "language"),
    [("مُغلَق", "ar"), ("हाँ", "hi"), ("ที่", "th"), ("ស៊ូ", "km"), ("ကို", "my"), ("é\u0323", "en")],
)
def test_the_comparison_notices_a_single_lost_mark(text, language):
    reference = raqm_raster(text, language)
    assert worst_window(raster_of(our_runs(text, language)), reference) >= SAME
    for i, character in enumerate(text):
        if unicodedata.category(character) == "Mn":
            ours = raster_of(our_runs(text[:i] + text[i + 1 :], language))
            assert worst_window(ours, reference) < SAME
