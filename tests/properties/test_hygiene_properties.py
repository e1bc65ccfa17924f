"""Whatever stands in a text, the rules of clean text come to an end and give known codes."""

from hypothesis import given
from hypothesis import strategies as st

from signage.text.font_set import BUNDLED_FONTS
from signage.words.catalogue import Entry
from signage.words.entry_checks import faults_of_source, faults_of_translation
from signage.words.rules import RULE_OF

TAGS = ("en", "fr", "ar", "fa", "hi", "am", "th", "ja", "sr", "sw", "bo", "prs", "qaa")
ODD = "\u200b\u200c\u200d\u2060\u00ad\u0301\u093f\u094d\u2067\u2069\ufffd\ufb01\U000e0041?…{}<&;%\\ \n\tÃ©â€™"
TEXTS = st.text(
    st.one_of(st.sampled_from(ODD), st.characters(exclude_categories=("Cs",)), st.sampled_from("aàکगथぁ")),
    max_size=60,
)


@given(TEXTS, TEXTS, st.sampled_from(TAGS))
def test_no_text_is_too_odd_to_be_judged(source, translation, tag):
    entry = Entry(context="a/b/text", source=source, translation=translation)
    found = [
        *faults_of_translation(entry, tag, "en", BUNDLED_FONTS),
        *faults_of_source(translation, tag, BUNDLED_FONTS),
    ]
    assert all(code in RULE_OF and message for code, message in found)
