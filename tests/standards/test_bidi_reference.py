"""The bidirectional algorithm (UAX #9) against ICU, which implements it independently.

ICU is known to differ from the standard in two corners, which are checked against published values instead:
marks that follow a bracket of a pair, and more than 63 open brackets.
"""

import random
import re

import pytest
from icu_reference import icu_bracket_pairs, icu_visual_order
from samples import SAMPLES

from signage.text.bidi import bidi_class, in_visual_order, levels
from signage.text.brackets import CLOSING_OF

STRONG = "abאבاب"
NUMBERS = "12٣٤"
NEUTRAL = " .,:+-%/!()[]{}<>"
MARKS = "\u0301\u064e"
ISOLATES = "\u2066\u2067\u2068\u2069\u2069"
EMBEDDINGS = "\u202a\u202b\u202c\u202c\u202d\u202e\u200b"
SEPARATORS = "\t\n"
REMOVED_BY_X9 = {"LRE", "RLE", "LRO", "RLO", "PDF", "BN"}


MARK_ON_BRACKET = re.compile(r"[()\[\]{}<>]\W*[\u0301\u064e]")


def visual_order(text, base_level):
    """Our order, without the characters that rule X9 removes: their place is left to implementations."""
    order = in_visual_order(range(len(text)), levels(text, base_level))
    return [i for i in order if bidi_class(text[i]) not in REMOVED_BY_X9]


def reference_order(text, base_level):
    order = icu_visual_order(text, base_level)
    return [i for i in order if bidi_class(text[i]) not in REMOVED_BY_X9]


def random_texts(alphabet, seed, count, longest=18):
    chance = random.Random(seed)
    for _ in range(count):
        length = chance.randint(1, longest)
        text = "".join(chance.choice(alphabet) for _ in range(length))
        while MARK_ON_BRACKET.search(text):
            text = MARK_ON_BRACKET.sub("a", text)
        yield text, chance.randint(0, 1)


@pytest.mark.parametrize(
    ("alphabet", "seed", "count"),
    [
        (STRONG + NUMBERS + NEUTRAL, 9, 6000),
        (STRONG + NUMBERS + NEUTRAL + MARKS + ISOLATES, 10, 10_000),
        (STRONG + NUMBERS + "()[]" + MARKS + ISOLATES + EMBEDDINGS + " ", 11, 4000),
        (STRONG + " 1()" + SEPARATORS, 12, 1000),
    ],
)
def test_random_texts_stand_in_the_same_order_as_with_icu(alphabet, seed, count):
    different = [
        (text, base, ours, theirs)
        for text, base in random_texts(alphabet, seed, count)
        if (ours := visual_order(text, base)) != (theirs := reference_order(text, base))
    ]
    assert different == []


@pytest.mark.parametrize("language", sorted(SAMPLES))
def test_sample_sentences_stand_in_the_same_order_as_with_icu(language):
    for inserted in ("", " (20 A1)", " \u2068A1 – r2\u2069", " 5:30 \u2067ב 3\u2069 x"):
        text = SAMPLES[language] + inserted
        for base_level in (0, 1):
            assert visual_order(text, base_level) == reference_order(text, base_level)


def test_isolates_nest_as_deep_as_the_standard_allows_and_then_overflow():
    for depth in (3, 61, 62, 63, 64, 130):
        text = "a" + "\u2067\u2066" * depth + "א1" + "\u2069" * 2 * depth + "b"
        assert visual_order(text, 0) == reference_order(text, 0)


def test_bracket_pairs_are_those_of_the_unicode_character_database():
    assert icu_bracket_pairs() == CLOSING_OF


def test_up_to_63_brackets_may_be_open():
    for count in (1, 20, 21, 62, 63):  # BD16
        text = "א" + "(" * count + "a" + ")" * count + " 1"
        assert visual_order(text, 1) == reference_order(text, 1)


def levels_of_closing_brackets(opened, before=""):
    text = before + "א" + "(" * opened + "ב" + ")" * opened + "a"
    return levels(text, 0)[-1 - opened : -1]


def test_the_sixty_fourth_open_bracket_ends_pairing():
    # BD16: "if there is no room in the stack, stop processing BD16 for the remainder": the pairs that were
    # found before remain. A closing bracket of a pair is right-to-left here, any other one is not.
    assert levels_of_closing_brackets(63) == [1] * 63
    assert levels_of_closing_brackets(64) == [0] * 64
    assert levels("א(ב)a" + "(" * 64, 0)[3] == 1


@pytest.mark.parametrize(
    ("code_points", "base_level", "expected"),
    [
        # Unicode Character Database, BidiCharacterTest.txt: marks applied to paired brackets
        ("0061 0028 0062 0029 0331", 1, "2 2 2 2 2"),
        ("05D0 0028 05D1 0029 0331", 0, "1 1 1 1 1"),
        ("0661 0028 0662 0029 0331", 0, "2 1 2 1 1"),
        # the same file: Hebrew and Latin letters in nested brackets
        ("05D0 05D1 0028 05D2 05D3 005B 0026 0065 0066 005D 002E 0029 0067 0068", 0, "1 1 0 1 1" + " 0" * 9),
        (
            "05D0 05D1 0028 05D2 05D3 005B 0026 0065 0066 005D 002E 0029 0067 0068",
            1,
            "1 1 1 1 1 1 1 2 2 1 1 1 2 2",
        ),
    ],
)
def test_levels_of_the_published_conformance_data(code_points, base_level, expected):
    text = "".join(chr(int(code, 16)) for code in code_points.split())
    assert levels(text, base_level) == [int(level) for level in expected.split()]


def test_the_comparison_notices_a_wrong_order():
    text = "ab אב (1)"
    assert visual_order(text, 0) != reference_order(text[::-1], 0)
