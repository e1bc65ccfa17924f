"""Ties of any text: only spaces change, twice is once, and softening undoes no more than the soft ones."""

import re

from hypothesis import given
from hypothesis import strategies as st

from signage.words.ties import soften, tie

WORDS = [
    "the",
    "a",
    "la",
    "au",
    "gants",
    "20",
    "s",
    "mm",
    "secondes",
    "को",
    "से",
    "से॰",
    "हाथ",
    "«",
    "»",
    "?",
    ":",
    "\u2068",
    "\u2069",
    "٢٠",
    "ثانية",
    "-",
    "’",
    "é",
]
texts = st.lists(
    st.one_of(
        st.sampled_from(WORDS), st.sampled_from([" ", " ", " ", "\u00a0", "\u202f"]), st.text(max_size=2)
    ),
    max_size=16,
).map("".join)
tags = st.sampled_from(["en", "fr", "hi", "ar", "bn", "zz", "en-XA"])


def spaced(text):
    return text.replace("\u00a0", " ")


@given(texts, tags)
def test_ties_change_nothing_but_spaces(text, tag):
    assert spaced(tie(text, tag)) == spaced(text)
    assert spaced(soften(text, tag)) == spaced(text)


@given(texts, tags)
def test_tying_and_softening_twice_are_once(text, tag):
    tied, soft = tie(text, tag), soften(text, tag)
    assert tie(tied, tag) == tied
    assert soften(soft, tag) == soft


@given(texts, tags)
def test_tying_again_after_softening_gives_the_same_ties(text, tag):
    tied = tie(text, tag)
    assert tie(soften(tied, tag), tag) == tied


@given(texts)
def test_softening_keeps_french_punctuation_and_units_together(text):
    soft = soften(tie(text, "fr"), "fr")
    assert not re.search(r"\S [?!:;»]|« \S", soft)
    assert not re.search(r"\d (s|mm|secondes)(?!\w)", soft)
