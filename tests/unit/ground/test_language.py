import pytest

from signage.ground.language import is_right_to_left, is_well_formed, script_of


@pytest.mark.parametrize(
    "tag", ["en", "en-GB", "zh-Hant", "es-013", "ru-Cyrl-BY", "hy-Latn-IT-arevela", "zh-Hans-CN", "en-XA"]
)
def test_tags_of_rfc_5646(tag):
    assert is_well_formed(tag)  # examples of RFC 5646 and its summaries


@pytest.mark.parametrize("tag", ["en_GB", "e", "en-", "zh-TW-Hant", "", "../en", "en/fr"])
def test_ill_formed_tags(tag):
    assert not is_well_formed(tag)


@pytest.mark.parametrize(
    ("tag", "script"),
    [
        ("ar", "Arab"),
        ("am", "Ethi"),
        ("zh-Hant", "Hant"),
        ("zh-TW", "Hant"),
        ("zh", "Hans"),
        ("sr-Latn", "Latn"),
        ("fr", "Latn"),
        ("uz-AF", "Arab"),
        ("prs", "Arab"),
        ("bho", "Deva"),
        ("mai", "Deva"),
        ("tig", "Ethi"),
        ("bo", "Tibt"),
        ("nqo", "Nkoo"),
        ("en-XA", "Latn"),
        ("es-419", "Latn"),
        ("xx", "Latn"),
    ],
)
def test_usual_scripts(tag, script):
    assert script_of(tag) == script


@pytest.mark.parametrize(
    "tag", ["ar", "ary", "apc", "prs", "pnb", "skr", "ks", "nqo", "ar-XB", "ku-IQ", "aii"]
)
def test_right_to_left_languages(tag):
    assert is_right_to_left(tag)


def test_a_latin_variant_of_arabic_runs_left_to_right():
    assert not is_right_to_left("ar-Latn")
