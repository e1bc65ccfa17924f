"""Ties of sense: spaces at which a line must not end, by language.

A tie turns a space into U+00A0 and nothing else. Number and unit, and the spaces of French punctuation,
are firm. Article and noun, and Hindi postpositions, are soft: they yield before the type size does.
"""

from __future__ import annotations

import re
from functools import lru_cache

from signage.ground.language import language_of
from signage.words.numerals import NO_BREAK_SPACE, unit_words

_ISOLATES = "\u2066-\u2069"
_ARTICLES = {
    "en": ("a", "an", "the"),
    "fr": ("le", "la", "les", "un", "une", "des", "du", "au", "aux"),
}
_POSTPOSITIONS = {
    "hi": ("का", "के", "की", "को", "से", "में", "पर", "ने", "तक"),
}
_GAP = f"[ {NO_BREAK_SPACE}]"
_FRENCH_PUNCTUATION = re.compile(r"(?<=«) (?=\S)|(?<=\S) (?=[»?!:;])")
"""A no-break space stands inside guillemets and before high signs (French typographic practice: Lexique
des règles typographiques en usage à l'Imprimerie nationale; from memory)."""


def tie(text: str, tag: str) -> str:
    """The text with its ties set; no other character changes, and setting them twice changes nothing."""
    if " " not in text:
        return text
    for pattern in _soft_ties(language_of(tag)):
        text = pattern.sub(NO_BREAK_SPACE, text)
    if language_of(tag) == "fr":
        text = _FRENCH_PUNCTUATION.sub(NO_BREAK_SPACE, text)
    return _number_and_unit(tag).sub(_with_no_break_spaces, text)


def soften(text: str, tag: str) -> str:
    """The text with its soft ties turned back into spaces; firm ones stay."""
    return _softened(text, tag) if NO_BREAK_SPACE in text else text


@lru_cache(maxsize=1024)
def _softened(text: str, tag: str) -> str:
    for pattern in _soft_ties(language_of(tag)):
        text = pattern.sub(" ", text)
    return text


@lru_cache(maxsize=64)
def _soft_ties(language: str) -> tuple[re.Pattern[str], ...]:
    """Patterns that match exactly the space of a soft tie, tied or not."""
    patterns: list[re.Pattern[str]] = []
    by_length: dict[int, list[str]] = {}
    for article in _ARTICLES.get(language, ()):
        by_length.setdefault(len(article), []).append(article)
    for words in by_length.values():
        before = "|".join(words)
        patterns.append(re.compile(rf"(?<=(?<![\w-])(?:{before})){_GAP}(?=[^\s»?!:;])", re.IGNORECASE))
    if language in _POSTPOSITIONS:
        after = "|".join(_POSTPOSITIONS[language])
        # A vowel sign or the sign of an abbreviation after it makes another word: से is not से॰ (second).
        patterns.append(re.compile(rf"(?<=[^\s\d]){_GAP}(?=(?:{after})(?![\w\u0900-\u0963\u0970]))"))
    return tuple(patterns)


@lru_cache(maxsize=64)
def _number_and_unit(tag: str) -> re.Pattern[str]:
    words = sorted(unit_words(tag), key=lambda word: (-len(word), word))
    units = "|".join(re.escape(word).replace(r"\ ", _GAP) for word in words)
    return re.compile(rf"\d[{_ISOLATES}]* [{_ISOLATES}]*(?:{units})(?![^\W_])")


def _with_no_break_spaces(match: re.Match[str]) -> str:
    return match.group().replace(" ", NO_BREAK_SPACE)
