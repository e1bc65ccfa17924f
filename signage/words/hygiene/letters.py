"""Which scripts and letters a language is written in, and the words of a text that are written otherwise."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection, Iterator
from functools import cache, lru_cache

from babel.core import get_global
from fontTools.unicodedata import script

from signage.ground.language import language_of, script_of
from signage.ground.quotation import quoted
from signage.words.placeholders import without_placeholders

_WRITTEN_WITH = {
    "Hans": frozenset({"Hani", "Bopo"}),
    "Hant": frozenset({"Hani", "Bopo"}),
    "Jpan": frozenset({"Hani", "Hira", "Kana"}),
    "Kore": frozenset({"Hang", "Hani"}),
    "Aran": frozenset({"Arab"}),
    "Latf": frozenset({"Latn"}),
    "Latg": frozenset({"Latn"}),
}
"""Scripts of letters in writing systems that ISO 15924 names as a whole."""

_LETTERS = {
    "ar": "ء-غف-يٯپچژڜڢڤڥڧڨگ", "fa": "ء-ؤئ-غفقل-وپچژکگیإ", "ps": "ء-ؤئ-غفقل-ويټپځڅچډړږژښکګگڼیۍېے",
    "ur": "ءابت-غفقل-نوٹپچڈڑژکگھہیےآ-ؤئةٺ-ٽںۂۃ", "sd": "ءآابت-غفقل-ويٺٻٽ-ڀڃڄچڇڊڌڍڏڙڦکڪگڱڳڻھئ",
    "ug": "ابتجخدر-شغف-نو-يپچژڭگھۆ-ۈۋېەئ", "ckb": "ئ-بتج-در-شعغفقل-وپچڕژڤکگڵۆیێەءأؤإةثذصضطظھ",
    "ru": "а-яё", "uk": "ʼа-щьюяєіїґ", "be": "ʼа-зй-шы-яёіў", "bg": "а-ъьюяѝ", "sr": "а-ик-шђј-ћџ",
    "mk": "а-ик-шѓѕј-њќџѐѝ", "kk": "а-яёіғқңүұһәө", "mn": "а-яёүө",
    "bn": "অ-ঌএঐও-নপ-রলশ-হঽৎৠৡড়ঢ়য়", "as": "অ-ঋএঐও-নপ-যলশ-হৰৱৎড়ঢ়য়",
    "es": "áéíñóúü", "fr": "àâæçèéêëîïôùûüÿœ", "it": "àèéìòóù", "pl": "ąćęłńóśźż", "ro": "ăâîșț",
    "pt": "àáâãçéêíóôõú", "so": "", "sw": "", "tr": "çğıiöşü",
    "hi": "अ-ऍए-ऑओ-नप-रलळव-हऽॐक़-य़", "mr": "अ-ऍए-ऑओ-नप-रऱलळव-हऽॐऍॲ", "ne": "अ-ऍए-ऑओ-नप-रलळव-हऽॐ",
}  # fmt: skip
"""Small letters of languages that share their script with others, as ranges: CLDR 48, main exemplars, in
other scripts than Latin with those auxiliary ones that look like no main one (common/main,
exemplarCharacters). Devanagari and Bengali with their dotted letters in one code, Latin without a to z.
Languages that are not listed are not judged by single letters."""

_SAME_SCRIPT = {language: script_of(language) for language in _LETTERS}
_ALWAYS = frozenset("\u0640")
"""Tatweel, which lengthens a line of Arabic script and is no letter of any language."""

_MARKS = "".join(chr(code) for code in range(0x300, 0x1B00) if unicodedata.category(chr(code))[0] == "M")
"""Vowel signs and accents, which belong to the word of their letter; the scripts of the fonts end before."""

_WORD = re.compile(rf"[^\W\d_](?:[^\W\d_]|[{_MARKS}]|\u200c|\u200d)*")
_LOOK_ALIKE = frozenset({"Latn", "Grek", "Cyrl"})
_CODE = re.compile(r"[A-Z]{1,6}|[A-Z]?[a-z]?[A-Z]{1,3}")
_UNITS = frozenset(
    {"ml", "l", "dl", "cl", "g", "mg", "kg", "mm", "cm", "m", "s", "min", "h", "ppm", "pH", "lx"}
)
"""SI symbols and their like, which are written in Latin letters beside any script (SI Brochure, 5.2)."""

Fault = tuple[str, str]


def scripts_of(tag: str) -> frozenset[str]:
    """The scripts (ISO 15924) whose letters a language is written in."""
    home = script_of(tag)
    return _WRITTEN_WITH.get(home, frozenset({home}))


def foreign_words(text: str, tag: str) -> Iterator[tuple[str, str]]:
    """Stretches of letters in a script that the language does not use, each with its script.

    Words that mix look-alike scripts have a rule of their own.
    """
    own = scripts_of(tag)
    for match in _WORD.finditer(without_placeholders(text)):
        stretches = tuple(_stretches(match.group()))
        if len(stretches) > 1 and {name for _, name in stretches} <= _LOOK_ALIKE:
            continue
        for word, name in stretches:
            if name not in own:
                yield word, name


def latin_words(text: str, tag: str) -> list[str]:
    """The Latin words, codes and units left out, in a text of a language with another script."""
    words = [unicodedata.normalize("NFKC", word) for word, name in foreign_words(text, tag) if name == "Latn"]
    return [word for word in words if not _CODE.fullmatch(word) and word not in _UNITS]


def faults_of_letters(text: str, tag: str) -> Iterator[Fault]:
    """Rules WD-32 and WD-33. Latin words are left to the rule for words of the source."""
    foreign = [(word, name) for word, name in foreign_words(text, tag) if name != "Latn"]
    if scripts_of(tag) == {"Latn"}:
        foreign = [(word, name) for word, name in foreign if not (name == "Grek" and len(word) == 1)]
    if foreign:
        word, name = foreign[0]
        yield "WD-32", f"{quoted(word)} is written in the script {name}"
        return
    strange = next((sign for sign in text if _is_strange(sign, tag)), None)
    if strange is not None:
        name = unicodedata.name(strange, "without a name").lower()
        yield "WD-33", f"'{strange}' (U+{ord(strange):04X}, {name}) is no letter of {tag}"


@lru_cache(maxsize=4096)
def _script_of_sign(sign: str) -> str:
    """The script (ISO 15924) of a sign."""
    return str(script(sign))


def _stretches(word: str) -> Iterator[tuple[str, str]]:
    """The word cut where its script changes; marks and shared signs stay with what is before them."""
    start, current = 0, ""
    for index, sign in enumerate(word):
        name = _script_of_sign(sign)
        if name in {"Zyyy", "Zinh", "Zzzz"} or name == current:
            continue
        if current:
            yield word[start:index], current
            start = index
        current = name
    if current:
        yield word[start:], current


@lru_cache(maxsize=8192)
def _is_strange(sign: str, tag: str) -> bool:
    """Whether a letter of the language's script is none of its letters."""
    language = get_global("language_aliases").get(language_of(tag), language_of(tag)).split("_")[0]
    if sign.isascii() or language not in _LETTERS or not unicodedata.category(sign).startswith("L"):
        return False
    home = _SAME_SCRIPT[language]
    if script(sign) != home or home != script_of(tag) or sign in _ALWAYS:
        return False
    is_form = unicodedata.decomposition(sign).startswith("<")
    return not is_form and sign.lower()[0] not in letters_of(language)


@cache
def letters_of(language: str) -> Collection[str]:
    """The small letters of one of the languages that are judged by single letters."""
    found: set[str] = set()
    ranges = iter(_LETTERS[language])
    last = ""
    for sign in ranges:
        if sign == "-":
            found.update(map(chr, range(ord(last), ord(next(ranges)) + 1)))
        else:
            found.add(sign)
            last = sign
    return frozenset(found)
