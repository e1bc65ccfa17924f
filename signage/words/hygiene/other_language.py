"""Whether a translation still speaks the source language, or another one than its own."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterator, Mapping
from functools import cache

from signage.ground.language import language_of, script_of
from signage.ground.quotation import quoted
from signage.words.hygiene.letters import latin_words
from signage.words.hygiene.small_words import SMALL_WORDS
from signage.words.placeholders import without_placeholders

Fault = tuple[str, str]

_WORD = re.compile(r"[^\W\d_]+(?:[’'][^\W\d_]+)?")
_SHORTEST_KEPT = 4
"""Letters of a word that tells a language."""

_SHORTEST_OF_TWO, _SHORTEST_TOGETHER = 3, 7
"""Letters of each of two small words in a row that are taken for words of the source, and of both."""

_ENOUGH = 4
"""Texts with a word, from which on the other translations show that it is to be translated."""

_TELLING = frozenset(
    {
        "the", "and", "with", "your", "off", "then", "until", "before", "from", "you", "this", "that", "when",
        "into", "both", "have", "must", "out", "only",
    }
)  # fmt: skip
"""English words that are hardly words of any other language; one of them tells."""


def faults_of_language(
    text: str, tag: str, source: str, source_tag: str, names: Collection[str]
) -> Iterator[Fault]:
    """Rules WD-35 and WD-36 for a translation. ``names`` are words, in small letters, that may stay."""
    if language_of(tag) == language_of(source_tag):
        return
    kept = _kept_words(text, tag, source, source_tag, names)
    if kept:
        yield "WD-35", f"{quoted(kept)} is left of the source text"
        return
    yield from faults_of_small_words(text, tag)


def faults_of_small_words(text: str, tag: str) -> Iterator[Fault]:
    """Rule WD-36, for source texts as well."""
    other = _language_told_by_small_words(text, tag) if script_of(tag) == "Latn" else None
    if other is not None:
        yield "WD-36", f"the small words of {quoted(text)} are those of the language '{other}'"


def _kept_words(text: str, tag: str, source: str, source_tag: str, names: Collection[str]) -> str:
    """Words of the source in the translation: any Latin word beside another script, else some in a row."""
    if script_of(tag) != "Latn":
        return " ".join(word for word in latin_words(text, tag) if word.casefold() not in names)
    if script_of(source_tag) != "Latn":
        return ""
    of_source = [[word.casefold() for word in run] for run in _runs(source)]
    in_a_row = {tuple(run[i : i + length]) for run in of_source for length in (2, 3) for i in range(len(run))}
    for run in _runs(text):
        for i in range(len(run) - 1):
            for part in (run[i : i + 3], run[i : i + 2]):
                small = [word.casefold() for word in part]
                if (
                    (len(part) > 2 or _are_plain_words(part))
                    and tuple(small) in in_a_row
                    and not set(small) <= set(names)
                ):
                    return " ".join(part)
    if language_of(source_tag) != "en":
        return ""
    own = SMALL_WORDS.get(language_of(tag))
    telling = _TELLING if own is None else (_TELLING | SMALL_WORDS["en"]) - own
    words = {word for run in of_source for word in run if len(word) > 1} & telling
    return next((word for run in _runs(text) for word in run if word.casefold() in words), "")


def _are_plain_words(words: list[str]) -> bool:
    """Whether two words are long enough to tell and no name; the first may begin a sentence."""
    lengths = [len(word) for word in words]
    is_long = min(lengths, default=0) >= _SHORTEST_OF_TWO and sum(lengths) >= _SHORTEST_TOGETHER
    return is_long and all(word.islower() for word in words[1:])


def left_over(pairs: Mapping[str, tuple[str, str]], tag: str, source_tag: str) -> Iterator[tuple[str, str]]:
    """Contexts with a single word of the source that the other texts of the same catalogue translate.

    ``pairs`` are source text and translation by context. For two languages in Latin script, where a word may
    also belong to both: it is taken for a left-over if at most a quarter of the texts keep it.
    """
    if language_of(tag) == language_of(source_tag) or {script_of(tag), script_of(source_tag)} != {"Latn"}:
        return
    of_source: Counter[str] = Counter()
    kept: Counter[str] = Counter()
    for source, text in set(pairs.values()):
        words = _long_words(source)
        of_source.update(words)
        kept.update(words & _long_words(text))
    telling = {word for word in kept if of_source[word] >= _ENOUGH and kept[word] * 4 <= of_source[word]}
    for context, (source, text) in pairs.items():
        found = sorted(telling & _long_words(source) & _long_words(text))
        if found:
            yield context, found[0]


def _long_words(text: str) -> set[str]:
    """Words in small letters that are long enough to tell a language."""
    return {word for run in _runs(text) for word in run if word.islower() and len(word) >= _SHORTEST_KEPT}


def _runs(text: str) -> list[list[str]]:
    """Words, cut where a placeholder stands."""
    return [_WORD.findall(part) for part in without_placeholders(text).split("\n")]


@cache
def _small_words_of_others(language: str) -> Mapping[str, frozenset[str]]:
    """The small words of each other language that are none of this one."""
    own = SMALL_WORDS.get(language, frozenset())
    return {other: listed - own for other, listed in SMALL_WORDS.items() if other != language}


def _language_told_by_small_words(text: str, tag: str) -> str | None:
    """Another language with more small words in the text than the own one has, and at least two."""
    words = [word.casefold() for run in _runs(text) for word in run]
    language = language_of(tag)
    own = SMALL_WORDS.get(language, frozenset())
    counts = {
        other: sum(word in listed for word in words)
        for other, listed in _small_words_of_others(language).items()
    }
    best = max(counts, key=lambda other: counts[other])
    needed = 2 if own else 3
    is_more = sum(word in SMALL_WORDS[best] for word in words) > sum(word in own for word in words)
    return best if counts[best] >= needed and is_more else None
