import pytest

from signage.text.breaks import word_count


@pytest.mark.parametrize(
    ("text", "language", "count"),
    [
        ("Put on the full-length apron", "en", 5),
        ("Don't touch it – wait {time}.", "en", 5),
        ("اخلع القفازات الخارجية", "ar", 3),
        ("ถอดถุงมือ", "th", 2),  # "take off" and "glove" of ICU's dictionary; unverified
        ("手袋を外す", "ja", 3),
        ("– … !", "en", 0),
        ("", "en", 0),
    ],
)
def test_words_are_counted_as_readers_count_them(text, language, count):
    assert word_count(text, language) == count
