"""What can be wrong with a single translation, whatever it says: one function, one rule."""

from __future__ import annotations

import re
import unicodedata
from collections import Counter
from collections.abc import Collection, Iterator

from fontTools.unicodedata import script

from signage.ground.quotation import LONGEST_QUOTE, quoted, shortened
from signage.text.font_set import FontSet
from signage.words.catalogue import Entry
from signage.words.hygiene.checks import faults_of_text
from signage.words.hygiene.other_language import faults_of_language, faults_of_small_words
from signage.words.hygiene.unseen import is_blank
from signage.words.placeholders import (
    has_stray_brace,
    has_unpaired_isolate,
    placeholder_names,
    without_placeholders,
)

_NUMBER = re.compile(r"\d+")
_WORD = re.compile(r"[^\W\d_]+(?:[\u0300-\u036f]+[^\W\d_]*)*")
_LOOK_ALIKE_SCRIPTS = frozenset({"Latn", "Grek", "Cyrl"})
_UNSPACED_SCRIPTS = frozenset({"Thai", "Laoo", "Khmr", "Mymr", "Hani", "Hira", "Kana", "Tibt"})
_NO_SCRIPT = frozenset({"Zyyy", "Zinh", "Zzzz"})

_LONGEST_CODE = 4
"""Letters of a code in capitals, such as PPE; DRAFT is a word."""

_UNREADABLE = frozenset({"WD-21", "WD-22", "WD-23", "WD-24"})
"""Rules whose faults make it idle to ask for the language of a text."""

Fault = tuple[str, str]
"""Code of the rule and what was found."""


def faults_of_translation(
    entry: Entry, tag: str, source_tag: str, fonts: FontSet, names: Collection[str] = ()
) -> Iterator[Fault]:
    """All faults of a translation that is there, whatever its step does.

    Rules WD-4 to WD-7, WD-11 to WD-13, WD-15, WD-16 and those of clean text. ``names`` are words of another
    script or language, in small letters, that the glossary of the locale uses.
    """
    if is_blank(entry.translation):
        yield "WD-4", "the translation holds only spaces or invisible characters"
        return
    same = tuple(_same_as_source(entry))
    yield from same
    yield from _placeholders(entry)
    yield from _typed_numbers(entry)
    yield from _characters(entry.translation)
    yield from _marks(entry)
    unclean = tuple(faults_of_text(entry.translation, tag, fonts, entry.source))
    yield from unclean
    is_readable = all(code not in _UNREADABLE for code, _ in unclean)
    if is_readable and not same and not entry.marks.is_same_as_source:
        yield from faults_of_language(entry.translation, tag, entry.source, source_tag, names)


def faults_of_source(text: str, tag: str, fonts: FontSet) -> Iterator[Fault]:
    """All faults of a source text that can be seen without its step."""
    if is_blank(text):
        yield "WD-4", "the text holds only spaces or invisible characters"
        return
    yield from _characters(text)
    unclean = tuple(faults_of_text(text, tag, fonts))
    yield from unclean
    if all(code not in _UNREADABLE for code, _ in unclean):
        yield from faults_of_small_words(text, tag)


def _same_as_source(entry: Entry) -> Iterator[Fault]:
    letters = [sign for sign in without_placeholders(entry.source) if sign.isalpha()]
    is_word = (len(letters) > 1 and any(sign.islower() for sign in letters)) or len(letters) > _LONGEST_CODE
    if not is_word or entry.marks.is_same_as_source:
        return
    if entry.translation == entry.source:
        yield "WD-5", f"the translation is the source text {quoted(entry.source)}"
    elif _letters_of(entry.translation) == _letters_of(entry.source):
        yield "WD-5", f"the translation {quoted(entry.translation)} has the letters of the source text"


def _letters_of(text: str) -> str:
    """The letters and numbers of a text in small letters, its placeholders as they are."""
    return "".join(sign for sign in text.casefold() if sign.isalnum() or sign in "{}")


def _placeholders(entry: Entry) -> Iterator[Fault]:
    wanted, found = placeholder_names(entry.source), placeholder_names(entry.translation)
    parts = [
        *(f"{{{name}}} is missing" for name in (wanted - found).elements()),
        *(f"{{{name}}} is too much" for name in (found - wanted).elements()),
    ]
    if has_stray_brace(entry.translation):
        parts.append("a brace stands outside any placeholder")
    if parts:
        yield "WD-6", "; ".join(parts)


def _typed_numbers(entry: Entry) -> Iterator[Fault]:
    extra = _numbers(entry.translation) - _numbers(entry.source)
    if extra:
        listed = shortened(", ".join(extra.elements()), LONGEST_QUOTE)
        yield "WD-7", f"the translation holds {listed}, the source text does not"


def _numbers(text: str) -> Counter[str]:
    """The numbers typed in a text, in digits of any script (Unicode general category Nd).

    As text without zeros before them, since a number of any length may have been typed.
    """
    found = _NUMBER.findall(without_placeholders(text))
    plain = ("".join(str(unicodedata.decimal(digit)) for digit in digits) for digits in found)
    return Counter(digits.lstrip("0") or "0" for digits in plain)


def _characters(text: str) -> Iterator[Fault]:
    if not unicodedata.is_normalized("NFC", text):
        normal = unicodedata.normalize("NFC", text)
        i = next((i for i, (a, b) in enumerate(zip(text, normal, strict=False)) if a != b), len(normal))
        yield "WD-11", f"character {i + 1} of the text, U+{ord(text[i]):04X}, is not in form C"
    if has_unpaired_isolate(text):
        yield "WD-12", "a direction isolate of the text has no partner"
    for match in _WORD.finditer(without_placeholders(text)):
        scripts = {script(sign) for sign in match.group()} - _NO_SCRIPT
        if len(scripts) > 1 and scripts & _LOOK_ALIKE_SCRIPTS and not scripts & _UNSPACED_SCRIPTS:
            yield "WD-13", f"'{match.group()}' mixes the scripts {', '.join(sorted(scripts))}"


def _marks(entry: Entry) -> Iterator[Fault]:
    marks = entry.marks
    if marks.checked and marks.translated and marks.checked.person == marks.translated.person:
        yield "WD-15", f"{marks.checked.person} both translated and checked the entry"
    for comment in marks.unreadable:
        yield "WD-16", f"the comment '{comment}' is no mark"
