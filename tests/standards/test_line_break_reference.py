"""Line breaks (UAX #14, with ICU's dictionaries) and graphemes (UAX #29)."""

import pytest
from icu_reference import icu_line_breaks
from samples import SAMPLES
from text_samples import shape_paragraph

from signage.text.breaks import grapheme_ends, line_opportunities

WIDTHS = [2.0, 3.0, 4.5, 6.0, 9.0, 14.0]

KNOWN_WORDS = {
    "th": ["ล้าง", "มือ", "ด้วย", "สบู่", "แล้ว", "ปิด", "ประตู"],
    "km": ["លាង", "ដៃ", "ជាមួយ", "បិទ", "ទ្វារ"],
    "my": ["လက်", "ဆပ်ပြာ", "တံခါး"],
    "lo": ["ລ້າງ", "ມື", "ສະບູ່", "ແລ້ວ", "ປະຕູ"],
}
"""Everyday words of the samples (hand, wash, soap, door, close), unverified; all in ICU's dictionaries."""

BY_PHRASES = {"ja": "ja@lw=phrase", "ko": "ko@lw=phrase"}
WITHOUT_BLANKS = ["th", "km", "my", "zh", "lo", "ja"]


def reference(text, language):
    return icu_line_breaks(text, BY_PHRASES.get(language, language))


def line_ends(text, language, width):
    return [line.end for line in shape_paragraph(text, language, 400).lines(width)]


@pytest.mark.parametrize("language", sorted(SAMPLES))
def test_opportunities_are_those_of_icu(language):
    for text in (SAMPLES[language], "😀 " + SAMPLES[language] + " 𝟙x", SAMPLES[language] * 3):
        assert list(line_opportunities(text, language)) == reference(text, language)


@pytest.mark.parametrize("language", WITHOUT_BLANKS)
@pytest.mark.parametrize("width", WIDTHS)
def test_lines_end_at_opportunities_unless_they_say_that_they_break_a_word(language, width):
    text = SAMPLES[language]
    opportunities = set(reference(text, language))
    for line in shape_paragraph(text, language, 400).lines(width):
        assert (line.end in opportunities) is not line.breaks_word


@pytest.mark.parametrize("language", sorted(KNOWN_WORDS))
@pytest.mark.parametrize("width", [4.0, 5.5, 8.0])
def test_words_of_the_dictionary_stay_whole(language, width):
    text = SAMPLES[language]
    ends = set(line_ends(text, language, width))
    for word in KNOWN_WORDS[language]:
        start = text.index(word)
        assert ends.isdisjoint(range(start + 1, start + len(word))), word


@pytest.mark.parametrize("language", sorted(SAMPLES))
@pytest.mark.parametrize("width", [0.4, 0.9, 1.7])
def test_no_line_ends_inside_a_grapheme_however_narrow(language, width):
    text = SAMPLES[language]
    assert set(line_ends(text, language, width)) <= set(grapheme_ends(text))


def test_a_grapheme_of_many_characters_is_one():
    # UAX #29 GB9c: a consonant conjunct of Devanagari; GB11: an emoji sequence; GB12: a flag
    assert grapheme_ends("क्षिक") == (4, 5)
    assert grapheme_ends("👩\u200d🔬a") == (3, 4)
    assert grapheme_ends("🇨🇭🇨🇭") == (2, 4)


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("20\u00a0s left", [5, 9]),  # GL: no break at a no-break space
        ("ab\u200bcd", [3, 5]),  # ZW: a break after a zero width space
        ("ab\u2060 cd", [4, 6]),  # WJ
        ("wash-up", [5, 7]),  # HY, BA
        ("wash\u2011up", [7]),  # GL: non-breaking hyphen
        ("gown\u00ad ed x", [6, 9, 10]),
        ("a\nb\r\nc", [2, 5, 6]),  # LF, CR × LF
        ("(see 1.5 m).", [5, 9, 12]),  # IS between numbers, CL
    ],
)
def test_classes_of_the_line_breaking_algorithm(text, ends):
    assert list(line_opportunities(text, "en")) == ends


def test_chinese_punctuation_never_begins_a_line():
    text = SAMPLES["zh"] * 4
    for width in (1.0, 2.0, 3.0, 4.0, 5.0, 7.0, 11.0):
        for end in line_ends(text, "zh", width)[:-1]:
            is_broken = end not in reference(text, "zh")
            assert is_broken or text[end] not in "，。"  # CL


def test_korean_lines_end_between_words():
    text = SAMPLES["ko"]
    assert all(text[end - 1] == " " for end in line_ends(text, "ko", 6.0)[:-1])
