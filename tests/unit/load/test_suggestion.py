import pytest

from signage.load.suggestion import nearest, shorten, suggest

KEYS = ("review-by", "revision", "title", "needs-under", "starts-in")


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("review_by", "review-by"),
        ("Title", "title"),
        ("titel", "title"),
        ("needs under", "needs-under"),
        ("start-in", "starts-in"),
        ("revison", "revision"),
        ("zzz", None),
        ("", None),
    ],
)
def test_the_word_that_was_meant_is_found(written, meant):
    assert nearest(written, KEYS) == meant


def test_a_hint_lists_the_known_words_and_counts_those_left_out():
    assert suggest("zzz", ("a4", "a3"), "Papers") == "Papers: a4, a3."
    assert suggest("zzz", [f"word-{i}" for i in range(30)]).endswith("word-28, word-29.")
    assert suggest("zzz", [f"word-{i}" for i in range(50)]).endswith("word-38, word-39 and 10 more.")
    assert suggest("zzz", {"b", "a", "c"}) == "Known: a, b, c."
    assert suggest("zzz", ()) == "Known: none yet."


def test_a_very_long_word_is_compared_quickly_and_quoted_shortly():
    assert nearest("x" * 1_000_000, KEYS) is None
    assert len(shorten("long " * 100)) == 60
