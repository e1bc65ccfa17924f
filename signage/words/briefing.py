"""What a translator is told above each text: role, picture, room, placeholders, dangers and terms."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from signage.model.library import Library, Step, Term
from signage.model.messages import LENGTH_BUDGET, Message, MessageRole
from signage.words.fixed.interface import FixedText
from signage.words.meaning.terms import Glossary
from signage.words.meaning.vocabulary import LanguageVocabulary
from signage.words.placeholders import placeholder_names


class Briefing:
    """Writes the notes (``#.``) of entries; ``tag`` is None for a template, which has no forms of terms.

    ``captions`` are sentences of what pictures show, in the source language, by the name of the picture.
    """

    def __init__(self, library: Library, tag: str | None, captions: Mapping[str, str]) -> None:
        self._captions = captions
        self._vocabulary = LanguageVocabulary(library, library.source_locale)
        self._tag = tag or ""
        self._terms = {term.id: term for term in library.terms}
        self._glossary = Glossary(library.terms, library.source_locale, is_source=True)
        self._steps: dict[tuple[str | None, str | None], Step] = {
            (protocol.id, step.id): step for protocol in library.protocols.values() for step in protocol.steps
        }

    def of_message(self, message: Message) -> tuple[str, ...]:
        """The notes of a text of the content."""
        notes = [f"role: {message.role}"]
        if message.picture is not None:
            notes.append(f"picture: {message.picture}{self._shown(message)}")
        room = LENGTH_BUDGET[message.role]
        is_spoken = message.role is MessageRole.PICTURE
        notes.append(f"length: {room} characters, read aloud" if is_spoken else _room(room))
        notes.extend(_placeholders(message.source))
        step = self._steps.get((message.protocol, message.step))
        if step is not None and step.critical:
            notes.append("critical: a mistake here can hurt")
        if self._says_not(message.source, step):
            notes.append("negation: the text says 'not', 'no' or 'never'; keep it")
        named = self._glossary.named(message.source)
        notes.extend(self._term(term) for term in self._terms.values() if term.id in named)
        return tuple(notes)

    def _says_not(self, source: str, step: Step | None) -> bool:
        """Whether a source text denies something; where the words for it are not listed, its step tells."""
        if self._vocabulary.knows_negation:
            return self._vocabulary.negation_in(source) is not None
        return step is not None and step.negation

    def _shown(self, message: Message) -> str:
        """What the picture shows, where the text is not itself the sentence about it."""
        caption = self._captions.get(message.picture or "")
        return f" | {caption}" if caption and message.role is not MessageRole.PICTURE else ""

    def of_fixed_text(self, text: FixedText) -> tuple[str, ...]:
        """The notes of a fixed word of the sheets."""
        notes = [text.note] if text.note else []
        return (*notes, _room(text.budget), *_placeholders(text.source))

    def _term(self, term: Term) -> str:
        parts = [f"term: {term.source}"]
        parts.extend(_listed("use", term.approved.get(self._tag, ())))
        parts.extend(_listed("never", term.forbidden.get(self._tag, ())))
        if term.note:
            parts.append(" ".join(term.note.split()))
        return " | ".join(parts)


def _room(characters: int) -> str:
    return f"length: {characters} characters fit at full size"


def _placeholders(source: str) -> list[str]:
    names = placeholder_names(source)
    return [f"placeholders: {' '.join(f'{{{name}}}' for name in names)}"] if names else []


def _listed(word: str, forms: Sequence[str]) -> list[str]:
    distinct = {form.casefold(): form for form in reversed(forms)}
    return [f"{word}: {', '.join(reversed(distinct.values()))}"] if forms else []
