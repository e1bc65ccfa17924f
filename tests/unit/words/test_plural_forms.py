from gettext import c2py

from babel import Locale
from babel.localedata import locale_identifiers

from signage.words.plural_forms import CATEGORIES, plural_forms

WHOLE_NUMBERS = [
    *range(201),
    *range(980, 1020),
    *range(1000, 200_001, 1000),
    *range(999_980, 1_000_020),
    2_000_000,
    10**9,
]


def test_gettext_sends_every_number_to_the_category_that_cldr_gives_it_in_every_language():
    """The rule is evaluated by CPython's gettext, CLDR's by Babel."""
    wrong = {}
    languages = sorted({tag.partition("_")[0] for tag in locale_identifiers()} - {"root"})
    for tag in languages:
        category = Locale.parse(tag).plural_form
        met = {category(number) for number in WHOLE_NUMBERS}
        count, expression = plural_forms(tag).removeprefix("nplurals=").rstrip(";").split("; plural=")
        form = c2py(expression)
        names = [name for name in CATEGORIES if name in met]
        if int(count) != len(names) or any(names[form(n)] != category(n) for n in WHOLE_NUMBERS):
            wrong[tag] = plural_forms(tag)
    assert len(languages) > 200
    assert wrong == {}


def test_the_same_rule_is_always_written_alike():
    """CLDR wrote ``i = 0,1`` for French and since release 48 ``i = 0..1``; a catalogue must not change."""
    assert plural_forms("fr") == "nplurals=3; plural=(n <= 1 ? 0 : n != 0 && n % 1000000 == 0 ? 1 : 2);"
    assert plural_forms("de") == "nplurals=2; plural=(n == 1 ? 0 : 1);"
    assert plural_forms("ja") == "nplurals=1; plural=0;"


def test_an_unknown_language_has_no_plural_rule():
    assert plural_forms("zz") is None
