"""Glyphs of items: clusters, joining across their ends, and safe places to cut."""

import pytest
from text_samples import itemize

from signage.text.shape import shape_item


def shaped(text, language, base_level=0):
    (item,) = itemize(text, language, 400, base_level)
    return shape_item(text, item, language)


def test_glyphs_of_right_to_left_text_stand_in_visual_order():
    clusters = [glyph.cluster for glyph in shaped("باب", "ar", 1).glyphs]
    assert clusters == sorted(clusters, reverse=True)


def test_a_hindi_grapheme_is_one_cluster():
    assert {glyph.cluster for glyph in shaped("क्षि", "hi").glyphs} == {0}


def test_marks_of_right_to_left_text_keep_their_own_cluster():
    assert {glyph.cluster for glyph in shaped("بَب", "ar", 1).glyphs} == {0, 1, 2}


def test_invisible_characters_have_no_glyph():
    assert len(shaped("a\u200b\u2060\u00adb", "en").glyphs) == 2


def test_letters_join_across_the_end_of_an_item():
    text = "بب"
    whole = shaped(text, "ar", 1)
    (item,) = itemize(text, "ar", 400, 1)
    first = shape_item(text, type(item)(0, 1, item.level, item.script, item.font), "ar")
    alone = shaped("ب", "ar", 1)
    assert [glyph.id for glyph in first.glyphs] == [glyph.id for glyph in whole.glyphs if glyph.cluster == 0]
    assert [glyph.id for glyph in first.glyphs] != [glyph.id for glyph in alone.glyphs]


def test_lengths_are_in_ems():
    assert sum(glyph.advance for glyph in shaped("one em", "en").glyphs) == pytest.approx(3.3, abs=0.5)


def test_a_kerned_or_joined_pair_is_no_safe_boundary():
    joined = shaped("بب", "ar", 1)
    assert not joined.is_safe_boundary(1)
    words = shaped("wash hands", "en")
    assert words.is_safe_boundary(5)
    assert words.is_safe_boundary(0)
    assert words.is_safe_boundary(10)


def test_parts_of_an_item_are_the_glyphs_of_their_characters():
    for text, language, base in (("wash hands", "en", 0), ("باب باب", "ar", 1)):
        whole = shaped(text, language, base)
        first, second = whole.between(0, 4), whole.between(4, len(text))
        assert sorted(glyph.cluster for glyph in first + second) == sorted(
            glyph.cluster for glyph in whole.glyphs
        )
        assert {glyph.cluster for glyph in first} <= set(range(4))


def test_language_chooses_local_forms():
    # Urdu and Persian draw the extended Arabic-Indic four differently (OpenType locl)
    persian, urdu = shaped("۴", "fa"), shaped("۴", "ur")
    assert [glyph.id for glyph in persian.glyphs] != [glyph.id for glyph in urdu.glyphs]
