"""What is wrong with source texts that only their steps betray: shared headlines, sentences, lost denials."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Sequence

from signage.ground.language import language_of
from signage.model.choices import ActionVerb
from signage.model.library import Action, Library, Step
from signage.model.messages import Message, MessageRole
from signage.words.entry_checks import Fault
from signage.words.hygiene.small_words import SMALL_WORDS
from signage.words.meaning.vocabulary import LanguageVocabulary

_SENTENCE_END = re.compile(r"[.!?؟।。።](?:\s|$)")
_FULL_STOPS = (".", "।", "。", "።")
_WORD = re.compile(r"\w{4,}")
_QUOTES = "\"'«»“”„‘’‹›「」"
_SPOKEN = frozenset({ActionVerb.SAY, ActionVerb.NEED})
"""Verbs under which the model knows nothing of what is done, so that two steps cannot be told apart."""


class SourceCheck:
    """The rules WD-58 to WD-60, for the source texts of steps."""

    def __init__(self, library: Library, messages: Sequence[Message]) -> None:
        self._library = library
        self._vocabulary = LanguageVocabulary(library, library.source_locale)
        self._small_words = SMALL_WORDS.get(language_of(library.source_locale), frozenset())
        self._steps = {(p.id, s.id): s for p in library.protocols.values() for s in p.steps}
        self._headlines = [m for m in messages if m.role is MessageRole.HEADLINE]
        with_stop = sum(_has_full_stop(message.source) for message in self._headlines)
        self._have_full_stops = 2 * with_stop > len(self._headlines)

    def faults_of_steps(self) -> Iterator[tuple[Message, Fault]]:
        """All faults, each at a headline."""
        sharing: dict[str, list[Message]] = defaultdict(list)
        for message in self._headlines:
            sharing[message.source.casefold()].append(message)
        for message in self._headlines:
            step = self._step(message)
            yield from ((message, fault) for fault in self._sentence(message.source))
            yield from ((message, fault) for fault in self._unused_mark(step))
            yield from (
                (message, fault) for fault in self._shared(message, sharing[message.source.casefold()])
            )

    def _sentence(self, text: str) -> Iterator[Fault]:
        if len(_SENTENCE_END.findall(text)) > 1:
            yield "WD-58", f"'{text}' has more than one sentence"
        elif _has_full_stop(text) and not self._have_full_stops:
            yield "WD-58", f"'{text}' ends with a full stop, most headlines of the library do not"

    def _unused_mark(self, step: Step) -> Iterator[Fault]:
        shown = (step.text, step.detail, step.posture, step.pace, step.caution)
        texts = [text for text in shown if text is not None]
        denies = any(self._vocabulary.denial_in(text) for text in texts)
        if step.negation and self._vocabulary.knows_negation and not denies:
            yield "WD-59", "the step has 'negation: yes', and headline, detail and caution deny nothing"

    def _shared(self, message: Message, sharing: list[Message]) -> Iterator[Fault]:
        step = self._step(message)
        others = [other for other in sharing if self._differ(step, self._step(other))]
        if others and len(sharing) <= 2 * len(others):
            yield "WD-60", f"'{message.source}' stands at {others[0].context} too, which does something else"

    def _differ(self, one: Step, other: Step) -> bool:
        """Whether picture and deed differ; where nothing is known of the deeds, picture and detail."""
        if one.picture == other.picture:
            return False
        if all(action.verb in _SPOKEN for step in (one, other) for action in step.actions):
            return not self._telling_words(one) & self._telling_words(other)
        return self._deeds(one) != self._deeds(other)

    def _telling_words(self, step: Step) -> frozenset[str]:
        return frozenset(_WORD.findall((step.detail or "").casefold())) - self._small_words

    def _deeds(self, step: Step) -> list[tuple[str | None, ...]]:
        """What is done; a wait beside something else, such as the time to dry after a rub, is none."""
        deeds = [self._deed(action) for action in step.actions if action.verb is not ActionVerb.WAIT]
        return deeds or [*map(self._deed, step.actions)]

    def _deed(self, action: Action) -> tuple[str | None, ...]:
        """What is done, with things by the names that readers know them by."""
        garment = self._library.garments.get(action.item or "")
        item = garment.name if garment is not None else action.item
        item = item or action.thing
        return action.verb, item, action.layer, action.agent, action.part, action.to

    def _step(self, message: Message) -> Step:
        return self._steps[message.protocol or "", message.step or ""]


def _has_full_stop(text: str) -> bool:
    return text.strip(_QUOTES).endswith(_FULL_STOPS)
