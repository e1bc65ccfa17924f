"""Whether a translation says no, and only, where its source text does."""

from __future__ import annotations

import re
from collections.abc import Iterator

from signage.model.library import Step
from signage.model.messages import Message, MessageRole
from signage.words.entry_checks import Fault
from signage.words.fixed.interface import WARNING_CONTEXTS
from signage.words.meaning.vocabulary import LanguageVocabulary

_WARNINGS = frozenset({MessageRole.HEADLINE, MessageRole.CAUTION, MessageRole.RULE})
_LABELS = frozenset({MessageRole.TITLE, MessageRole.NAME})
"""Roles without a sentence, in which an "only" need not be said: contact-only room."""
_INSTRUCTIONS = frozenset({MessageRole.HEADLINE, MessageRole.DETAIL, MessageRole.CAUTION})


_END = re.compile(r"(?<=[.!?؟।።])\s+(?=\S)")
"""Between sentences: after a full stop, exclamation or question mark of any of the scripts in use."""


class NegationCheck:
    """The rules WD-44 to WD-48 for one locale."""

    def __init__(self, source: LanguageVocabulary, own: LanguageVocabulary) -> None:
        self._source = source
        self._own = own

    def faults_of_translation(self, message: Message, text: str, step: Step | None) -> Iterator[Fault]:
        """Negation or restriction that is lost, and negation that is added."""
        if self._source.knows_negation and self._own.knows_negation:
            yield from self._lost_negation(message, text, step)
            yield from self._added_negation(message, text)
        if self._own.knows_restriction and message.role not in _LABELS:
            yield from self._lost_restriction(message, text)

    def faults_of_source(self, message: Message, step: Step | None) -> Iterator[Fault]:
        """WD-47: a text that warns or forbids in a step that is not marked so."""
        if step is None or step.negation or message.role not in _INSTRUCTIONS:
            return
        marker = self._source.denial_in(message.source)
        if marker is not None:
            yield "WD-47", f"'{_shown(marker)}' stands in '{message.source}', the step has no 'negation: yes'"

    def _lost_restriction(self, message: Message, text: str) -> Iterator[Fault]:
        """An 'only' that is lost; a sentence that forbids all else ("touch nothing but") says it too."""
        for source, translation in _aligned(message.source, text):
            wanted = self._source.restriction_in(source)
            if wanted is None or self._own.restriction_in(translation):
                continue
            has_more_to_deny = self._source.denial_in(source) and not _END.search(source)
            if has_more_to_deny or not self._own.negation_in(translation):
                yield "WD-48", f"'{text}' has no word for '{_shown(wanted)}' of '{message.source}'"

    def _lost_negation(self, message: Message, text: str, step: Step | None) -> Iterator[Fault]:
        is_warning = message.role in _WARNINGS or message.context in WARNING_CONTEXTS
        is_grave = is_warning or (step is not None and step.negation and message.role is not MessageRole.WHY)
        for source, translation in _aligned(message.source, text):
            wanted, found = self._source.denials_in(source), self._own.denials_in(translation)
            if self._source.negation_in(source) and self._source.has_hinge(source):
                found = found if self._own.negation_in(translation) else ()
            if wanted and not found and not self._is_said_by_only(source, translation):
                code = "WD-44" if is_grave else "WD-45"
                yield code, f"'{text}' has no word for '{_shown(wanted[0])}' of '{message.source}'"
            elif len(wanted) > len(found) == 1:
                yield "WD-45", f"'{text}' has one word of negation, '{message.source}' has {len(wanted)}"

    def _is_said_by_only(self, source: str, text: str) -> bool:
        """Whether a translation says "only" where its source text denies all else, and nothing besides."""
        denies_all_else = self._source.has_hinge(source) or self._source.restriction_in(source) is not None
        is_said = denies_all_else and self._own.restriction_in(text) is not None
        return is_said and not self._source.denies_beside_only(source)

    def _added_negation(self, message: Message, text: str) -> Iterator[Fault]:
        """An act that the source text asks for and the translation forbids, or any other added 'not'."""
        for source, translation in _aligned(message.source, text):
            marker = self._own.negation_in(translation)
            if marker is None or self._source.denial_in(source):
                continue
            if self._source.restriction_in(source) or self._source.has_hinge(source):
                continue
            shared = self._source.verbs_in(source) & self._own.verbs_in(translation)
            if shared and message.role is not MessageRole.WHY:
                yield "WD-46", f"'{_shown(marker)}' in '{text}' forbids what '{message.source}' asks for"
            elif not self._source.is_either_way(source):
                yield "WD-49", f"'{_shown(marker)}' stands in '{text}', the source text is '{message.source}'"


def _aligned(source: str, text: str) -> list[tuple[str, str]]:
    """Sentences beside their translations where both texts have as many; else the texts as a whole."""
    sources, translations = (_END.split(each.strip()) for each in (source, text))
    if len(sources) == len(translations):
        return list(zip(sources, translations, strict=True))
    return [(source, text)]


def _shown(marker: str) -> str:
    return marker.strip(" .")
