from datetime import date

import pytest

from signage.words.numerals import Numerals, autonym, cldr_locale, default_numerals
from signage.words.plural_forms import plural_forms


def test_a_country_that_cldr_does_not_know_takes_its_language():
    assert cldr_locale("hi-FJ").language == "hi"
    assert cldr_locale("fr-x-ward").language == "fr"
    assert cldr_locale("qaa") is None


def test_a_code_that_cldr_has_replaced_is_read_as_its_successor():
    """CLDR, supplementalMetadata.xml: prs is fa_AF; fa.xml names it, plurals.xml gives it two forms."""
    assert str(cldr_locale("prs")) == "fa_AF"
    assert autonym("prs") == "دری"
    assert Numerals("prs").number(20) == "۲۰"
    assert plural_forms("prs") == plural_forms("fa") is not None


def test_a_language_that_cldr_does_not_know_gets_international_forms():
    numerals = Numerals("qaa")
    assert numerals.number(1234) == "1234"
    assert numerals.seconds(20) == "20\u00a0s"
    assert numerals.millimetres(50) == "50\u00a0mm"
    assert numerals.amount("10 ml") == "10\u00a0ml"
    assert numerals.date(date(2027, 5, 31)) == "2027-05-31"


def test_plain_english_puts_the_day_before_the_month():
    assert Numerals("en").date(date(2027, 5, 31)) == "31 May 2027"
    assert Numerals("en-US").date(date(2027, 5, 31)) == "May 31, 2027"


@pytest.mark.parametrize("text", ["palmful", "10 spoons", "ten ml", "", "10 ml 5", "-1 ml"])
def test_an_amount_that_is_none_is_refused(text):
    with pytest.raises(ValueError, match="is no amount"):
        Numerals("en").amount(text)


@pytest.mark.parametrize(
    ("tag", "text", "written"),
    [
        ("en", "3", "3"),
        ("en", "0.5 %", "0.5%"),
        ("fr", "0.5 %", "0,5\u00a0%"),
        ("fr", "2.5 l", "2,5\u202fl"),
        ("en", "40 s", "40\u00a0s"),
        ("en", "1000 ppm", "1,000\u00a0ppm"),
    ],
)
def test_an_amount_is_written_with_the_signs_of_the_locale(tag, text, written):
    assert Numerals(tag).amount(text) == written


def test_numerals_that_are_no_decimal_system_are_refused():
    with pytest.raises(ValueError, match="roman"):
        Numerals("en", "roman")


def test_a_whole_word_gives_way_to_the_narrow_form_on_a_crowded_sheet():
    assert Numerals("km").millimetres(50) == "50\u00a0មម"


def test_the_unit_of_an_amount_is_never_narrowed_since_it_could_be_misread():
    assert Numerals("am").amount("10 ml") == "10\u00a0ሚሊ\u00a0ሊትር"


def test_a_unit_is_written_in_the_script_of_the_locale_where_cldr_can():
    assert Numerals("my").seconds(20) == "၂၀\u00a0စက္ကန့်"


def test_no_locale_shows_an_identifier_of_a_unit():
    for tag in ("am", "ar", "bn", "de", "fa", "fr", "hi", "my", "ru", "sw", "ta", "th", "ur", "zh"):
        numerals = Numerals(tag)
        shown = [numerals.seconds(20), numerals.seconds(20, long=True), numerals.millimetres(50)]
        shown += [
            numerals.amount(f"10 {unit}") for unit in ("ml", "l", "g", "kg", "cm", "m", "min", "h", "ppm")
        ]
        assert not any("-" in text or "duration" in text for text in shown), (tag, shown)


def test_autonyms_stand_with_a_capital_where_the_script_has_one():
    names = {tag: autonym(tag) for tag in ("en", "fr", "ar", "am", "hi", "bn", "ru")}
    assert names == {
        "en": "English",
        "fr": "Français",
        "ar": "العربية",
        "am": "አማርኛ",
        "hi": "हिन्दी",
        "bn": "বাংলা",
        "ru": "Русский",
    }


def test_a_language_without_a_name_is_called_by_its_tag():
    assert autonym("qaa") == "qaa"


def test_arabic_of_a_country_keeps_the_numerals_of_that_country():
    assert default_numerals("ar") == "arab"
    assert default_numerals("ar-MA") == "latn"
    assert default_numerals("ar-EG") == "arab"
