"""Finds the glossary's terms in texts: which thing a sentence speaks of, and by which of its names."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from signage.ground.language import language_of, script_of
from signage.model.library import Term

_TWO_CASED = frozenset({"Latn", "Grek", "Cyrl", "Armn"})
"""Scripts whose words are matched whole. Others attach particles, so a form may stand inside a word."""

_UNPOINTED = frozenset({"Arab", "Hebr"})
"""Scripts whose vowel points may be written or left out."""

_TATWEEL = "\u0640"
_SAME_SIGN = str.maketrans(
    {"\u2019": "'", "\u00a0": " ", "\u202f": " ", **dict.fromkeys("\u2066\u2067\u2068\u2069")}
)


@dataclass(frozen=True, slots=True)
class FoundForm:
    """A form in a text. ``approves`` and ``forbids`` are the ids of the terms that list it so."""

    form: str
    start: int
    end: int
    is_whole_word: bool
    approves: frozenset[str]
    forbids: frozenset[str]


@dataclass(frozen=True, slots=True)
class _Form:
    text: str
    written: str
    approves: frozenset[str]
    forbids: frozenset[str]


class Glossary:
    """The forms of all terms in one locale; in the source language the source term is approved too."""

    def __init__(self, terms: Iterable[Term], tag: str, is_source: bool = False) -> None:
        self._script = script_of(tag)
        approves: dict[str, set[str]] = {}
        forbids: dict[str, set[str]] = {}
        written: dict[str, str] = {}
        self._with_forms: set[str] = set()
        for term in terms:
            own = _with_regular_plural(term.source, tag) if is_source else ()
            forms = (*own, *_forms(term.approved, tag))
            if forms:
                self._with_forms.add(term.id)
            for listed, target in ((forms, approves), (_forms(term.forbidden, tag), forbids)):
                for form in listed:
                    target.setdefault(self._folded(form), set()).add(term.id)
                    written.setdefault(self._folded(form), form)
        self._longest_first = [
            _Form(text, written[text], frozenset(approves.get(text, ())), frozenset(forbids.get(text, ())))
            for text in sorted(written, key=lambda text: (-len(text), text))
            if text
        ]

    def has_forms(self, term: str) -> bool:
        """Whether the glossary lists an approved form of the term in this locale."""
        return term in self._with_forms

    def find(self, text: str) -> list[FoundForm]:
        """The forms in the text, in order. The longest form is taken first and hides those inside it."""
        folded = self._folded(text)
        taken = [False] * len(folded)
        found: list[FoundForm] = []
        for form in self._longest_first:
            start = folded.find(form.text)
            while start >= 0:
                end = start + len(form.text)
                is_whole = _is_edge(folded, start) and _is_edge(folded, end)
                if not any(taken[start:end]) and (is_whole or self._script not in _TWO_CASED):
                    taken[start:end] = [True] * (end - start)
                    found.append(FoundForm(form.written, start, end, is_whole, form.approves, form.forbids))
                start = folded.find(form.text, start + 1)
        return sorted(found, key=lambda item: item.start)

    def named(self, text: str) -> frozenset[str]:
        """The ids of the terms that the text names by an approved form."""
        return frozenset(term for found in self.find(text) for term in found.approves)

    def _folded(self, text: str) -> str:
        """The text with case, kinds of space, isolates and optional vowel points taken away."""
        folded = unicodedata.normalize("NFC", text).translate(_SAME_SIGN).casefold()
        if self._script in _UNPOINTED:
            folded = "".join(
                sign for sign in folded if unicodedata.category(sign) != "Mn" and sign != _TATWEEL
            )
        return " ".join(folded.split())


def words_of_glossary(terms: Iterable[Term], tag: str) -> frozenset[str]:
    """The single words of all approved forms of a locale, in small letters."""
    forms = (form for term in terms for form in _forms(term.approved, tag))
    return frozenset(word.casefold() for form in forms for word in form.split())


def _forms(by_locale: Mapping[str, tuple[str, ...]], tag: str) -> tuple[str, ...]:
    """The forms of a locale; a locale without any of its own takes those of its language."""
    return by_locale.get(tag) or by_locale.get(language_of(tag), ())


def _with_regular_plural(form: str, tag: str) -> tuple[str, ...]:
    """A source term in both numbers, for English, whose regular plural is an s."""
    if language_of(tag) != "en":
        return (form,)
    is_plural = form.endswith("s") and not form.endswith("ss")
    return (form, form[:-1] if is_plural else f"{form}s")


def _is_edge(text: str, index: int) -> bool:
    """Whether a word begins or ends at the index."""
    return index in {0, len(text)} or not (_is_of_word(text[index - 1]) and _is_of_word(text[index]))


def _is_of_word(sign: str) -> bool:
    return unicodedata.category(sign)[0] in "LMN"
