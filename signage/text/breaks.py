"""Where a text may break: UAX #14 and UAX #29 with the dictionaries for Thai, Lao, Khmer, Burmese and Han."""

from __future__ import annotations

from functools import lru_cache

from fontTools.unicodedata import script
from icu4py.breakers import CharacterBreaker, LineBreaker, WordBreaker

from signage.ground.language import language_of

FORCED_BREAKS = frozenset("\n\v\f\r\u0085\u2028\u2029")
"""Characters after which a line must end (UAX #14, classes BK, CR, LF and NL)."""

SOFT_HYPHEN = "\u00ad"

_WITHOUT_SPACES = frozenset({"Thai", "Laoo", "Khmr", "Mymr", "Hani", "Hira", "Kana"})
"""Scripts (ISO 15924) that write no spaces between words (UAX #29, section 4)."""

_PHRASES = {"ja": "ja-u-lw-phrase", "ko": "ko-u-lw-phrase"}
"""Languages in which lines end between phrases, not between any two syllables (CLDR, key lw)."""


@lru_cache(maxsize=512)
def line_opportunities(text: str, language: str) -> tuple[int, ...]:
    """Indices at which a line may end, in order; the last one is the length of the text.

    The breaker counts in UTF-16 units, so the lengths of its pieces are added up instead.
    """
    return _ends(LineBreaker(text, _PHRASES.get(language_of(language), language)))


_HYPHENS = "-\u2010"


def without_hyphens(text: str, ends: tuple[int, ...]) -> tuple[int, ...]:
    """The same indices but those after a hyphen between letters: ``take-off`` at a line end reads as take.

    A line ends there only where a word alone is wider than the line.
    """
    return tuple(
        end
        for end in ends
        if not (
            2 <= end < len(text)
            and text[end - 1] in _HYPHENS
            and text[end - 2].isalpha()
            and text[end].isalpha()
        )
    )


def grapheme_ends(text: str) -> tuple[int, ...]:
    """Indices at which the grapheme clusters of the text end."""
    if text.isascii() and "\r" not in text:
        return tuple(range(1, len(text) + 1))
    return _ends(CharacterBreaker(text, "en"))


def word_count(text: str, language: str) -> int:
    """How many words a reader counts: between spaces, and by dictionary in scripts that write none."""
    return sum(
        sum(_is_word(piece) for piece in WordBreaker(chunk, language))
        if any(script(character) in _WITHOUT_SPACES for character in chunk)
        else _is_word(chunk)
        for chunk in text.split()
    )


def _is_word(piece: str) -> bool:
    return any(character.isalnum() for character in piece)


def _ends(breaker: LineBreaker | CharacterBreaker) -> tuple[int, ...]:
    ends: list[int] = []
    end = 0
    for piece in breaker:
        end += len(piece)
        ends.append(end)
    return tuple(ends)
