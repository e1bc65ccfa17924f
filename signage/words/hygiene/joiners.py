"""Where invisible characters have a use in the spelling of a language, and where they have none."""

from __future__ import annotations

import unicodedata

from fontTools.unicodedata import script

from signage.ground.language import language_of, script_of
from signage.words.hygiene.unseen import BRAILLE_BLANK, IGNORABLE

_ZERO_WIDTH_SPACE, _NON_JOINER, _JOINER, _WORD_JOINER = "\u200b", "\u200c", "\u200d", "\u2060"
_DIRECTION_MARKS = frozenset("\u061c\u200e\u200f\u2066\u2067\u2068\u2069\u202a\u202b\u202c\u202d\u202e")
"""Signs of direction have a use between words; embeddings and unpaired isolates have rules of their own."""
_UNSPACED = frozenset({"Thai", "Laoo", "Khmr", "Mymr", "Tibt", "Lana", "Tale", "Talu", "Java", "Bali"})
"""Scripts that write words without spaces: U+200B shows where a line may end (Unicode, chapter 23.2)."""
_JOINING = frozenset({"Arab", "Syrc", "Mong", "Nkoo", "Mand", "Mani", "Adlm", "Rohg", "Phag"})
"""Scripts whose letters join."""
_WITHOUT_NON_JOINER = frozenset({"ar", "acm", "aeb", "ajp", "apc", "arq", "ars", "ary", "arz"})
"""Arabic and its spoken forms never part letters that join; Persian, Urdu, Kurdish and others do."""
_WITH_VARIANTS = frozenset({"Hani", "Mong", "Phag", "Mymr", "Zyyy"})
"""Scripts whose characters, and symbols, that variation selectors have been defined for."""
_VIRAMA = 9
"""Canonical_Combining_Class of signs that take the vowel from a consonant (UCD)."""


def misplaced(text: str, tag: str) -> int | None:
    """The index of the first invisible character that has no use where it stands; None for a clean text."""
    if text.isascii():
        return None
    home = script_of(tag)
    for index, sign in enumerate(text):
        if (sign in IGNORABLE and sign not in _DIRECTION_MARKS and sign < "\U000e0000") or (
            sign == BRAILLE_BLANK
        ):
            before = text[index - 1] if index else ""
            after = text[index + 1] if index + 1 < len(text) else ""
            is_parting = sign == _NON_JOINER and language_of(tag) in _WITHOUT_NON_JOINER
            if is_parting or not _has_a_use(sign, before, after, home):
                return index
    return None


def _has_a_use(sign: str, before: str, after: str, home: str) -> bool:
    if sign in {_NON_JOINER, _JOINER}:
        return _shapes_letters(before, after)
    if sign == _ZERO_WIDTH_SPACE:
        return home in _UNSPACED
    if sign == _WORD_JOINER:
        is_inside = bool(before and after) and _is_letter(before) and _is_letter(after)
        return home in _UNSPACED or (bool(before and after) and not is_inside)
    if "\ufe00" <= sign <= "\ufe0f" or "\u180b" <= sign <= "\u180f":
        return bool(before) and script(before) in _WITH_VARIANTS and not before.isspace()
    return False


def _shapes_letters(before: str, after: str) -> bool:
    """Whether a joiner or non-joiner can change a shape: beside a virama, or between letters that join.

    RFC 5892, appendix A.1 and A.2, with what these leave out: the joiner before a virama (Bengali and
    Kannada ra), and the habit of Persian typists to set a non-joiner after any letter.
    """
    if any(unicodedata.combining(sign) == _VIRAMA for sign in (before, after) if sign):
        return True
    return bool(before and after) and script(before) in _JOINING and script(after) in {*_JOINING, "Zyyy"}


def _is_letter(sign: str) -> bool:
    return unicodedata.category(sign)[0] in "LM"
