"""Paragraphs: direction, missing glyphs, forced breaks, lines that never exceed their width."""

import gc
import weakref

import pytest
from samples import SAMPLES
from text_samples import shape_paragraph

from signage.text.paragraph import MissingGlyph


def texts(text, language, width, balanced=False):
    return [
        text[line.start : line.end]
        for line in shape_paragraph(text, language, 400).lines(width, balanced=balanced)
    ]


def test_the_direction_is_that_of_the_first_strong_character_else_of_the_language():
    assert shape_paragraph("יד", "en", 400).is_right_to_left
    assert not shape_paragraph("P1 – יד", "he", 400).is_right_to_left
    assert shape_paragraph("20", "ar", 400).is_right_to_left
    assert not shape_paragraph("20", "am", 400).is_right_to_left
    assert shape_paragraph("P1", "he", 400, right_to_left=True).is_right_to_left


def test_a_character_without_a_glyph_is_named_with_font_and_place():
    paragraph = shape_paragraph("go \u13a0 on", "en", 400)
    assert paragraph.missing == (MissingGlyph("\u13a0", 0x13A0, "NotoSans[wght].ttf", 3),)


def test_each_missing_character_is_listed_and_covered_ones_are_not():
    missing = shape_paragraph("\u13a0a\u13a1", "en", 400).missing
    assert [(glyph.index, glyph.character) for glyph in missing] == [(0, "\u13a0"), (2, "\u13a1")]


@pytest.mark.parametrize("language", sorted(SAMPLES))
@pytest.mark.parametrize("weight", [400, 600, 700])
def test_no_sample_misses_a_glyph(language, weight):
    assert shape_paragraph(SAMPLES[language], language, weight).missing == ()


def test_no_invisible_character_counts_as_missing():
    assert (
        shape_paragraph("a\u200b\u2060\u00ad\u2068b\u2069\u200d\n c\u2011d\u00a0e", "th", 400).missing == ()
    )


def test_a_line_feed_ends_a_line():
    assert texts("a\nb\n\nc", "en", 100) == ["a\n", "b\n", "\n", "c"]


def test_an_empty_text_is_one_empty_line():
    (line,) = shape_paragraph("", "en", 400).lines(10)
    assert (line.start, line.end, line.width, line.runs) == (0, 0, 0, ())


def test_the_width_of_a_paragraph_is_that_of_its_only_line():
    paragraph = shape_paragraph("wash hands ", "en", 700)
    (line,) = paragraph.lines(100)
    assert paragraph.width == pytest.approx(line.width)
    assert paragraph.lines(paragraph.width)[0].end == line.end
    assert len(paragraph.lines(paragraph.width - 0.01)) == 2


def test_the_width_of_a_paragraph_with_forced_breaks_is_that_of_its_widest_line():
    paragraph = shape_paragraph("wash\nhands and arms\nnow", "en", 400)
    assert paragraph.width == pytest.approx(shape_paragraph("hands and arms", "en", 400).width)


def test_a_word_wider_than_the_line_is_broken_and_says_so():
    paragraph = shape_paragraph("decontamination", "en", 400)
    lines = paragraph.lines(3.0)
    assert [line.breaks_word for line in lines] == [True] * (len(lines) - 1) + [False]
    assert all(line.width <= 3.0 for line in lines)


def test_letters_stay_joined_where_an_arabic_word_is_broken():
    text = "الباب"
    whole = shape_paragraph(text, "ar", 400)
    joined = {glyph.id for shaped in whole.items for glyph in shaped.glyphs}
    for line in whole.lines(1.2):
        assert {glyph.id for run in line.runs for glyph in run.glyphs} <= joined


def test_no_break_spaces_tie_words():
    assert texts("rub 20\u00a0s", "en", 2.9) == ["rub ", "20\u00a0s"]


def test_a_word_with_a_hyphen_is_divided_only_where_it_fits_on_no_line():
    assert texts("Begin take-off now", "en", 5.0) == ["Begin ", "take-off ", "now"]
    assert texts("Begin take-off now", "en", 2.9) == ["Begin ", "take-", "off ", "now"]
    narrow = shape_paragraph("take-off", "en", 400).lines(2.9)
    assert [line.breaks_word for line in narrow] == [False, False]


def test_equal_questions_give_the_same_objects():
    paragraph = shape_paragraph("wash hands", "en", 400)
    assert shape_paragraph("wash hands", "en", 400) is paragraph
    assert paragraph.lines(3.0) is paragraph.lines(3.0)


def test_many_widths_do_not_fill_the_memory():
    paragraph = shape_paragraph("wash hands often", "en", 400)
    settings = {paragraph.setting(tenth / 10) for tenth in range(30, 400)}
    ways_to_set_three_words = 4
    assert len(settings) <= ways_to_set_three_words


def test_texts_of_a_language_go_at_once_when_sheets_of_others_come():
    first = shape_paragraph("se laver les mains", "fr", 400)
    first.lines(3.0)
    gone = weakref.ref(first)
    del first
    gc.disable()
    try:
        for language in ("de", "it", "es", "pt"):
            shape_paragraph("A1", language, 400)
        assert gone() is None
    finally:
        gc.enable()
