"""Finds phrases in texts: words as written, ``*`` for any letters of a word, ``…`` for up to four words."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from functools import lru_cache

from signage.ground.language import script_of

UNSPACED_SCRIPTS = frozenset(
    {"Thai", "Laoo", "Khmr", "Mymr", "Hani", "Hira", "Kana", "Jpan", "Hans", "Hant", "Tibt"}
)
"""Scripts that put no space between words, so that a phrase may stand anywhere."""

_UNPOINTED = frozenset({"Arab", "Hebr"})
_TATWEEL = "\u0640"
_LONGEST_GAP = 4
"""Words between the parts of a phrase such as "take … off"."""

_LONGEST_UNSPACED_GAP = 12
"""Letters, where words are not set apart."""

_PLACEHOLDER = re.compile(r"\{[a-z_]+\}")
_BREAK = "."
_NO_BREAKS = frozenset("'\"/&@%#*\\\u2019\u1361")
"""Characters of punctuation that end no clause; U+1361 is the Ethiopic wordspace."""


@lru_cache(maxsize=8192)
def words_of(text: str, tag: str) -> str:
    """The words of a text in lower case with one space round each; a full stop for every end of a clause.

    Placeholders stay as they are. In Arabic and Hebrew vowel points are taken away.
    """
    script = script_of(tag)
    found: list[str] = []
    start = 0
    for match in _PLACEHOLDER.finditer(text):
        found += [_spread(text[start : match.start()], script), match.group()]
        start = match.end()
    found.append(_spread(text[start:], script))
    return f" {' '.join(' '.join(found).split())} {_BREAK} "


def _spread(text: str, script: str) -> str:
    folded = unicodedata.normalize("NFC", text).casefold()
    if script in _UNPOINTED:
        folded = "".join(sign for sign in folded if unicodedata.category(sign) != "Mn" and sign != _TATWEEL)
    return "".join(_shown(sign) for sign in folded)


def _shown(sign: str) -> str:
    category = unicodedata.category(sign)
    if category[0] in "LMN" or sign in "\u200c\u200d":
        return sign
    return f" {_BREAK} " if category == "Po" and sign not in _NO_BREAKS else " "


class Phrases:
    """A list of phrases of one language, found in any of its texts.

    A phrase counts as whole words; ``*`` stands for any letters before or after those written, ``…``
    for up to four words of the same clause, and a full stop at the end for the end of a clause.
    """

    def __init__(self, phrases: Iterable[str], tag: str) -> None:
        self._tag = tag
        self._is_unspaced = script_of(tag) in UNSPACED_SCRIPTS
        patterns = dict.fromkeys(filter(None, (self._pattern(phrase) for phrase in phrases)))
        longest_first = sorted(patterns, key=lambda pattern: (-len(pattern), pattern))
        self._regex = re.compile("|".join(longest_first)) if longest_first else None

    def __bool__(self) -> bool:
        return self._regex is not None

    def found_in(self, text: str) -> str | None:
        """The first words of the text that are one of the phrases; None where there are none."""
        return self.found_in_words(words_of(text, self._tag))

    def found_in_words(self, words: str) -> str | None:
        """As ``found_in``, in what ``words_of`` gave."""
        match = self._regex.search(words) if self._regex is not None else None
        return match.group() if match is not None else None

    def all_in_words(self, words: str) -> tuple[str, ...]:
        """All phrases in what ``words_of`` gave, in order; none holds a word of another."""
        return tuple(match.group() for match in self._regex.finditer(words)) if self._regex else ()

    def without(self, words: str) -> str:
        """What ``words_of`` gave, with the phrases taken out."""
        return self._regex.sub("-", words) if self._regex is not None else words

    def _pattern(self, phrase: str) -> str:
        ends_clause = phrase.rstrip().endswith(".") and not phrase.rstrip().endswith("...")
        parts = [
            [self._word(word) for word in _phrase_words(part, self._tag)]
            for part in phrase.replace("...", "…").split("…")
        ]
        parts = [part for part in parts if part]
        if not parts:
            return ""
        if self._is_unspaced:
            gap = rf"[^{_BREAK}]{{0,{_LONGEST_UNSPACED_GAP}}}?"
            return gap.join(" ?".join(part) for part in parts)
        gap = rf" (?:[^ {_BREAK}]+ ){{0,{_LONGEST_GAP}}}?"
        end = rf" \{_BREAK}" if ends_clause else ""
        return rf"(?<![^ ]){gap.join(' '.join(part) for part in parts)}{end}(?![^ ])"

    def _word(self, word: str) -> str:
        return re.escape(word).replace(re.escape("*"), rf"[^ {_BREAK}]*")


def _phrase_words(phrase: str, tag: str) -> list[str]:
    """The words of a part of a phrase, folded as texts are; ``*`` stays."""
    script = script_of(tag)
    kept = [_spread(piece, script) for piece in phrase.split("*")]
    return [word for word in "*".join(kept).split() if word != _BREAK]
