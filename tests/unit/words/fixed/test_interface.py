from signage.words.fixed.interface import FIXED_TEXTS
from signage.words.placeholders import has_stray_brace, placeholder_names


def test_a_fixed_text_declares_exactly_the_placeholders_it_holds():
    texts = FIXED_TEXTS.values()
    held = {text.id: set(placeholder_names(text.source)) for text in texts}
    assert held == {text.id: set(text.placeholders) for text in texts}
    assert [text.id for text in texts if has_stray_brace(text.source)] == []


def test_every_fixed_text_tells_translators_where_it_stands():
    assert [text.id for text in FIXED_TEXTS.values() if not text.note] == []
