"""Digits, separators and unit symbols.

Expected values: digits of CLDR supplemental/numberingSystems.xml (the strings below are from memory, and
each is checked against the Unicode Character Database of Python); separators and unit patterns of CLDR
common/main; SI Brochure, 9th edition, 5.4.3 for the symbol of the second and the space before it.
"""

import unicodedata
from datetime import date

import pytest
from babel import Locale
from babel.dates import format_date

from signage.words.numerals import ZERO_OF_NUMERALS, Numerals, default_numerals, unit_words

DIGITS = {
    "latn": "0123456789",
    "arab": "٠١٢٣٤٥٦٧٨٩",
    "arabext": "۰۱۲۳۴۵۶۷۸۹",
    "deva": "०१२३४५६७८९",
    "beng": "০১২৩৪৫৬৭৮৯",
    "thai": "๐๑๒๓๔๕๖๗๘๙",
    "mymr": "၀၁၂၃၄၅၆၇၈၉",
    "khmr": "០១២៣៤៥៦៧៨៩",
    "telu": "౦౧౨౩౪౫౬౭౮౯",
    "tamldec": "௦௧௨௩௪௫௬௭௮௯",
}


@pytest.mark.parametrize(("system", "digits"), DIGITS.items())
def test_numbers_are_written_in_the_digits_of_the_system(system, digits):
    assert "".join(Numerals("en", system).number(value) for value in range(10)) == digits


@pytest.mark.parametrize(("system", "zero"), ZERO_OF_NUMERALS.items())
def test_each_system_is_ten_decimal_digits_of_unicode(system, zero):
    signs = [chr(zero + value) for value in range(10)]
    assert [unicodedata.category(sign) for sign in signs] == ["Nd"] * 10
    assert [unicodedata.decimal(sign) for sign in signs] == list(range(10))


@pytest.mark.parametrize(
    ("tag", "system"),
    [
        ("en", "latn"),
        ("fr", "latn"),
        ("hi", "latn"),
        ("am", "latn"),
        ("bn", "beng"),
        ("fa", "arabext"),
        ("my", "mymr"),
    ],
)
def test_a_locale_writes_in_its_default_numbering_system(tag, system):
    assert default_numerals(tag) == system


def test_arabic_without_a_country_writes_in_its_native_digits():
    assert Numerals("ar").number(2027) == "٢٬٠٢٧"
    assert Numerals("ar", "latn").number(20) == "20"


@pytest.mark.parametrize(
    ("tag", "written"),
    [
        ("en", "12,345.5"),
        ("fr", "12\u202f345,5"),
        ("de", "12.345,5"),
        ("hi", "12,345.5"),
        ("ar", "١٢٬٣٤٥٫٥"),
        ("fa", "۱۲٬۳۴۵٫۵"),
        ("bn", "১২,৩৪৫.৫"),
    ],
)
def test_separators_are_those_of_the_locale(tag, written):
    assert Numerals(tag).number(12345.5) == written


@pytest.mark.parametrize(("tag", "lakh"), [("hi", "12,34,567"), ("bn", "১২,৩৪,৫৬৭"), ("en", "1,234,567")])
def test_large_numbers_are_grouped_as_in_the_locale(tag, lakh):
    assert Numerals(tag).number(1234567) == lakh


@pytest.mark.parametrize(
    ("tag", "written"),
    [("en", "20\u00a0s"), ("de", "20\u00a0s"), ("fr", "20\u202fs"), ("sw", "20\u00a0s")],
)
def test_latin_script_writes_the_si_symbol_after_a_no_break_space(tag, written):
    assert Numerals(tag).seconds(20) == written


@pytest.mark.parametrize(
    ("tag", "written"),
    [
        ("ar", "٢٠\u00a0ث"),
        ("hi", "20\u00a0से॰"),
        ("am", "20\u00a0ሰከ"),
        ("bn", "২০\u00a0সেকেন্ড"),
        ("zh", "20秒"),
    ],
)
def test_other_scripts_write_the_short_form_of_cldr(tag, written):
    assert Numerals(tag).seconds(20) == written


@pytest.mark.parametrize(
    ("tag", "written"),
    [
        ("en", "10\u00a0min"),
        ("fr", "10\u00a0min"),
        ("ar", "١٠\u00a0د"),
        ("am", "10\u00a0ደቂቃ"),
        ("zh", "10分钟"),
    ],
)
def test_whole_minutes_are_written_in_minutes(tag, written):
    assert Numerals(tag).seconds(600) == written


@pytest.mark.parametrize("seconds", [60, 90, 119, 150])
def test_what_is_no_whole_number_of_minutes_stays_in_seconds(seconds):
    assert Numerals("en").seconds(seconds) == f"{seconds}\u00a0s"


@pytest.mark.parametrize(
    ("tag", "written"),
    [
        ("fr", "31 mai 2027"),
        ("hi", "31 मई 2027"),
        ("am", "31 ሜይ 2027 እ.ኤ.አ"),
        ("ar", "٣١ مايو ٢٠٢٧"),
        ("de", "31. Mai 2027"),
    ],
)
def test_dates_have_the_month_in_words_and_the_digits_of_the_locale(tag, written):
    assert Numerals(tag).date(date(2027, 5, 31)) == written


def test_amharic_dates_say_that_the_year_is_not_of_the_ethiopic_calendar():
    """CLDR common/main/am.xml, through Babel: Latin digits, the era after the year, and ዓ/ም for it, which
    Ethiopian dates bear too; እ.ኤ.አ (of the European reckoning) is common practice, no source."""
    day = date(2027, 5, 31)
    amharic = Locale("am")
    stem, mark = Numerals("am").date(day).rsplit(" ", 1)
    assert stem == format_date(day, "long", locale="am")
    assert amharic.default_numbering_system == "latn"
    assert amharic.datetime_skeletons["GyMMMd"].pattern.endswith("y G")
    assert mark == "እ.ኤ.አ" not in amharic.eras["abbreviated"].values()
    unmarked = {"en": "en_001", "fr": "fr", "hi": "hi", "sw": "sw"}
    assert all(Numerals(tag).date(day) == format_date(day, "long", locale=unmarked[tag]) for tag in unmarked)


def test_parts_per_million_under_both_names_of_the_unit():
    """CLDR 48 calls ``concentr-permillion`` now ``concentr-part-per-1e6``; the words stayed (common/main)."""
    written = {tag: Numerals(tag).amount("500 ppm") for tag in ("en", "fr", "ar", "hi", "am", "bn")}
    assert written == {
        "en": "500\u00a0ppm",
        "fr": "500\u202fppm",
        "ar": "٥٠٠\u00a0جزء/مليون",
        "hi": "500\u00a0हिस्सा\u00a0प्रति\u00a0दस\u00a0लाख",
        "am": "500\u00a0ppm",
        "bn": "৫০০\u00a0ভাগ,\u00a0প্রতি\u00a0মিলিয়নে",
    }
    assert not [word for tag in written for word in unit_words(tag) if "concentr" in word]


def test_a_plural_form_that_a_language_leaves_out_is_written_like_its_form_other():
    """Lateral inheritance, UTS #35 part 1; the titles of the units are ``horas``, ``litry`` and ``Liter``."""
    assert Numerals("es").amount("1 h") == "1\u00a0h"
    assert Numerals("pl").amount("5 l") == "5\u00a0l"
    assert Numerals("de").amount("1 l") == "1\u00a0l"
