"""Whether every locale says everything, and says it right: all problems of all catalogues at once."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem
from signage.model.library import Library, LocaleState, Protocol, Step
from signage.model.messages import Message, MessageRole, contexts_of_protocol
from signage.text.font_set import FontSet
from signage.words.catalogue import (
    INTERFACE_LANGUAGE,
    Catalogue,
    CatalogueKind,
    Entry,
    catalogue_path,
    is_lossy,
    kinds_of,
)
from signage.words.entry_checks import Fault, faults_of_source, faults_of_translation
from signage.words.fixed.interface import FIXED_TEXTS, OTHER_CONTEXTS
from signage.words.hygiene.other_language import left_over
from signage.words.meaning.checks import MeaningCheck
from signage.words.meaning.term_checks import TermCheck
from signage.words.meaning.terms import words_of_glossary
from signage.words.numerals import Numerals, cldr_locale
from signage.words.placeholders import placeholder_names
from signage.words.po.reader import read_catalogue_file
from signage.words.rules import RULE_OF
from signage.words.script_font import script_without_font
from signage.words.shipped import shipped_entries
from signage.words.source_checks import SourceCheck
from signage.words.step_values import values_of_step

__all__ = ["counted_problems", "coverage_problems", "fixed_messages", "locale_problems"]

_NOT_PRINTED = frozenset({"WD-1", "WD-2", "WD-3", "WD-4"})
_MOST_GLYPHS = 10
"""Texts with characters that no font has; more are told as one, since they lack the font of their script."""

_GAPS = frozenset({"WD-1", "WD-2", "WD-17"})
"""What a language in work lacks: progress, not faults."""


def coverage_problems(
    library: Library, messages: Sequence[Message], locales: Path, fonts: FontSet
) -> Iterator[Problem]:
    """Every fault of words that counts, of all locales of the library (``counted_problems``)."""

    def found_in(tag: str) -> Iterable[Problem]:
        return locale_problems(library, messages, locales, tag, fonts)

    return counted_problems(library, messages, found_in)


def counted_problems(
    library: Library, messages: Sequence[Message], found_in: Callable[[str], Iterable[Problem]]
) -> Iterator[Problem]:
    """Of the faults of each locale those that count, in the order of the locales and texts of the library.

    A locale in use must be whole and right. A locale in work has no gaps to tell, they are progress; the
    faults of the texts that it has are told as of one in work. A file that cannot be read without loss counts
    in any state: nobody can work on it. The source texts are looked at as well.
    """
    for tag, locale in library.locales.items():
        is_in_work = locale.state is LocaleState.IN_WORK and tag != library.source_locale
        needed = _texts_of(library, messages, locale.protocols) if locale.protocols else None
        for each in found_in(tag):
            if is_in_work:
                if each.code not in _GAPS:
                    yield replace(each, is_in_work=not is_lossy(each))
            elif needed is None or each.text in needed:
                yield each
            elif each.code not in _GAPS:
                yield replace(each, is_in_work=True)
    if library.source_locale not in library.locales:
        yield from found_in(library.source_locale)


def _texts_of(library: Library, messages: Sequence[Message], protocols: Iterable[str]) -> set[str | None]:
    """The contexts of all texts that sheets and pages of the protocols show, fixed words among them."""
    fixed = {f"interface/{name}" for name in FIXED_TEXTS} - OTHER_CONTEXTS
    contexts: set[str | None] = {*fixed, None}
    for name in protocols:
        contexts |= contexts_of_protocol(library.protocols[name], messages)
    return contexts


def locale_problems(
    library: Library, messages: Sequence[Message], locales: Path, tag: str, fonts: FontSet
) -> Iterator[Problem]:
    """Every fault of one locale, whatever its state: what a translator still has to do."""
    yield from _without_flood_of_glyphs(list(_all_problems(library, messages, locales, tag, fonts)))


def _all_problems(
    library: Library, messages: Sequence[Message], locales: Path, tag: str, fonts: FontSet
) -> Iterator[Problem]:
    subject = _Subject.of(library, tag, fonts)
    yield from _locale_faults(subject)
    if tag == library.source_locale:
        yield from _source_faults(subject, messages)
    for kind in kinds_of(library, tag):
        path = catalogue_path(locales, tag, kind)
        place = Place(path.as_posix())
        if not path.exists():
            message = f"the locale {tag} has no catalogue {path.name}"
            yield RULE_OF["WD-17"].problem(message, place, locale=tag)
            continue
        result = read_catalogue_file(path, tag)
        yield from result.problems
        if result.is_readable:
            wanted = fixed_messages() if kind is CatalogueKind.INTERFACE else messages
            yield from _catalogue_faults(subject, wanted, result.catalogue, place)


def _without_flood_of_glyphs(problems: Sequence[Problem]) -> Sequence[Problem]:
    """A language whose script no font shows is told once, not text by text."""
    if any(problem.code == "WD-39" for problem in problems):
        return [problem for problem in problems if problem.code != "WD-37"]
    glyphs = [problem for problem in problems if problem.code == "WD-37"]
    if len(glyphs) <= _MOST_GLYPHS:
        return problems
    message = f"{glyphs[0].message}; {len(glyphs) - 1} more texts have such characters"
    others = [problem for problem in problems if problem.code != "WD-37"]
    return [*others, replace(glyphs[0], message=message)]


def fixed_messages() -> tuple[Message, ...]:
    """The fixed words of the sheets as messages; their place in a file is none of the content's."""
    return tuple(
        Message(f"interface/{text.id}", text.source, MessageRole.NOTE, NOWHERE)
        for text in FIXED_TEXTS.values()
    )


