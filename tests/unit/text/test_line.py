"""A line in visual order, its blanks outside its width, its soft hyphen shown."""

import pytest
from text_samples import shape_paragraph

from signage.text.fonts import face

UNLIMITED = 1000.0


def lines(text, language, width=UNLIMITED, right_to_left=None, weight=400):
    return shape_paragraph(text, language, weight, right_to_left).lines(width, balanced=False)


def parts(text, line):
    return [text[run.start : run.end] for run in line.runs]


def character_of(run, glyph):
    """The character whose nominal glyph this is, by the font's own character map."""
    opened = face(run.font)
    return {opened.font.get_nominal_glyph(code): chr(code) for code in opened.coverage}.get(glyph.id)


def advance_of(runs):
    return sum(run.advance for run in runs)


def test_a_number_in_arabic_stands_between_its_words_in_its_own_order():
    text = "مدة 20 ثانية"
    (line,) = lines(text, "ar")
    assert parts(text, line) == [" ثانية", "20", "مدة "]
    assert [run.is_right_to_left for run in line.runs] == [True, False, True]
    number = line.runs[1]
    assert [character_of(number, glyph) for glyph in number.glyphs] == ["2", "0"]


def test_brackets_round_right_to_left_text_are_mirrored():
    text = "(אב)"
    (line,) = lines(text, "he")
    glyphs = [(run, glyph) for run in line.runs for glyph in run.glyphs]
    assert character_of(*glyphs[0]) == "("
    assert character_of(*glyphs[-1]) == ")"


def test_blanks_at_the_end_of_a_line_hang_outside_its_width_on_the_right():
    first, second = lines("wash hands", "en", 3.0)
    (alone,) = lines("wash", "en")
    assert first.width == pytest.approx(alone.width)
    assert advance_of(first.runs) > first.width
    assert first.lead == 0
    assert first.runs[-1].start == 4
    assert second.width == pytest.approx(advance_of(second.runs))


def test_blanks_of_a_right_to_left_line_hang_on_the_left():
    text = "اغسل يديك"
    first, second = lines(text, "ar", 2.6)
    assert parts(text, first) == [" ", "اغسل"]
    assert first.lead == pytest.approx(first.runs[0].advance)
    assert advance_of(first.runs) == pytest.approx(first.lead + first.width)
    assert second.lead == 0


def test_the_direction_of_the_paragraph_places_hanging_blanks():
    text = "wash אב"
    first, _ = lines(text, "he", 2.6, right_to_left=True)
    assert parts(text, first)[0] == " "
    assert first.lead > 0


def test_a_soft_hyphen_shows_only_where_the_line_breaks():
    text = "hand\u00adwashing"
    (whole,) = lines(text, "en")
    assert sum(len(run.glyphs) for run in whole.runs) == len("handwashing")
    first, second = lines(text, "en", 4.2)
    hyphen = first.runs[-1]
    assert character_of(hyphen, hyphen.glyphs[0]) in "-\u2010"
    assert (hyphen.start, hyphen.end) == (4, 5)
    assert first.width == pytest.approx(advance_of(first.runs))
    assert not first.breaks_word
    assert text[second.start : second.end] == "washing"


def test_the_hyphen_counts_for_the_width():
    text = "hand\u00adwashing"
    without = lines("hand", "en")[0].width
    first, *_ = lines(text, "en", without + 0.01)
    assert text[first.start : first.end] == "hand"
    assert first.breaks_word


def test_a_soft_hyphen_at_the_end_of_the_text_stays_invisible():
    (line,) = lines("hand\u00ad", "en")
    assert [glyph.cluster for run in line.runs for glyph in run.glyphs] == [0, 1, 2, 3]


def test_a_soft_hyphen_of_right_to_left_text_stands_at_its_left():
    text = "אבגד\u00adהוזח"
    first = lines(text, "he", 3.0)[0]
    assert first.end == 5
    assert (first.runs[0].start, first.runs[0].end) == (4, 5)


def test_no_run_is_without_glyphs():
    for line in lines("\u2068\u2069 \u200e\n\u200b a", "en"):
        assert all(run.glyphs for run in line.runs)


def test_a_line_is_as_wide_as_its_text_alone():
    text = "Wash your hands with soap, then close the door."
    for line in lines(text, "en", 7.0):
        (alone,) = lines(text[line.start : line.end].rstrip(), "en")
        assert line.width == pytest.approx(alone.width, abs=1e-6)
