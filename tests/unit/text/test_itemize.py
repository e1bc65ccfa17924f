"""Texts are cut where script, direction or font changes, and nowhere else."""

import pytest
from text_samples import itemize

from signage.text.itemize import script_of_character


def cut(text, language, base_level=0):
    return [
        (text[item.start : item.end], item.script, item.level)
        for item in itemize(text, language, 400, base_level)
    ]


def fonts(text, language, base_level=0):
    return [
        (text[item.start : item.end], item.font.file.removeprefix("NotoSans").removesuffix("[wght].ttf"))
        for item in itemize(text, language, 400, base_level)
    ]


def test_a_text_of_one_script_is_one_item():
    assert cut("Wash, then 20 s (soap).", "en") == [("Wash, then 20 s (soap).", "Latn", 0)]


def test_inserted_isolates_do_not_cut_a_left_to_right_text():
    assert len(cut("Use bin \u2068A\u2069 now", "en")) == 1
    assert len(cut("डिब्बा \u2068क\u2069 में", "hi")) == 1


def test_numbers_and_codes_in_arabic_have_their_own_direction():
    text = "اغسل 20 ثانية \u2066A1 r2\u2069"
    assert [(part, level) for part, _, level in cut(text, "ar", 1)] == [
        ("اغسل ", 1),
        ("20", 2),
        (" ثانية \u2066", 1),
        ("A1 r2", 2),
        ("\u2069", 1),
    ]


def test_shared_characters_take_the_script_before_them():
    assert cut("हाथ (20) और", "hi") == [("हाथ (20) और", "Deva", 0)]
    assert script_of_character("(") is None


def test_a_text_of_shared_characters_takes_the_script_of_its_language():
    assert cut("20–30", "hi") == [("20–30", "Deva", 0)]
    assert cut("20–30", "en") == [("20–30", "Latn", 0)]


def test_what_a_font_lacks_comes_from_the_next_and_blanks_stay():
    assert fonts("ხელი, კარი", "ka") == [("ხელი", "Georgian"), (", ", ""), ("კარი", "Georgian")]


def test_symbols_come_from_the_symbol_font():
    assert fonts("a ⚕ b", "en") == [("a ", ""), ("⚕ ", "Symbols"), ("b", "")]


def test_a_sign_of_some_scripts_takes_none_that_does_not_use_it():
    # Script_Extensions of U+0964: scripts of India; of U+060C: Arabic and its neighbours (UCD)
    assert cut("फ़ॉर्म B।", "hi")[-1] == ("।", "Deva", 0)
    assert cut("B।", "bn")[-1] == ("।", "Beng", 0)
    assert ("،", "Arab", 1) in cut("رمز A، ثم", "ar", 1)
    assert cut("B.", "hi") == [("B.", "Latn", 0)]


def test_a_grapheme_is_never_divided_between_fonts():
    # the dotted circle is not in every font; with a mark of another script it stays with one font
    for start, font in fonts("ක්‍රියා x\u0301 ক্ষ", "si"):
        assert start
        assert font in {"Sinhala", "", "Bengali"}


def test_forced_breaks_belong_to_no_item():
    assert cut("a\nb", "en") == [("a", "Latn", 0), ("b", "Latn", 0)]
    assert cut("\n", "en") == []


@pytest.mark.parametrize(
    ("text", "language", "font"),
    [
        ("洗手", "zh", "SC"),
        ("洗手", "zh-Hant", "TC"),
        ("洗手", "zh-TW", "TC"),
        ("手を洗う", "ja", "JP"),
        ("손", "ko", "KR"),
    ],
)
def test_han_characters_follow_the_language(text, language, font):
    assert {found for _, found in fonts(text, language)} == {font}
