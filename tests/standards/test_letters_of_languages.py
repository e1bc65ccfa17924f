"""Letters of languages and unseen characters against CLDR and the UCD, as ICU carries them."""

import unicodedata

from icu_reference import icu_letters, icu_with_property

from signage.ground.language import script_of
from signage.words.hygiene import letters
from signage.words.hygiene.unseen import IGNORABLE

LOOK_ALIKE = {"ك": "ک", "ي": "یې", "ى": "یي", "ک": "ك", "ی": "يى", "ه": "ہھە", "ې": "ی"}
"""Arabic letters that look the same alone or in the middle of a word (Unicode confusables, from memory)."""

OTHER_LANGUAGES = {"uk": "ъыэё", "bg": "ыэѐёѣѫ", "bn": "ৰৱ", "as": "র", "mn": "җһӊә"}
"""Letters that CLDR lists as auxiliary and that are those of a neighbour in the same script."""

WITHOUT_LATIN = "abcdefghijklmnopqrstuvwxyz"


def wanted_letters(tag):
    main = icu_letters(tag)
    if script_of(tag) == "Latn":
        return main - set(WITHOUT_LATIN)
    more = icu_letters(tag, auxiliary=True) - set(OTHER_LANGUAGES.get(tag, ""))
    return main | {sign for sign in more if not set(LOOK_ALIKE.get(sign, "")) & main}


def test_the_letters_of_each_language_are_those_of_cldr():
    """Up to two letters a language, since the exemplars of CLDR are mended from release to release."""
    dotted = {sign for sign in map(chr, range(0x0958, 0x09E0)) if unicodedata.decomposition(sign)}
    tatweel = {"\u0640"}
    far = {}
    for tag in letters._LETTERS:
        difference = (letters.letters_of(tag) ^ wanted_letters(tag)) - dotted - tatweel
        if len(difference) > 2:
            far[tag] = difference
    assert far == {}


def test_no_language_lists_a_letter_of_another_script():
    for tag in letters._LETTERS:
        for sign in letters.letters_of(tag):
            assert letters.script(sign) in {script_of(tag), "Zyyy"}, (tag, sign)


def test_ignorable_characters_are_those_of_the_unicode_character_database():
    default_ignorable = 5  # UCHAR_DEFAULT_IGNORABLE_CODE_POINT of uchar.h
    assert icu_with_property(default_ignorable) == IGNORABLE
