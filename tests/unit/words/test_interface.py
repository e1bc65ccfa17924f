import pytest

from signage.words.interface import FIXED_TEXTS
from signage.words.placeholders import has_stray_brace, placeholder_names


@pytest.mark.parametrize("text", FIXED_TEXTS.values(), ids=list(FIXED_TEXTS))
def test_a_fixed_text_declares_exactly_the_placeholders_it_holds(text):
    assert placeholder_names(text.source).keys() == text.placeholders
    assert not has_stray_brace(text.source)


def test_every_fixed_text_tells_translators_where_it_stands():
    assert [text.id for text in FIXED_TEXTS.values() if not text.note] == []
