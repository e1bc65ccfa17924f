"""Bins, times and other numbers that a text names, against those of its step and of its source text."""

from __future__ import annotations

import re
from collections.abc import Iterator

from signage.ground.language import script_of
from signage.model.library import Library, Protocol, Step
from signage.model.messages import Message
from signage.words.entry_checks import Fault
from signage.words.meaning.number_words import Found, numbers_in
from signage.words.meaning.phrases import Phrases
from signage.words.meaning.vocabulary import LanguageVocabulary
from signage.words.placeholders import placeholder_names, without_placeholders
from signage.words.step_values import values_of_step

_WORD = re.compile(r"[^\s«»“”„\"'‘’(){},.;:!?؟،؛।፣፤።]+")
_CODE = re.compile(r"[A-Z0-9]{1,3}")
_QUOTED = re.compile(r"[«“„\"‘'](?:\s)?([A-Z][A-Z0-9]{0,2})(?:\s)?[»”“\"’']")
_FIRST_TELLING = 3
"""Smaller numbers are articles, pairs and duals, which languages put as they please."""


class ValueCheck:
    """The rules WD-50 to WD-53 for one locale."""

    def __init__(self, library: Library, own: LanguageVocabulary) -> None:
        self._library = library
        self._own = own
        self._is_latin = script_of(own.tag) == "Latn"
        self._bins = Phrases(_words_for_bins(library, own.tag), own.tag)

    def faults_of_bins(self, protocol: Protocol, step: Step | None, text: str) -> Iterator[Fault]:
        """WD-50: the code of another bin than the step's, or of none of the ward's."""
        ward = self._library.wards[protocol.ward]
        codes = {fixture.code for fixture in ward.fixtures.values() if fixture.code is not None}
        own = (
            frozenset(values_of_step(self._library, protocol, step).bins) if step is not None else frozenset()
        )
        found = self._codes_in(text, frozenset(codes))
        if self._own.denial_in(text) is not None:
            return
        for code in sorted(found):
            if own and code not in own:
                yield (
                    "WD-50",
                    f"'{text}' names {code}, the bin of the step carries {' and '.join(sorted(own))}",
                )
            elif code not in codes:
                yield "WD-50", f"'{text}' names {code}, no bin of the ward carries that code"

    def faults_of_times(
        self, protocol: Protocol, step: Step, text: str, known: tuple[Found, ...] | None
    ) -> Iterator[Fault]:
        """WD-51: a time that contradicts the step's; WD-52: the step's own time, typed.

        ``known`` are the numbers of the source text, whose faults are told there, as figures of a
        translation are by WD-7; None for a source text, in which a time beside {time} may be another's.
        """
        seconds = values_of_step(self._library, protocol, step).seconds
        if seconds is None:
            return
        has_time = placeholder_names(text)["time"] > 0
        told = {found.seconds for found in known or ()}
        for found in numbers_in(text, self._own.tag):
            if found.seconds is None or found.seconds in told or (known is not None and not found.is_spelt):
                continue
            if found.seconds == seconds:
                yield "WD-52", f"'{found.text}' is typed in '{text}'; {{time}} writes it"
            elif not has_time or known is not None:
                yield "WD-51", f"'{found.text}' stands in '{text}', the step gives {seconds} s"

    def faults_of_numbers(self, message: Message, text: str, source_tag: str) -> Iterator[Fault]:
        """WD-53: a number spelt out in the translation that the source text does not hold."""
        known = [found.value for found in numbers_in(message.source, source_tag)]
        for found in numbers_in(text, self._own.tag):
            if not found.is_spelt or found.value in known:
                continue
            is_other_time = found.seconds is not None
            is_telling = found.value >= _FIRST_TELLING and not found.is_ambiguous
            contradicts = any(value >= _FIRST_TELLING for value in known) and not found.is_ambiguous
            if is_other_time or is_telling or contradicts:
                yield "WD-53", f"'{found.text}' stands in '{text}', no such number in '{message.source}'"

    def _codes_in(self, text: str, codes: frozenset[str]) -> frozenset[str]:
        """The codes of bins in a text: beside a word for one, in quotation marks, or in another script."""
        plain = without_placeholders(text)
        found = set(_QUOTED.findall(plain)) & codes
        words = _WORD.findall(plain)
        for i, word in enumerate(words):
            if _CODE.fullmatch(word) is None:
                continue
            is_named = i > 0 and self._bins.found_in(words[i - 1]) is not None
            if is_named or (not self._is_latin and word in codes):
                found.add(word)
        return frozenset(found)


def _words_for_bins(library: Library, tag: str) -> Iterator[str]:
    """The words for things with a code, from the glossary; in the source language their kinds too."""
    kinds = {
        fixture.kind
        for ward in library.wards.values()
        for fixture in ward.fixtures.values()
        if fixture.code is not None
    }
    if tag == library.source_locale:
        yield from kinds
    for term in library.terms:
        if term.id in kinds:
            yield from term.approved.get(tag, ())
            yield from term.forbidden.get(tag, ())
