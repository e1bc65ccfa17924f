"""What a text becomes when its letters are shaped: dotted circles and empty boxes that nobody typed."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from functools import lru_cache

from signage.ground.errors import MissingFromMachineError, RefusedError
from signage.text.font_set import FontSet
from signage.text.fonts import face
from signage.text.paragraph import Paragraph, shape_paragraph
from signage.words.hygiene.unseen import is_unseen
from signage.words.placeholders import without_placeholders

Fault = tuple[str, str]

_DOTTED_CIRCLE = "\u25cc"
_NORMAL_WEIGHT = 400
_ONE_VOWEL_A_LETTER = ("DEVANAGARI", "BENGALI", "GUJARATI", "GURMUKHI", "ORIYA")
"""Scripts, as they begin the names of characters, in which a letter in form C has one vowel sign at most
(Unicode, chapter 12); shapers set two of them without a word."""


def faults_of_shaping(text: str, tag: str, fonts: FontSet) -> Iterator[Fault]:
    """Rules WD-30 and WD-37, in the fonts that the sheets are set in.

    A shaper puts a dotted circle under a sign that has no letter (OpenType, shaping of Indic and complex
    scripts); for other scripts the sign's neighbours decide.
    """
    bare = without_placeholders(text)
    if bare.isascii():
        return
    try:
        paragraph = shape_paragraph(bare, tag, _NORMAL_WEIGHT, fonts)
    except (MissingFromMachineError, RefusedError):
        paragraph = None
    lonely = _mark_without_letter(bare)
    if lonely is not None:
        name = unicodedata.name(lonely, "without a name").lower()
        yield "WD-30", f"the sign U+{ord(lonely):04X} ({name}) has no letter of its own"
    elif _DOTTED_CIRCLE in bare:
        yield "WD-30", "a dotted circle (U+25CC) stands in the text, the sign of a letter that is not there"
    elif paragraph is not None and _has_dotted_circle(paragraph):
        yield "WD-30", "a vowel sign or mark has no letter it can stand on: a dotted circle would be printed"
    missing = paragraph.missing if paragraph is not None else ()
    seen = [glyph for glyph in missing if not is_unseen(glyph.character)]
    if seen:
        glyph = seen[0]
        yield "WD-37", f"no font has '{glyph.character}' (U+{glyph.code_point:04X})"


def _mark_without_letter(text: str) -> str | None:
    before, last = " ", " "
    for sign in unicodedata.normalize("NFC", text):
        category = unicodedata.category(sign)
        if category in {"Mn", "Mc"} and unicodedata.category(before)[0] not in "LMNS":
            return sign
        if sign != last and _is_single_vowel(sign) and _is_single_vowel(last):
            return sign
        last = sign
        if not (category == "Cf" or category.startswith("M")) or before == " ":
            before = sign
    return None


@lru_cache(maxsize=4096)
def _is_single_vowel(sign: str) -> bool:
    name = unicodedata.name(sign, "")
    return name.startswith(_ONE_VOWEL_A_LETTER) and " VOWEL SIGN " in name


def _has_dotted_circle(paragraph: Paragraph) -> bool:
    for shaped in paragraph.items:
        opened = face(shaped.item.font)
        if ord(_DOTTED_CIRCLE) not in opened.coverage:
            continue
        circle = opened.font.get_nominal_glyph(ord(_DOTTED_CIRCLE))
        if any(glyph.id == circle for glyph in shaped.glyphs):
            return True
    return False
