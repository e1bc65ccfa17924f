"""Numbers and times in texts, whether typed in figures or spelt out (CLDR, rule-based number formats)."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

from babel.numbers import format_decimal
from babel.units import format_unit
from icu4py.messageformat import MessageFormat

from signage.ground.language import language_of
from signage.words.meaning.phrases import words_of
from signage.words.numerals import cldr_locale
from signage.words.placeholders import without_placeholders

_SPELT = (*range(2, 121), 180, 240, 300, 600, 900, 1000)
"""Numbers looked for in words: all that a step may count or time. One is an article in many languages."""

_RULE_SETS = (
    "", ",%spellout-numbering", ",%spellout-cardinal", ",%spellout-cardinal-masculine",
    ",%spellout-cardinal-feminine", ",%spellout-cardinal-neuter",
)  # fmt: skip

_BESIDE_CLDR = {
    "am": {
        "ሶስት": 3, "ሀያ": 20, "ሃያ": 20, "ሰላሳ": 30, "አርባ": 40, "ሃምሳ": 50, "ሀምሳ": 50, "ስልሳ": 60, "ስድሳ": 60,
        "ሰባ": 70, "ሰማንያ": 80, "ዘጠና": 90, "መቶ": 100,
    },
    "ar": {
        "اثنان": 2, "اثنين": 2, "اثنتين": 2, "ثلاث": 3, "أربع": 4, "خمس": 5, "ست": 6, "سبع": 7, "ثماني": 8,
        "ثمان": 8, "تسع": 9, "عشر": 10, "عشرين": 20, "ثلاثين": 30, "أربعين": 40, "خمسين": 50, "ستين": 60,
        "سبعين": 70, "ثمانين": 80, "تسعين": 90,
    },
    "bn": {
        "দুই": 2, "তিন": 3, "চার": 4, "পাঁচ": 5, "ছয়": 6, "সাত": 7, "আট": 8, "নয়": 9, "দশ": 10, "বিশ": 20,
        "কুড়ি": 20, "ত্রিশ": 30, "চল্লিশ": 40, "পঞ্চাশ": 50, "ষাট": 60, "নব্বই": 90,
    },
    "en": {"a dozen": 12, "half a minute": 30},
    "hi": {"तीस": 30, "साठ": 60},
}  # fmt: skip
"""Everyday words and other cases of a number that CLDR does not spell out (from memory)."""

_ALSO_OTHER_WORDS = {
    "fr": frozenset({"neuf"}),
    "am": frozenset({"አስር"}),
    "bn": frozenset({"নয়", "সাত"}),
    "hi": frozenset({"सात", "नौ", "छह"}),
    "ar": frozenset({"سبع", "ست"}),
}
"""Number words that are other words too (fr neuf: new; am አስር: tie); they count before a unit only."""

_UNITS = {"duration-second": 1, "duration-minute": 60, "duration-hour": 3600}
_SYMBOLS = {"s": 1, "sec": 1, "secs": 1, "min": 60, "mins": 60, "h": 3600}
"""Symbols of the SI and their common variants, read in every language."""

_FIGURES = re.compile(r"\d+(?:[.,]\d+)?")
_Width = Literal["long", "short"]

_SHORTEST_ABBREVIATION = 4
"""Signs, its full stop among them, below which a shortened unit may be another word (Hindi से॰, of)."""

_MORE_DUALS = {"ar": {"ثانيتين": 2, "دقيقتين": 120, "ساعتين": 7200}}
"""Duals in a case that CLDR does not list (from memory)."""

_LONGEST_NUMBER = 4
"""Words of a number spelt out."""


@dataclass(frozen=True, slots=True)
class Found:
    """A number in a text. ``seconds`` is its time where a unit of time follows it."""

    value: float
    seconds: float | None
    is_spelt: bool
    is_ambiguous: bool
    text: str


@lru_cache(maxsize=8192)
def numbers_in(text: str, tag: str) -> tuple[Found, ...]:
    """The numbers of a text, in figures of any script and in words of the language."""
    found: list[Found] = []
    units, duals = _units(tag)
    spelt = _spellings(tag)
    other_words = _ALSO_OTHER_WORDS.get(language_of(tag), frozenset())
    words = _with_figures_apart(without_placeholders(text), tag)
    index = 0
    while index < len(words):
        value, length = _number_at(words, index, spelt)
        if value is None:
            if words[index] in duals:
                found.append(
                    Found(2, duals[words[index]], is_spelt=True, is_ambiguous=False, text=words[index])
                )
            index += 1
            continue
        written = " ".join(words[index : index + length])
        before = words[index - 1] if index > 0 else ""
        index += length
        factor, unit = _unit_at(words, index, units)
        factor = factor or (units.get(before, 0) if before not in _SYMBOLS else 0)
        seconds = value * factor if factor else None
        is_spelt = not written[0].isdecimal()
        shown = f"{written} {unit}".strip()
        found.append(Found(value, seconds, is_spelt, written in other_words, shown))
    return tuple(found)


def _with_figures_apart(text: str, tag: str) -> list[str]:
    """The words of a text, each figure with its decimals a word of its own."""
    words: list[str] = []
    start = 0
    for match in _FIGURES.finditer(text):
        words += words_of(text[start : match.start()], tag).split()[:-1]
        words.append(match.group())
        start = match.end()
    return words + words_of(text[start:], tag).split()


def _number_at(words: list[str], index: int, spelt: dict[str, int]) -> tuple[float | None, int]:
    if words[index][0].isdecimal():
        return float(words[index].replace(",", ".")), 1
    for length in range(min(_LONGEST_NUMBER, len(words) - index), 0, -1):
        value = spelt.get(" ".join(words[index : index + length]))
        if value is not None:
            return value, length
    return None, 1


def _unit_at(words: list[str], index: int, units: dict[str, int]) -> tuple[int, str]:
    """The factor of the unit of time that follows a number; 0 where none does."""
    for length in (2, 1):
        unit = " ".join(words[index : index + length])
        if unit in units:
            return units[unit], unit
    return 0, ""


@lru_cache(maxsize=64)
def _spellings(tag: str) -> dict[str, int]:
    """Each spelling of a number in the language, as its words."""
    language = language_of(tag)
    found: dict[str, int] = {}
    for rules in _RULE_SETS:
        spell = MessageFormat(f"{{n,spellout{rules}}}", language)
        if language != "en" and spell.format({"n": 3}) == "three":
            break
        for number in _SPELT:
            spelling = words_of(spell.format({"n": number}).replace("\u00ad", ""), tag)
            found.setdefault(spelling.strip(" ."), number)
    for word, number in _BESIDE_CLDR.get(language, {}).items():
        found.setdefault(words_of(word, tag).strip(" ."), number)
    return {spelling: number for spelling, number in found.items() if not spelling[:1].isdecimal()}


@lru_cache(maxsize=64)
def _units(tag: str) -> tuple[dict[str, int], dict[str, int]]:
    """Words of units of time with their seconds, and words that hold a two as well, such as Arabic duals."""
    units, duals = dict(_SYMBOLS), dict(_MORE_DUALS.get(language_of(tag), {}))
    locale = cldr_locale(tag)
    for unit, width, sample, seconds in _unit_forms() if locale is not None else ():
        form = format_unit(sample, unit, width, locale=locale)
        bare = form.replace(format_decimal(sample, locale=locale), "")
        word = words_of(bare, tag).removesuffix(" . ").strip()
        if word.endswith(".") and len(word) <= _SHORTEST_ABBREVIATION:
            continue
        word = word.strip(" .")
        if word and unit not in bare and not re.search(r"\d", word):
            if sample == 2 and bare == form:
                duals[word] = 2 * seconds
            units.setdefault(word, seconds)
    return units, duals


def _unit_forms() -> Iterator[tuple[str, _Width, int, int]]:
    widths: tuple[_Width, ...] = ("long", "short")
    for unit, seconds in _UNITS.items():
        for width in widths:
            for sample in (2, 1, 3, 11, 20, 100):
                yield unit, width, sample, seconds