@dataclass(frozen=True)
class _Subject:
    """A locale under examination."""

    library: Library
    tag: str
    fonts: FontSet
    steps: Mapping[tuple[str | None, str | None], tuple[Protocol, Step]]
    terms: TermCheck
    names: frozenset[str]

    @classmethod
    def of(cls, library: Library, tag: str, fonts: FontSet) -> _Subject:
        steps: dict[tuple[str | None, str | None], tuple[Protocol, Step]] = {
            (protocol.id, step.id): (protocol, step)
            for protocol in library.protocols.values()
            for step in protocol.steps
        }
        return cls(library, tag, fonts, steps, TermCheck(library, tag), words_of_glossary(library.terms, tag))

    def source_tag(self, message: Message) -> str:
        """The language that a message is translated from."""
        return INTERFACE_LANGUAGE if message.context.startswith("interface/") else self.library.source_locale

    def step_of(self, message: Message) -> Step | None:
        found = self.steps.get((message.protocol, message.step))
        return found[1] if found is not None else None

    def problem(self, fault: Fault, message: Message | None, place: Place) -> Problem:
        code, found = fault
        if message is None:
            return RULE_OF[code].problem(found, place, locale=self.tag)
        return RULE_OF[code].problem(
            f"{message.context}: {found}",
            place,
            locale=self.tag,
            protocol=message.protocol,
            step=message.step,
            text=message.context,
        )


def _locale_faults(subject: _Subject) -> Iterator[Problem]:
    """Rules WD-18, WD-19 and WD-39: what CLDR and the fonts say to the entry in library.yaml."""
    locale = subject.library.locales.get(subject.tag)
    if locale is None:
        return
    if cldr_locale(subject.tag) is None:
        fault = "WD-18", f"CLDR has no data for '{subject.tag}'"
        yield subject.problem(fault, None, locale.place)
    unseen = script_without_font(subject.tag, subject.fonts)
    if unseen is not None:
        yield subject.problem(("WD-39", unseen), None, locale.place)
    try:
        Numerals(subject.tag, locale.numerals)
    except ValueError as error:
        yield subject.problem(("WD-19", str(error)), None, locale.at("numerals"))


def _source_faults(subject: _Subject, messages: Sequence[Message]) -> Iterator[Problem]:
    """Rule WD-20, and what is wrong with the source texts themselves."""
    texts = {message.context: message.source for message in messages}
    meaning = MeaningCheck(subject.library, subject.tag, texts)
    yield from _meaning_of_locale(subject, meaning)
    for message in messages:
        found = subject.steps.get((message.protocol, message.step))
        if found is not None:
            for fault in _unfilled(subject.library, *found, message.source):
                yield subject.problem(fault, message, message.place)
        for fault in faults_of_source(message.source, subject.tag, subject.fonts):
            yield subject.problem(fault, message, message.place)
        for fault in subject.terms.faults_of_text(message, message.source, subject.step_of(message)):
            yield subject.problem(fault, message, message.place)
        for fault in meaning.faults_of_text(message, message.source):
            yield subject.problem(fault, message, message.place)
    for message, fault in SourceCheck(subject.library, messages).faults_of_steps():
        yield subject.problem(fault, message, message.place)
    yield from _unnamed_items(subject, messages, texts, {m.context: m.place for m in messages})


def _unfilled(library: Library, protocol: Protocol, step: Step, text: str) -> Iterator[Fault]:
    values = values_of_step(library, protocol, step)
    names = placeholder_names(text)
    for name in sorted(names.keys() - values.filled):
        yield "WD-20", f"nothing in the step gives {{{name}}} a value"
    if names["amount"] and values.amount is not None:
        try:
            Numerals(library.source_locale).amount(values.amount)
        except ValueError as error:
            yield "WD-20", str(error)


