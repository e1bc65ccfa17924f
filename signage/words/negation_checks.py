"""Whether a translation says no, and only, where its source text does."""

from __future__ import annotations

import re
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


_END = re.compile(r"(?<=[.!?؟।።])\s+(?=\S)")
"""Between sentences: after a full stop, exclamation or question mark of any of the scripts in use."""


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
        if self._own.knows_restriction:
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
        lost = next(filter(None, (self._lost_in(*pair) for pair in _aligned(message.source, text))), None)
        if lost is None:
            return
        is_grave = message.role in _WARNINGS or (step is not None and step.negation)
        code = "WD-44" if is_grave and message.role is not MessageRole.WHY else "WD-45"
        yield code, f"'{text}' has no word for '{_shown(lost)}' of '{message.source}'"

    def _lost_in(self, source: str, text: str) -> str | None:
        """The marker of a sentence that its translation lacks; one that says "only" instead lacks nothing."""
        marker = self._source.denial_in(source)
        return None if self._own.denial_in(text) or self._own.restriction_in(text) else marker

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
