"""Sizes of scripts, measured again from the font files by fontTools (OpenType OS/2 and glyf tables)."""

from dataclasses import astuple
from statistics import median

import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont

from signage.text.fonts import font_for, font_path
from signage.text.manifest import FILE_BY_SCRIPT
from signage.text.metrics import metrics_from, metrics_of
from signage.text.reference_letters import REFERENCE_TEXTS, measure_script
from signage.text.script_extents import measure_letters
from signage.text.script_ink import TALLEST_COUNTED

BY_EYE = ["Arab", "Deva", "Ethi"]
MEASURED = sorted(set(REFERENCE_TEXTS) - set(BY_EYE))


def open_font(script):
    return TTFont(font_path(font_for(script, 400)), lazy=True)


def test_the_reference_height_of_latin_is_the_x_height_that_the_font_states():
    for script in ("Latn", "Grek", "Cyrl"):
        with open_font(script) as font:
            stated = font["OS/2"].sxHeight / font["head"].unitsPerEm
        assert metrics_of(script).reference_height == pytest.approx(stated, abs=0.0005), script


def test_the_ascent_of_latin_is_its_cap_height():
    with open_font("Latn") as font:
        assert metrics_of("Latn").ascent == pytest.approx(font["OS/2"].sCapHeight / 1000, abs=0.002)


def test_the_reference_height_is_the_median_height_of_the_reference_letters():
    for script, reference in REFERENCE_TEXTS.items():
        with open_font(script) as font:
            glyphs, names = font.getGlyphSet(), font.getBestCmap()
            tops = []
            for letter in reference.letters:
                pen = BoundsPen(glyphs)
                glyphs[names[ord(letter)]].draw(pen)
                tops.append(pen.bounds[3] / font["head"].unitsPerEm)
        counted = min(median(tops), TALLEST_COUNTED)
        assert metrics_of(script).reference_height == pytest.approx(counted, abs=0.005), script


def test_every_script_of_a_bundled_font_has_a_row():
    unmeasured = metrics_of("Tibt")
    assert [script for script in FILE_BY_SCRIPT if metrics_of(script) == unmeasured] == []


def test_a_row_is_what_is_measured():
    for script in MEASURED:
        row, measured = metrics_of(script), metrics_from(measure_script(script))
        assert astuple(row) == pytest.approx(astuple(measured), abs=0.006), script


def test_lines_of_a_headline_do_not_touch():
    for script in MEASURED:
        measured = measure_script(script)
        assert metrics_of(script).headline_leading >= measured.top + measured.depth, script
        assert metrics_of(script).body_leading > metrics_of(script).headline_leading, script


def test_letters_and_marks_alone_show_the_room_that_words_need():
    """So a script of which nobody wrote down words can be measured by the letters of its font."""
    wrong = {}
    for script in sorted(set(REFERENCE_TEXTS) - {"Hani", "Jpan", "Kore"}):
        words, letters = measure_script(script), measure_letters(font_for(script, 400), script)
        least = letters.top >= words.top - 0.05 and letters.depth >= words.depth - 0.05
        if not least or letters.top + letters.depth > 1.5 * (words.top + words.depth):
            wrong[script] = (letters, words)
    assert wrong == {}


def test_what_the_eye_left_out_of_the_descent_is_what_is_measured():
    """This makes the measure trustworthy for the other scripts."""
    for script in BY_EYE:
        measured = measure_script(script)
        share = 1 - measured.mean_depth / measured.depth
        assert metrics_of(script).middle == pytest.approx(share, abs=0.07), script


def test_no_script_is_set_more_than_a_tenth_larger_or_smaller():
    assert [each for each in REFERENCE_TEXTS if not 0.9 <= metrics_of(each).size_factor <= 1.1] == []


def test_scripts_without_a_font_have_room_and_writing_systems_are_set_like_their_script():
    unmeasured = metrics_of("Tibt")
    assert all(unmeasured.headline_leading >= metrics_of(script).headline_leading for script in MEASURED)
    assert unmeasured.headline_leading >= unmeasured.ascent + unmeasured.descent
    assert metrics_of("Latf") == metrics_of("Latn")
    assert metrics_of("Hans") == metrics_of("Hant") == metrics_of("Hani")
    assert metrics_of("Hang") == metrics_of("Kore")
