"""Plural categories and gettext plural rules.

Expected values: CLDR plural rules (supplemental/plurals.xml, the same in releases 45 to 48 for these
languages; whole numbers in the order zero, one, two, few, many, other), and CPython's
Lib/test/test_gettext.py (PluralFormsTestCase) for the usual Arabic rule. The rules are evaluated by
CPython's gettext.
"""

from decimal import Decimal
from gettext import c2py

import pytest

from signage.words.catalogue import CatalogueKind
from signage.words.numerals import Numerals, cldr_locale
from signage.words.plural_forms import plural_forms
from signage.words.po.writer import complete_header

NUMBERS = [
    0,
    1,
    2,
    3,
    4,
    5,
    10,
    11,
    12,
    14,
    20,
    21,
    22,
    25,
    99,
    100,
    101,
    102,
    103,
    110,
    111,
    112,
    121,
    122,
    1000,
]
INDICES = {
    "ar": [0, 1, 2, 3, 3, 3, 3, 4, 4, 4, 4, 4, 4, 4, 4, 5, 5, 5, 3, 3, 4, 4, 4, 4, 5],
    "ru": [2, 0, 1, 1, 1, 2, 2, 2, 2, 2, 2, 0, 1, 2, 2, 2, 0, 1, 1, 2, 2, 2, 0, 1, 2],
    "pl": [2, 0, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 1, 2, 2, 2, 2, 1, 1, 2, 2, 2, 2, 1, 2],
    "cs": [2, 0, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2],
}
ARABIC_USUAL = [0, 1, 2, 3, 3, 3, 3, 4, 4, 4, 4, 4, 4, 4, 4, 5, 5, 5, 3, 3, 4, 4, 4, 4, 5]
ARABIC_USUAL_RULE = (
    "nplurals=6; plural=n==0 ? 0 : n==1 ? 1 : n==2 ? 2 : n%100>=3 && n%100<=10 ? 3 : n%100>=11 ? 4 : 5;"
)
FORMS = {
    **dict.fromkeys(["ar"], 6),
    **dict.fromkeys(["ru", "uk", "pl", "cs", "fr", "es", "he"], 3),
    **dict.fromkeys(["en", "de", "hi", "bn", "sw"], 2),
    **dict.fromkeys(["zh", "ja"], 1),
}
CATEGORIES = {
    "ar": {
        0: "zero",
        1: "one",
        2: "two",
        3: "few",
        11: "many",
        99: "many",
        100: "other",
        102: "other",
        103: "few",
        111: "many",
    },
    "ru": {
        0: "many",
        1: "one",
        21: "one",
        11: "many",
        2: "few",
        22: "few",
        12: "many",
        5: "many",
        101: "one",
        "1.5": "other",
    },
    "pl": {1: "one", 21: "many", 22: "few", 12: "many", 0: "many", "1.5": "other"},
    "cs": {1: "one", 4: "few", 5: "other", "1.5": "many"},
    "fr": {0: "one", 1: "one", 2: "other", 1000000: "many"},
    "cy": {0: "zero", 3: "few", 6: "many", 4: "other"},
}


def rule_of(header):
    count, rule = (part.split("=", 1)[1] for part in header.rstrip(";").split(";", 1))
    return int(count), c2py(rule)


@pytest.mark.parametrize(("tag", "indices"), INDICES.items())
def test_the_header_sends_each_number_to_its_form(tag, indices):
    _, rule = rule_of(plural_forms(tag))
    assert [rule(number) for number in NUMBERS] == indices


@pytest.mark.parametrize(("tag", "count"), FORMS.items())
def test_the_header_has_as_many_forms_as_the_language(tag, count):
    assert rule_of(plural_forms(tag))[0] == count


def test_french_counts_zero_as_one_and_has_a_form_for_millions():
    _, rule = rule_of(plural_forms("fr"))
    assert [rule(number) for number in (0, 1, 2, 999_999, 1_000_000, 3_000_000)] == [0, 0, 2, 2, 1, 1]


def test_an_arabic_file_with_the_usual_order_of_forms_keeps_it():
    header = complete_header(CatalogueKind.CONTENT, "ar", {"Plural-Forms": ARABIC_USUAL_RULE})
    _, rule = rule_of(header["Plural-Forms"])
    assert [rule(number) for number in NUMBERS] == ARABIC_USUAL


@pytest.mark.parametrize(("tag", "cases"), CATEGORIES.items())
def test_the_locale_data_in_use_has_the_categories_of_cldr(tag, cases):
    form = cldr_locale(tag).plural_form
    assert {number: form(Decimal(number)) for number in cases} == cases


# Unit patterns of duration-second, long (CLDR, common/main/<language>.xml).
LONG_SECONDS = {
    "ar": {1: "ثانية", 2: "ثانيتان", 3: "٣ ثوان", 11: "١١ ثانية", 100: "١٠٠ ثانية"},
    "ru": {1: "1 секунда", 2: "2 секунды", 5: "5 секунд", 21: "21 секунда", 22: "22 секунды"},
    "pl": {1: "1 sekunda", 2: "2 sekundy", 5: "5 sekund", 21: "21 sekund", 22: "22 sekundy"},
    "cs": {1: "1 sekunda", 4: "4 sekundy", 5: "5 sekund", 1.5: "1,5 sekundy"},
    "fr": {0: "0 seconde", 1: "1 seconde", 2: "2 secondes"},
    "en": {1: "1 second", 20: "20 seconds"},
}


@pytest.mark.parametrize(("tag", "cases"), LONG_SECONDS.items())
def test_a_time_in_full_takes_the_form_of_its_number(tag, cases):
    numerals = Numerals(tag)
    written = {number: numerals.seconds(number, long=True).replace("\u00a0", " ") for number in cases}
    assert written == cases
