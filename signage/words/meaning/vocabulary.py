"""The words of one language that carry the meaning of steps: its verbs, negation, restriction and hands."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeVar

from signage.ground.language import language_of
from signage.model.library import Library
from signage.model.vocabulary import Verb
from signage.words.meaning.phrases import Phrases, words_of

_Value = TypeVar("_Value")


class LanguageVocabulary:
    """What the vocabulary of a library says for one locale.

    In the source language the word by which each verb is listed counts too.
    """

    def __init__(self, library: Library, tag: str) -> None:
        vocabulary = library.vocabulary
        self.tag = tag
        is_source = tag == library.source_locale
        self.verbs: Mapping[str, Verb] = {verb.id: verb for verb in vocabulary.verbs}
        forms = {
            verb.id: (*((verb.source,) if is_source else ()), *(_of_locale(verb.approved, tag) or ()))
            for verb in vocabulary.verbs
        }
        self.forms = {verb: listed for verb, listed in forms.items() if listed}
        self._phrases = {verb: Phrases(listed, tag) for verb, listed in self.forms.items()}
        negation = _of_locale(vocabulary.negation, tag)
        self._negation = Phrases(negation.markers if negation else (), tag)
        self._denial = Phrases((*negation.markers, *negation.softer) if negation else (), tag)
        self._idioms = Phrases(negation.idioms if negation else (), tag)
        self._either_way = Phrases(negation.either_way if negation else (), tag)
        self._hinges = Phrases(negation.hinges if negation else (), tag)
        self._restriction = Phrases(_of_locale(vocabulary.restriction, tag) or (), tag)
        self._bare_hands = Phrases(_of_locale(vocabulary.bare_hands, tag) or (), tag)

    @property
    def knows_negation(self) -> bool:
        """Whether the language has markers of negation."""
        return bool(self._negation)

    @property
    def knows_restriction(self) -> bool:
        """Whether the language has words for "only"."""
        return bool(self._restriction)

    def verbs_in(self, text: str) -> frozenset[str]:
        """The ids of the verbs of which the text carries an approved form."""
        words = words_of(text, self.tag)
        return frozenset(verb for verb, forms in self._phrases.items() if forms.found_in_words(words))

    def form_in(self, text: str, verb: str) -> str:
        """The approved form of the verb that the text carries."""
        return (self._phrases[verb].found_in(text) or "").strip(" .")

    def negation_in(self, text: str) -> str | None:
        """The first marker of negation in the text; idioms that deny nothing do not count."""
        return self._negation.found_in_words(self._idioms.without(words_of(text, self.tag)))

    def denial_in(self, text: str) -> str | None:
        """The first marker of negation in the text, or softer one, such as "away from"."""
        found = self.denials_in(text)
        return found[0] if found else None

    def denials_in(self, text: str) -> tuple[str, ...]:
        """All markers of negation in the text, softer ones among them."""
        return self._denial.all_in_words(self._idioms.without(words_of(text, self.tag)))

    def denies_beside_only(self, text: str) -> bool:
        """Whether the text says "only" and, by other words, denies something as well."""
        words = self._idioms.without(words_of(text, self.tag))
        rest = self._restriction.without(words)
        return rest != words and self._denial.found_in_words(rest) is not None

    def restriction_in(self, text: str) -> str | None:
        """The first word for "only" in the text."""
        return self._restriction.found_in(text)

    def is_either_way(self, text: str) -> bool:
        """Whether the text holds a word that another language may well put with a negation."""
        return self._either_way.found_in(text) is not None

    def has_hinge(self, text: str) -> bool:
        """Whether the text joins clauses by a word, such as "until", that may go with a "not" elsewhere."""
        return self._hinges.found_in(text) is not None

    def bare_hands_in(self, text: str) -> str | None:
        """The first word for hands or skin in the text."""
        return self._bare_hands.found_in(text)


def opposites(library: Library) -> dict[str, frozenset[str]]:
    """Each verb with those that turn it round; an opposite counts both ways."""
    found: dict[str, set[str]] = {verb.id: set() for verb in library.vocabulary.verbs}
    for verb in library.vocabulary.verbs:
        if verb.opposite is not None:
            found[verb.id].add(verb.opposite)
            found.setdefault(verb.opposite, set()).add(verb.id)
    return {verb: frozenset(others) for verb, others in found.items()}


def _of_locale(by_locale: Mapping[str, _Value], tag: str) -> _Value | None:
    """The value of a locale; a locale without any of its own takes that of its language."""
    return by_locale.get(tag) or by_locale.get(language_of(tag))
