"""Script and direction of every language that CLDR knows, against CLDR's locale data, ICU and the UCD."""

import unicodedata

from babel import Locale, localedata
from babel.core import get_global
from fontTools.unicodedata import script
from icu_reference import icu_is_right_to_left

from signage.ground import language
from signage.ground.language import is_right_to_left, script_of

LIKELY = {
    key.replace("_", "-"): value for key, value in get_global("likely_subtags").items() if key[:3] != "und"
}


def test_the_scripts_that_run_from_right_to_left_are_those_of_the_unicode_character_database():
    """Bidi classes of letters; scripts that this Python's Unicode lacks are left to the reader of the UCD."""
    letters: dict[str, list[bool]] = {}
    for code in range(0x20000):
        sign = chr(code)
        if unicodedata.category(sign).startswith("L"):
            is_turned = unicodedata.bidirectional(sign) in {"R", "AL"}
            letters.setdefault(str(script(sign)), []).append(is_turned)
    turned = {name for name, found in letters.items() if sum(found) * 2 > len(found)}
    known = letters.keys()
    assert len(turned) >= 35
    assert turned == language._RIGHT_TO_LEFT_SCRIPTS & known


def test_every_locale_of_cldr_has_the_direction_that_its_data_say():
    seen = 0
    for identifier in localedata.locale_identifiers():
        if len(identifier.split("_")[-1]) < 4 and "_" in identifier:
            continue  # a country adds nothing to the letters; reading all 800 files takes seconds
        is_turned = Locale.parse(identifier).text_direction == "rtl"
        assert is_right_to_left(identifier.replace("_", "-")) == is_turned, identifier
        seen += is_turned
    assert seen >= 20


def test_every_language_of_the_likely_subtags_has_its_script():
    """UTS #35, "Likely Subtags": 7 700 languages, some by country."""
    newer = language._SINCE_CLDR_44
    aliases = get_global("language_aliases")
    compared = 0
    for tag, likely in LIKELY.items():
        if tag.split("-")[0] in aliases or tag.replace("-", "_") in newer:
            continue
        assert script_of(tag) == likely.split("_")[1], tag
        compared += 1
    assert compared > 7000


def test_every_language_of_the_likely_subtags_has_the_direction_that_icu_gives_it():
    turned = 0
    for tag, likely in LIKELY.items():
        if is_right_to_left(likely.replace("_", "-")) != icu_is_right_to_left(likely):
            raise AssertionError(tag)
        turned += is_right_to_left(tag)
    assert turned > 220


def test_what_older_cldr_lacks_is_what_a_newer_one_says():
    """Each entry is that of this Babel's CLDR, or of a language that its CLDR does not know well yet."""
    likely = get_global("likely_subtags")
    if len(language._SINCE_CLDR_44.keys() - likely.keys()) == 0:
        for key, value in language._SINCE_CLDR_44.items():
            assert likely[key].split("_")[1] == value, key
