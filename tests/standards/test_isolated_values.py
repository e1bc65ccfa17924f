"""Inserted values keep their order on the line (UAX #9), by ICU's bidirectional algorithm."""

import pytest
from icu_reference import icu_visual_order

from signage.words.placeholders import fill, isolate_code

SENTENCES = [
    ("ضع {x} في السلة.", 1),
    ("المراجعة {x}، صفحة ٣", 1),
    ("{x} 5 :الخطوة", 1),
    ("Revision {x}, Seite 3", 0),
]


@pytest.mark.parametrize("code", ["P1 · K7M2", "A-1:9", "(B) 1/4"])
@pytest.mark.parametrize(("sentence", "level"), SENTENCES)
def test_a_code_reads_from_left_to_right_in_every_sentence(sentence, level, code):
    text = fill(sentence, {"x": isolate_code(code)})
    start = text.index(code)
    places = [i for i in icu_visual_order(text, level) if start <= i < start + len(code)]
    assert places == list(range(start, start + len(code)))


def test_without_an_isolate_the_same_code_is_scrambled():
    text = "المراجعة 1:9 - A"
    code = "1:9 - A"
    start = text.index(code)
    places = [i for i in icu_visual_order(text, 1) if start <= i < start + len(code)]
    assert places != list(range(start, start + len(code)))
