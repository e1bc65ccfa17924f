"""The sections of terms.yaml that carry the meaning of steps: verbs, negation, restriction, bare hands."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated

from pydantic import Field

from signage.ground.problem import Problem
from signage.load.building import build, build_each
from signage.load.declared import judge
from signage.load.files.policy import AGENTS
from signage.load.kinds import NOT_EMPTY, Identifier, LanguageTag, ReadableText, one_of
from signage.load.step_grammar import VERBS
from signage.load.validation import NONE, Entry
from signage.load.yaml.nodes import Node, child, entries_of, text_of
from signage.model.choices import ActionVerb
from signage.model.vocabulary import Negation, Verb, Vocabulary

ACTS = tuple(
    dict.fromkeys(
        (
            *(verb for verb in VERBS if verb not in {ActionVerb.HYGIENE, ActionVerb.SAY}),
            *AGENTS,
            "enter",
            "leave",
        )
    )
)
"""What a verb can be said of: the verbs of steps, the agents of hand hygiene, the two ways of a move."""

Forms = tuple[ReadableText, ...]


class VerbEntry(Entry):
    """An act with its approved forms by locale."""

    source: ReadableText
    """The verb as the source texts write it."""

    acts: Annotated[tuple[Annotated[str, one_of(*ACTS)], ...], NOT_EMPTY] = Field(alias="for")
    """What it is said of: verbs of steps, agents of hand hygiene, ``enter`` and ``leave`` of a move."""

    opposite: Identifier | None = None
    """The verb that turns the act round; it counts both ways."""

    note: ReadableText = ""
    """What translators need to know about it."""

    approved: dict[LanguageTag, Forms] = NONE
    """Its forms by locale: whole words; * for any letters, … for up to four words, a full stop for an end."""


class NegationEntry(Entry):
    """How a language says no."""

    markers: Annotated[Forms, NOT_EMPTY]
    """Words that deny, such as not and never."""

    softer: Forms = ()
    """Words that keep apart, such as without and away from; they answer a negation of the source text."""

    idioms: Forms = ()
    """Phrases that hold such a word and deny nothing."""

    either_way: Forms = ()
    """Words that another language may well put with a negation: stay on is not to take off."""

    hinges: Forms = ()
    """Words that join clauses, such as until; another language may deny one of the two."""


class VocabularyEntry(Entry):
    """The sections of terms.yaml beside its terms; the forms may be of locales still to come."""

    verbs: dict[Identifier, VerbEntry] = NONE
    """The approved verbs, by a name of their own."""

    negation: dict[LanguageTag, NegationEntry] = NONE
    """How each language says no."""

    restriction: dict[LanguageTag, Forms] = NONE
    """The words of each language for only."""

    bare_hands: dict[LanguageTag, Forms] = NONE
    """The words of each language for the hand without a glove."""


def verb_problems(terms: Node) -> Iterator[Problem]:
    """Opposites that are no verbs."""
    verbs: Mapping[str, Node] = entries_of(terms, "verbs")
    for verb in verbs.values():
        yield from judge(text_of(verb, "opposite"), dict.fromkeys(verbs, "verb"), "a verb of this file")


def build_vocabulary(entry: VocabularyEntry, node: Node) -> Vocabulary:
    """The vocabulary of a valid terms.yaml."""
    verbs = build_each(Verb, entry.verbs, child(node, "verbs"))
    negation = {
        tag: build(Negation, each, entries_of(node, "negation")[tag]) for tag, each in entry.negation.items()
    }
    return Vocabulary(
        verbs=tuple(verbs.values()),
        negation=negation,
        restriction=entry.restriction,
        bare_hands=entry.bare_hands,
    )
