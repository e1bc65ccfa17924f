"""Whether a translation says no, and only, where its source text does."""

from __future__ import annotations

from collections.abc import Iterator

from signage.model.library import Step
from signage.model.messages import Message, MessageRole
from signage.words.entry_checks import Fault
from signage.words.vocabulary import LanguageVocabulary

_SENTENCES = frozenset(
    {
        MessageRole.HEADLINE,
        MessageRole.DETAIL,
        MessageRole.WHY,
        MessageRole.CAUTION,
        MessageRole.RULE,
        MessageRole.NOTE,
    }
)
_WARNINGS = frozenset({MessageRole.HEADLINE, MessageRole.CAUTION, MessageRole.RULE})
_INSTRUCTIONS = frozenset({MessageRole.HEADLINE, MessageRole.DETAIL, MessageRole.CAUTION})


class NegationCheck:
    """The rules WD-44 to WD-48 for one locale."""

    def __init__(self, source: LanguageVocabulary, own: LanguageVocabulary) -> None:
        self._source = source
        self._own = own

    def faults_of_translation(self, message: Message, text: str, step: Step | None) -> Iterator[Fault]:
        """Negation or restriction that is lost, and negation that is added."""
        if message.role not in _SENTENCES:
            return
        if self._source.knows_negation and self._own.knows_negation:
            yield from self._lost_negation(message, text, step)
            yield from self._added_negation(message, text)
        wanted = self._source.restriction_in(message.source)
        if wanted is not None and self._own.knows_restriction and self._own.restriction_in(text) is None:
            yield "WD-48", f"'{text}' has no word for '{_shown(wanted)}' of '{message.source}'"

    def faults_of_source(self, message: Message, step: Step | None) -> Iterator[Fault]:
        """WD-47: a text that warns or forbids in a step that is not marked so."""
        if step is None or step.negation or message.role not in _INSTRUCTIONS:
            return
        marker = self._source.denial_in(message.source)
        if marker is not None:
            yield "WD-47", f"'{_shown(marker)}' stands in '{message.source}', the step has no 'negation: yes'"

    def _lost_negation(self, message: Message, text: str, step: Step | None) -> Iterator[Fault]:
        marker = self._source.denial_in(message.source)
        if marker is None or self._own.denial_in(text) or self._own.restriction_in(text):
            return
        is_grave = message.role in _WARNINGS or (step is not None and step.negation)
        is_reason = message.role is MessageRole.WHY
        code = "WD-44" if is_grave and not is_reason else "WD-45"
        yield code, f"'{text}' has no word for '{_shown(marker)}' of '{message.source}'"

    def _added_negation(self, message: Message, text: str) -> Iterator[Fault]:
        """An act that the source text asks for and the translation forbids, or any other added 'not'."""
        marker = self._own.negation_in(text)
        if marker is None or self._source.denial_in(message.source):
            return
        if self._source.restriction_in(message.source) or self._source.has_hinge(message.source):
            return
        shared = self._source.verbs_in(message.source) & self._own.verbs_in(text)
        if shared and message.role is not MessageRole.WHY:
            yield (
                "WD-46",
                f"'{_shown(marker)}' in '{text}' forbids what '{message.source}' asks for",
            )
        elif not self._source.is_either_way(message.source):
            yield "WD-49", f"'{_shown(marker)}' stands in '{text}', the source text is '{message.source}'"


def _shown(marker: str) -> str:
    return marker.strip(" .")
