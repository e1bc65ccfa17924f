"""Where a text may break: UAX #14 and UAX #29 with the dictionaries for Thai, Lao, Khmer, Burmese and Han."""

from __future__ import annotations

from functools import lru_cache

from icu4py.breakers import CharacterBreaker, LineBreaker

from signage.ground.language import language_of

FORCED_BREAKS = frozenset("\n\v\f\r\u0085\u2028\u2029")
"""Characters after which a line must end (UAX #14, classes BK, CR, LF and NL)."""

SOFT_HYPHEN = "\u00ad"


_PHRASES = {"ja": "ja-u-lw-phrase", "ko": "ko-u-lw-phrase"}
"""Languages in which lines end between phrases, not between any two syllables (CLDR, key lw)."""


@lru_cache(maxsize=4096)
def line_opportunities(text: str, language: str) -> tuple[int, ...]:
    """Indices at which a line may end, in order; the last one is the length of the text.

    The breaker counts in UTF-16 units, so the lengths of its pieces are added up instead.
    """
    return _ends(LineBreaker(text, _PHRASES.get(language_of(language), language)))


def grapheme_ends(text: str) -> tuple[int, ...]:
    """Indices at which the grapheme clusters of the text end."""
    if text.isascii() and "\r" not in text:
        return tuple(range(1, len(text) + 1))
    return _ends(CharacterBreaker(text, "en"))


def _ends(breaker: LineBreaker | CharacterBreaker) -> tuple[int, ...]:
    ends: list[int] = []
    end = 0
    for piece in breaker:
        end += len(piece)
        ends.append(end)
    return tuple(ends)
