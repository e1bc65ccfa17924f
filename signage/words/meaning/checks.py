"""Whether a text means what its step does and what its source text says: all checks of meaning."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from signage.ground.language import language_of
from signage.model.library import Library, Protocol, Step
from signage.model.messages import Message, MessageRole
from signage.words.entry_checks import Fault
from signage.words.hygiene.small_words import SMALL_WORDS
from signage.words.meaning.garment_checks import GarmentCheck
from signage.words.meaning.negation_checks import NegationCheck
from signage.words.meaning.number_words import numbers_in
from signage.words.meaning.value_checks import ValueCheck
from signage.words.meaning.verb_checks import VerbCheck
from signage.words.meaning.vocabulary import LanguageVocabulary

_WORD = re.compile(r"\w+")
_IMPLIED = {"WD-51": ("WD-53",), "WD-52": ("WD-53",)}
"""A time in words is a number in words as well; it is told once, as a time."""

_NAMES = frozenset({MessageRole.PICTURE, MessageRole.NAME})
"""Roles that name something seen; what steps do is not held against them."""


class MeaningCheck:
    """The rules WD-40 to WD-57 for one locale; ``texts`` are all its texts by context.

    ``source_tag`` is the language they are translated from; that of the library where none is given.
    """

    def __init__(
        self, library: Library, tag: str, texts: Mapping[str, str], source_tag: str | None = None
    ) -> None:
        source_tag = source_tag or library.source_locale
        self._library = library
        self._tag = tag
        self._is_source = tag == source_tag
        self._source = LanguageVocabulary(library, source_tag)
        self._small_words = SMALL_WORDS.get(language_of(source_tag), frozenset())
        self._own = self._source if self._is_source else LanguageVocabulary(library, tag)
        self._steps = {(p.id, s.id): (p, s) for p in library.protocols.values() for s in p.steps}
        self._themes = {
            f"{protocol.id}/phase/{phase.id}/title": phase.theme
            for protocol in library.protocols.values()
            for phase in protocol.phases
        }
        self._texts = texts
        self._verbs = VerbCheck(library, self._source, self._own, texts)
        self._garments = GarmentCheck(library, tag, texts)
        self._negation = NegationCheck(self._source, self._own)
        self._values = ValueCheck(library, self._own)

    def faults_of_locale(self) -> Iterator[Fault]:
        """WD-56: the verbs for which the locale has no form; where there are no verbs, the source says so."""
        if not self._own.verbs and self._is_source:
            yield "WD-56", "terms.yaml lists no verbs, so that no headline is held against what its step does"
        missing = [verb for verb in self._own.verbs if verb not in self._own.forms]
        if missing:
            yield "WD-56", f"{self._tag} has no approved forms of {', '.join(missing)}"

    def faults_of_text(self, message: Message, text: str) -> Iterator[Fault]:
        """What one text says against its step and against its source text; each rule tells it once."""
        told: set[str] = set()
        for fault in self._all_faults(message, text):
            if fault[0] not in told:
                yield fault
            told |= {fault[0], *_IMPLIED.get(fault[0], ())}

    def _all_faults(self, message: Message, text: str) -> Iterator[Fault]:
        if message.role in _NAMES:
            if not self._is_source:
                yield from self._negation.faults_of_translation(message, text, None)
            return
        protocol, step = self._steps.get((message.protocol or "", message.step or ""), (None, None))
        if protocol is None and message.protocol is not None:
            protocol = self._library.protocols.get(message.protocol)
        if message.context in self._themes:
            yield from self._verbs.faults_of_title(self._themes[message.context], text)
        if protocol is not None and step is not None:
            yield from self._of_step(protocol, step, message, text)
        if protocol is not None:
            yield from self._values.faults_of_bins(protocol, step, text)
        if self._is_source:
            yield from self._negation.faults_of_source(message, step)
        else:
            yield from self._against_source(message, text, step)

    def faults_across_texts(self, messages: Sequence[Message]) -> Iterator[tuple[Message, Fault]]:
        """WD-55: one translation for source texts of steps that say and do different things."""
        by_text: dict[str, list[Message]] = defaultdict(list)
        for message in messages:
            if message.step is not None and self._texts.get(message.context):
                by_text[self._texts[message.context]].append(message)
        for text, sharing in by_text.items():
            sources = [message.source for message in sharing]
            for message in sharing:
                others = [other for other in sharing if self._differ(message, other)]
                if others and 2 * sources.count(message.source) <= len(sharing):
                    fault = "WD-55", f"'{text}' stands at {others[0].context} too, for '{others[0].source}'"
                    yield message, fault

    def _of_step(self, protocol: Protocol, step: Step, message: Message, text: str) -> Iterator[Fault]:
        if message.role is MessageRole.HEADLINE:
            yield from self._verbs.faults_of_headline(protocol, step, text)
            yield from self._garments.faults_of_headline(step, text)
        elif message.role is MessageRole.DETAIL:
            yield from self._verbs.faults_of_agent(protocol, step, text)
        yield from self._verbs.faults_of_layer(step, message.role, text)
        known = None if self._is_source else numbers_in(message.source, self._library.source_locale)
        yield from self._values.faults_of_times(protocol, step, text, known)

    def _against_source(self, message: Message, text: str, step: Step | None) -> Iterator[Fault]:
        if message.protocol is not None and message.role is not MessageRole.WHY:
            yield from self._verbs.faults_against_source(message, text)
        yield from self._negation.faults_of_translation(message, text, step)
        if message.protocol is not None:
            yield from self._values.faults_of_numbers(message, text, self._library.source_locale)

    def _differ(self, one: Message, other: Message) -> bool:
        """Whether two texts say different things: neither source text holds the words of the other.

        Headlines of steps that do the same with the same thing are alike, whatever their words.
        """
        words, others = (
            frozenset(_WORD.findall(m.source.casefold())) - self._small_words for m in (one, other)
        )
        if words <= others or others <= words:
            return False
        both = (MessageRole.HEADLINE, MessageRole.HEADLINE)
        if (one.role, other.role) != both or self._deeds(one) != self._deeds(other):
            return True
        return all(set(deed[1:]) == {None} for deed in self._deeds(one))

    def _deeds(self, message: Message) -> tuple[tuple[str | None, ...], ...]:
        _, step = self._steps[message.protocol or "", message.step or ""]
        return tuple((a.verb, a.item, a.layer, a.agent, a.part, a.to) for a in step.actions)
