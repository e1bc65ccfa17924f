from signage.words.fixed.interface import FIXED_TEXTS
from signage.words.placeholders import has_stray_brace


def test_no_brace_of_a_fixed_text_is_astray():
    assert [text.id for text in FIXED_TEXTS.values() if has_stray_brace(text.source)] == []


def test_every_fixed_text_tells_translators_where_it_stands():
    assert [text.id for text in FIXED_TEXTS.values() if not text.note] == []
