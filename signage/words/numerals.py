"""Numbers, times, lengths, amounts and dates as a locale writes them: CLDR (through Babel) and its digits."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from functools import cache, lru_cache
from typing import Literal

from babel import Locale, UnknownLocaleError, localedata
from babel.core import get_global
from babel.dates import format_date
from babel.numbers import format_decimal, format_percent
from babel.units import format_unit

from signage.ground.language import language_of, script_of

NO_BREAK_SPACE = "\u00a0"

ZERO_OF_NUMERALS = {
    "latn": 0x0030, "arab": 0x0660, "arabext": 0x06F0, "nkoo": 0x07C0, "deva": 0x0966, "beng": 0x09E6,
    "guru": 0x0A66, "gujr": 0x0AE6, "orya": 0x0B66, "tamldec": 0x0BE6, "telu": 0x0C66, "knda": 0x0CE6,
    "mlym": 0x0D66, "thai": 0x0E50, "laoo": 0x0ED0, "tibt": 0x0F20, "mymr": 0x1040, "khmr": 0x17E0,
    "olck": 0x1C50, "mtei": 0xABF0, "cakm": 0x11136,
}  # fmt: skip
"""Code point of the digit zero of decimal numbering systems (CLDR, supplemental/numberingSystems.xml)."""

_READ_AS = {"en": "en-001", "en-XA": "en-001", "ar-XB": "ar"}
"""Plain English is CLDR's world English: day before month, as outside the United States."""

_OWN_NUMERALS = {"ar": "arab", "ar-XB": "arab"}
"""Arabic without a country: CLDR gives its native digits as arab, its default as latn; wards read arab."""

_ERA_MARKS = {"am": "እ.ኤ.አ"}
"""What stands after the year where readers count by another calendar too: 2027 of the Ethiopic one is seven
years away. Common practice, no source; CLDR has ዓ/ም for the Gregorian era, which Ethiopian dates bear too."""

_LONGEST_SHORT_UNIT = 4
"""Letters; a short form of CLDR longer than this gives way to its narrow form on a crowded sheet."""

_MINUTE = 60
"""Seconds."""

_UNITS = {
    "ml": "volume-milliliter", "l": "volume-liter", "g": "mass-gram", "kg": "mass-kilogram",
    "mm": "length-millimeter", "cm": "length-centimeter", "m": "length-meter",
    "s": "duration-second", "min": "duration-minute", "h": "duration-hour", "ppm": "concentr-part-per-1e6",
}  # fmt: skip
_FORMER_UNITS = {"ppm": "concentr-permillion"}
"""Names of units before CLDR 48, for an older Babel."""
_AMOUNT = re.compile(r"(\d+(?:\.\d+)?)\s*(\w+|%)?")
_PLURAL_SAMPLES = (0, 1, 2, 3, 11, 20, 100, Decimal("1.5"))
"""One number of each plural category that CLDR knows in any language of the fonts."""

_LOCALES_AT_HAND = 16
"""Languages whose data are kept; Babel keeps a megabyte of each until it is told to forget them all."""

_Width = Literal["short", "narrow", "long"]


def cldr_locale(tag: str) -> Locale | None:
    """CLDR's data for a tag, or for the tag without its last parts; None where CLDR has none.

    A code that CLDR has replaced is read as its successor: Dari, prs, as fa-AF (UTS #35, "Language Aliases").
    """
    if _read_locale.cache_info().currsize >= _LOCALES_AT_HAND:
        _read_locale.cache_clear()
        getattr(localedata, "clear_caches", _do_nothing)()
    return _read_locale(tag)


def _do_nothing() -> None:
    """What a Babel that cannot forget (before 2.19) does."""


@lru_cache(maxsize=_LOCALES_AT_HAND)
def _read_locale(tag: str) -> Locale | None:
    parts = _successor(_READ_AS.get(tag, tag)).split("-")
    while parts:
        try:
            return Locale.parse("-".join(parts), sep="-")
        except (UnknownLocaleError, ValueError):
            parts.pop()
    return None


def _successor(tag: str) -> str:
    language, *rest = tag.split("-")
    successor = get_global("language_aliases").get(language.lower(), language).replace("_", "-")
    has_region = any(len(part) == 2 for part in rest)
    return "-".join((successor.split("-")[0] if has_region else successor, *rest))


