"""Whether a text calls things by the names of the glossary, and speaks of the things its source speaks of."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from signage.model.choices import ActionVerb
from signage.model.library import Library, Step
from signage.model.messages import Message, MessageRole
from signage.words.entry_checks import Fault
from signage.words.meaning.terms import FoundForm, Glossary
from signage.words.meaning.vocabulary import LanguageVocabulary
from signage.words.placeholders import placeholder_names
from signage.words.step_values import garments_of_step

_NAMING_ROLES = frozenset({MessageRole.HEADLINE, MessageRole.NAME})
"""Roles that call a thing by its name; a sentence after them may say 'it'."""


class TermCheck:
    """The rules WD-8, WD-9 and WD-10 for one locale."""

    def __init__(self, library: Library, tag: str) -> None:
        is_source = tag == library.source_locale
        self._library = library
        self._source = Glossary(library.terms, library.source_locale, is_source=True)
        self._locale = self._source if is_source else Glossary(library.terms, tag)
        self._verbs = LanguageVocabulary(library, tag)
        self._source_term = {term.id: term.source for term in library.terms}

    def faults_of_text(self, message: Message, text: str, step: Step | None) -> Iterator[Fault]:
        """Forbidden, missing and mistaken names in one text; ``text`` is the message in the locale."""
        named = self._source.named(message.source)
        acted_on = garments_of_step(self._library, step) if step is not None else frozenset()
        found = self._locale.find(text)
        yield from self._forbidden(found, named | acted_on)
        yield from self._other_item(found, named | acted_on | self._named_in(step))
        if message.role in _NAMING_ROLES:
            given = {term for form in found for term in form.approves} | self._verbs.verbs_in(text)
            for term in sorted(named - given):
                if self._locale.has_forms(term):
                    yield "WD-9", f"'{text}' has no approved form of '{self._source_term[term]}'"

    def faults_of_step(self, step: Step, texts: Sequence[str]) -> Iterator[Fault]:
        """WD-9 for a step that puts a garment on or takes it off and names it in none of its texts."""
        if any(placeholder_names(text)["item"] for text in texts):
            return
        for action in step.actions:
            item = action.item
            if (
                action.verb not in {ActionVerb.DON, ActionVerb.DOFF}
                or item is None
                or not self._locale.has_forms(item)
            ):
                continue
            if not any(item in self._locale.named(text) for text in texts):
                name = self._source_term[item]
                yield "WD-9", f"the step {action.verb}s '{name}' and names it in no text: '{texts[0]}'"

    def _named_in(self, step: Step | None) -> frozenset[str]:
        """The terms that any source text of the step names."""
        if step is None:
            return frozenset()
        texts = (step.text, step.detail, step.posture, step.pace, step.why, step.caution)
        return self._source.named("\n".join(text for text in texts if text is not None))

    def _forbidden(self, found: list[FoundForm], concerned: frozenset[str]) -> Iterator[Fault]:
        for form in found:
            for term in sorted(form.forbids & concerned):
                if not form.approves & concerned:
                    yield "WD-8", f"'{form.form}' is a forbidden form of '{self._source_term[term]}'"

    def _other_item(self, found: list[FoundForm], concerned: frozenset[str]) -> Iterator[Fault]:
        for form in found:
            others = form.approves & frozenset(self._library.garments)
            if form.is_whole_word and others and not form.approves & concerned:
                names = ", ".join(f"'{self._source_term[term]}'" for term in sorted(others))
                yield "WD-10", f"'{form.form}' names {names}, which neither source text nor step names"