def _catalogue_faults(
    subject: _Subject, messages: Sequence[Message], catalogue: Catalogue, file: Place
) -> Iterator[Problem]:
    entries = catalogue.by_context
    sound: dict[str, str] = {}
    for message in messages:
        entry = entries.get(message.context)
        place = entry.place if entry is not None else file
        faults = list(_entry_faults(subject, message, entry))
        if entry is not None and not any(code in _NOT_PRINTED for code, _ in faults):
            sound[message.context] = entry.translation
        yield from (subject.problem(fault, message, place) for fault in faults)
    places = {context: entry.place for context, entry in entries.items()}
    yield from _unnamed_items(subject, messages, sound, places)
    yield from _meaning_faults(subject, messages, sound, places)
    yield from _left_over_faults(subject, messages, sound, entries)
    wanted = {message.context for message in messages}
    for entry in catalogue.entries:
        if entry.context and entry.context not in wanted:
            fault = "WD-14", f"the library has no text '{entry.context}'"
            yield subject.problem(fault, None, entry.place)


def _left_over_faults(
    subject: _Subject, messages: Sequence[Message], texts: Mapping[str, str], entries: Mapping[str, Entry]
) -> Iterator[Problem]:
    """Rule WD-35 for single words, which only the other texts of the catalogue betray."""
    by_context = {message.context: message for message in messages}
    pairs = {
        context: (by_context[context].source, text)
        for context, text in texts.items()
        if not entries[context].marks.is_same_as_source and text != by_context[context].source
    }
    source_tag = subject.source_tag(messages[0]) if messages else subject.tag
    for context, word in left_over(pairs, subject.tag, source_tag):
        if word not in subject.names:
            fault = "WD-35", f"'{word}' is left of the source text; other texts translate it"
            yield subject.problem(fault, by_context[context], entries[context].place)


def _meaning_faults(
    subject: _Subject, messages: Sequence[Message], texts: Mapping[str, str], places: Mapping[str, Place]
) -> Iterator[Problem]:
    """What the sound translations mean, one by one and beside one another.

    Words as the programme brings them are judged in its own tests: the glossary of a library may be older
    than they are, and would refuse sheets for words that nobody there has written.
    """
    brought = shipped_entries(subject.tag)
    source_tag = subject.source_tag(messages[0]) if messages else subject.tag
    meaning = MeaningCheck(subject.library, subject.tag, texts, source_tag)
    if any(message.protocol is not None for message in messages):
        yield from _meaning_of_locale(subject, meaning)
    for message in messages:
        if message.context in texts and not _is_as_brought(brought.get(message.context), message, texts):
            for fault in meaning.faults_of_text(message, texts[message.context]):
                yield subject.problem(fault, message, places[message.context])
    for message, fault in meaning.faults_across_texts(messages):
        yield subject.problem(fault, message, places[message.context])


def _is_as_brought(entry: Entry | None, message: Message, texts: Mapping[str, str]) -> bool:
    return (
        entry is not None and entry.source == message.source and entry.translation == texts[message.context]
    )


def _meaning_of_locale(subject: _Subject, meaning: MeaningCheck) -> Iterator[Problem]:
    locale = subject.library.locales.get(subject.tag)
    for fault in meaning.faults_of_locale():
        yield subject.problem(fault, None, locale.place if locale is not None else NOWHERE)


def _entry_faults(subject: _Subject, message: Message, entry: Entry | None) -> Iterator[Fault]:
    if entry is None or not entry.translation:
        yield "WD-1", f"no translation of '{message.source}'"
    elif entry.source != message.source:
        yield "WD-3", f"translated from '{entry.source}'; the source text is now '{message.source}'"
    elif entry.is_stale:
        yield "WD-3", f"translated from '{entry.previous}'; the source text is now '{message.source}'"
    elif entry.is_doubtful:
        yield "WD-2", f"the translation '{entry.translation}' is marked as doubtful"
    else:
        yield from faults_of_translation(
            entry, subject.tag, subject.source_tag(message), subject.fonts, subject.names
        )
        yield from subject.terms.faults_of_text(message, entry.translation, subject.step_of(message))


def _unnamed_items(
    subject: _Subject, messages: Sequence[Message], texts: Mapping[str, str], places: Mapping[str, Place]
) -> Iterator[Problem]:
    """Rule WD-9 for steps as a whole, at their headline; steps with a text that lacks are left alone."""
    by_step: dict[tuple[str | None, str | None], list[Message]] = {}
    for message in messages:
        if message.step is not None:
            by_step.setdefault((message.protocol, message.step), []).append(message)
    for key, of_step in by_step.items():
        if key not in subject.steps or any(message.context not in texts for message in of_step):
            continue
        step = subject.steps[key][1]
        for fault in subject.terms.faults_of_step(step, [texts[message.context] for message in of_step]):
            yield subject.problem(fault, of_step[0], places[of_step[0].context])