def default_numerals(tag: str) -> str:
    """The numbering system a locale writes in where the library does not choose one."""
    if tag in _OWN_NUMERALS:
        return _OWN_NUMERALS[tag]
    locale = cldr_locale(tag)
    system = locale.default_numbering_system if locale is not None else "latn"
    return system if system in ZERO_OF_NUMERALS else "latn"


def autonym(tag: str) -> str:
    """The name of a language in itself (CLDR), with a capital since it stands alone; else the tag."""
    locale = cldr_locale(tag)
    name = locale.get_display_name() if locale is not None and tag not in _READ_AS else None
    if locale is not None and language_of(tag) != locale.language:
        name = locale.languages.get(str(locale), name)
    if name is None and locale is not None:
        name = Locale(locale.language).get_display_name()
    return name[0].upper() + name[1:] if name else tag


class Numerals:
    """Writes figures for one locale. ``system`` is a CLDR numbering system; None takes the locale's own.

    A language that CLDR does not know gets plain digits, SI symbols and ISO 8601 dates.
    """

    def __init__(self, tag: str, system: str | None = None) -> None:
        self.tag = tag
        self.system = system or default_numerals(tag)
        if self.system not in ZERO_OF_NUMERALS:
            raise ValueError(f"'{self.system}' is no decimal numbering system; CLDR has arab, deva, latn, …")
        self._locale = cldr_locale(tag)
        zero = ZERO_OF_NUMERALS[self.system]
        self._digits = {0x30 + i: zero + i for i in range(10)}

    def number(self, value: float | Decimal) -> str:
        """A number with the separators and digits of the locale."""
        return self._with_own_digits(self._decimal(value))

    def seconds(self, value: float, long: bool = False) -> str:
        """A time such as ``20 s``, or in full as ``20 seconds``; ``10 min`` from two whole minutes on.

        Short: in Latin script the SI symbol s or min with the space of the locale (SI Brochure, 9th
        edition, 5.4.3 and table 8); in other scripts CLDR's short form, or its narrow form where the
        short one is a whole word.
        """
        if value >= 2 * _MINUTE and value % _MINUTE == 0:
            return self._time(int(value) // _MINUTE, "min", long)
        return self._time(value, "s", long)

    def millimetres(self, value: float) -> str:
        """A length such as ``50 mm``."""
        if self._locale is None:
            return self._plain(value, "mm")
        return self._measure(value, _unit_of("mm"), long=False)

    def amount(self, text: str) -> str:
        """An amount of content, such as ``10 ml`` or ``0.5 %``, as the locale writes it.

        Raises ValueError where the text is not a number with one of the known units.
        """
        match = _AMOUNT.fullmatch(text.strip())
        symbol = match.group(2) if match is not None else None
        if match is None or not (symbol in {None, "%"} or symbol in _UNITS):
            known = ", ".join([*_UNITS, "%"])
            raise ValueError(f"'{text}' is no amount; write a number and one of the units {known}")
        value = Decimal(match.group(1))
        if symbol is None:
            return self.number(value)
        if self._locale is None:
            return self._plain(value, symbol)
        if symbol == "%":
            return self._percent(value)
        if symbol == "s":
            return self._time(float(value), symbol, long=False)
        return self._with_own_digits(_tied(self._forms(value, _unit_of(symbol), long=False)[0]))

    def date(self, day: date) -> str:
        """A Gregorian date with the name of the month; the calendar is named where it may be doubted."""
        if self._locale is None:
            return day.isoformat()
        text = self._with_own_digits(format_date(day, "long", locale=self._locale))
        mark = _ERA_MARKS.get(self._locale.language)
        return text if mark is None else f"{text} {mark}"

    def _time(self, value: float, symbol: str, long: bool) -> str:
        if self._locale is None:
            return self._plain(value, symbol)
        if long or script_of(self.tag) != "Latn":
            return self._measure(value, _unit_of(symbol), long)
        number = self._decimal(value)
        spacing = NO_BREAK_SPACE
        match = re.match(r"[\u00a0\u202f]", self._unit(value, _unit_of(symbol), "short").removeprefix(number))
        if match is not None:
            spacing = match.group()
        return self._with_own_digits(f"{number}{spacing}{symbol}")

    def _percent(self, value: Decimal) -> str:
        percent = format_percent(
            value / 100, locale=self._locale, decimal_quantization=False, numbering_system=self._symbols
        )
        return self._with_own_digits(_tied(percent))

    def _measure(self, value: float | Decimal, unit: str, long: bool) -> str:
        """Short forms that are whole words give way to narrow ones; amounts never do: ml must not read mm."""
        forms = self._forms(value, unit, long)
        number = self._decimal(value)
        brief = [form for form in forms if _letters(form.replace(number, "")) <= _LONGEST_SHORT_UNIT]
        return self._with_own_digits(_tied(forms[0] if long or not brief else brief[0]))

    def _forms(self, value: float | Decimal, unit: str, long: bool) -> list[str]:
        """CLDR's forms of a measure, the wanted width first; those in the script of the locale if any are."""
        widths: tuple[_Width, ...] = ("long", "short", "narrow") if long else ("short", "narrow", "long")
        forms = [form for form in (self._unit(value, unit, width) for width in widths) if unit not in form]
        return [form for form in forms if self._is_own_script(form)] or forms

    def _unit(self, value: float | Decimal, unit: str, width: _Width) -> str:
        assert self._locale is not None
        return _with_unit(value, unit, width, self._locale, self._symbols)

    def _decimal(self, value: float | Decimal) -> str:
        if self._locale is None:
            return str(value)
        return format_decimal(value, locale=self._locale, numbering_system=self._symbols)

    @property
    def _symbols(self) -> str:
        """The numbering system whose separators CLDR has for the locale."""
        assert self._locale is not None
        return self.system if self.system in self._locale.number_symbols else "latn"

    def _is_own_script(self, form: str) -> bool:
        if script_of(self.tag) == "Latn":
            return True
        return not any(unicodedata.name(sign, "").startswith("LATIN ") for sign in form)

    def _plain(self, value: float | Decimal, symbol: str) -> str:
        return self._with_own_digits(f"{value}{NO_BREAK_SPACE}{symbol}")

    def _with_own_digits(self, text: str) -> str:
        return text.translate(self._digits)


def _tied(text: str) -> str:
    return text.replace(" ", NO_BREAK_SPACE)


def _letters(text: str) -> int:
    """Letters of a unit, marks of Indic vowels not counted."""
    return sum(unicodedata.category(sign).startswith("L") for sign in text)


def _with_unit(
    value: float | Decimal, unit: str, width: _Width, locale: Locale, numbering_system: str = "latn"
) -> str:
    """CLDR's form of a measure. A plural form that a language leaves out is written like its form ``other``.

    Lateral inheritance (UTS #35, part 1); Babel before 2.19 writes the title of the unit there instead.
    """
    sample = value
    if _unit_of("ppm") == _FORMER_UNITS["ppm"]:
        forms = locale._data["unit_patterns"][unit].get(width, {})  # noqa: SLF001 - a Babel that is past
        if locale.plural_form(value) not in forms and "other" in forms:
            others = (number for number in _PLURAL_SAMPLES if locale.plural_form(number) == "other")
            sample = next(others, value)
    text = format_unit(sample, unit, width, locale=locale, numbering_system=numbering_system)
    if sample is value:
        return text
    figures = [
        format_decimal(each, locale=locale, numbering_system=numbering_system) for each in (sample, value)
    ]
    return text.replace(figures[0], figures[1])


@cache
def _unit_of(symbol: str) -> str:
    """The name of a unit in the CLDR that Babel carries: the present one, or the one it had before."""
    former = _FORMER_UNITS.get(symbol, "")
    return former if former in Locale("en").unit_display_names else _UNITS[symbol]


@lru_cache(maxsize=64)
def unit_words(tag: str) -> frozenset[str]:
    """Every form of the known units in a locale, so that a number and its unit can be kept together."""
    return frozenset(_unit_words(tag)) | set(_UNITS) | {"%"}


def _unit_words(tag: str) -> Iterator[str]:
    locale = cldr_locale(tag)
    if locale is None:
        return
    widths: tuple[_Width, ...] = ("short", "narrow", "long")
    for unit in (*map(_unit_of, _UNITS), "duration-day"):
        for width in widths:
            for sample in _PLURAL_SAMPLES:
                form = _with_unit(sample, unit, width, locale)
                words = form.replace(format_decimal(sample, locale=locale), "").strip(" \u00a0\u202f")
                if words and unit not in words and not re.search(r"\d", words):
                    yield words.replace(NO_BREAK_SPACE, " ").replace("\u202f", " ")
