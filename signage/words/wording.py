"""The words of one locale, filled and tied: what the sheets, pages and reports of that language say."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import cached_property
from pathlib import Path
from typing import Literal

from signage.ground.errors import RefusedError, WrongUsageError
from signage.ground.language import is_right_to_left, script_of
from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem
from signage.ground.quotation import quoted, shortened
from signage.model.library import Library, Phase, Protocol, Step
from signage.model.messages import Message, rule_contexts, step_context
from signage.text.font_set import FontSet
from signage.words.catalogue import CatalogueKind, Entry, EntryState, catalogue_path, kinds_of, refuse_lossy
from signage.words.fixed.interface import FIXED_TEXTS
from signage.words.hygiene.settable import reason_not_to_set
from signage.words.hygiene.unseen import is_blank
from signage.words.numerals import Numerals, autonym
from signage.words.origin import TextOrigins
from signage.words.placeholders import (
    StrayBraceError,
    fill,
    has_stray_brace,
    isolate,
    isolate_code,
    placeholder_names,
)
from signage.words.po.reader import read_catalogue_file
from signage.words.standin import STAND_IN_NAMES, STAND_INS
from signage.words.step_values import StepValues, values_of_step
from signage.words.ties import tie

_STRAY_BRACE = "it has a brace that belongs to no placeholder"

StepField = Literal["text", "detail", "why", "caution"]

_BEHIND_THE_DETAIL = ("detail", "posture", "pace")
"""How something is done: set as one text, in this order."""


class MissingMessageError(RefusedError):
    """A locale lacks a text; another language never takes its place. ``sentence`` is without the place."""

    def __init__(self, locale: str, context: str, reason: str, place: Place = NOWHERE) -> None:
        self.sentence = (
            f"{locale} has no text to print for {quoted(context)}: {reason}. "
            "Complete the entry and run the command again."
        )
        super().__init__(f"{place}: {self.sentence}" if place.path else self.sentence)
        self.locale = locale
        self.context = context
        self.place = place


class MissingValueError(RefusedError):
    """A text has a placeholder that nothing fills; ``sentence`` is without the place."""

    def __init__(self, locale: str, context: str, placeholder: str, place: Place = NOWHERE) -> None:
        self.sentence = (
            f"The text {quoted(context)} of {locale} has the placeholder "
            f"{{{shortened(placeholder, 40)}}}, and nothing gives it a value. "
            "Give the step the value or remove the placeholder."
        )
        super().__init__(f"{place}: {self.sentence}" if place.path else self.sentence)
        self.locale = locale
        self.context = context
        self.place = place
        self.placeholder = placeholder


@dataclass(frozen=True, slots=True)
class _Text:
    """A text of the locale, or why there is none; ``place`` is where it is to be mended."""

    text: str | None
    lack: str = ""
    place: Place = NOWHERE
    is_checked: bool = True
    as_written: str = ""
    """What a catalogue holds although it must not be printed, for proofs."""


class Wording:
    """Every text of one locale. Made by ``open_wording``; holds no file open and never changes.

    ``script`` is ISO 15924; ``fonts`` are those that the texts are set in.
    Every value inserted into a text stands in a first-strong isolate; sense ties
    are set as U+00A0 (``signage.words.ties``).
    """

    def __init__(
        self,
        library: Library,
        tag: str,
        texts: Mapping[str, _Text],
        numerals: Numerals,
        name: str,
        fonts: FontSet,
    ) -> None:
        self.tag = tag
        self.script = script_of(tag)
        self.is_right_to_left = is_right_to_left(tag)
        self.name = name
        self.fonts = fonts
        self._library = library
        self._texts = texts
        self._numerals = numerals
        self._is_for_proof = False
        self._said: dict[Hashable, str] = {}

    @property
    def gaps(self) -> tuple[str, ...]:
        """The contexts that have no text to print, in the order of the library."""
        return tuple(context for context, text in self._texts.items() if text.text is None)

    def place_of(self, context: str | None) -> Place:
        """Where a text is to be mended: its entry in the catalogue, or its place in the content.

        A text without an entry has the place of its catalogue as a whole; a fixed word that belongs to the
        programme, and a context that does not exist, have none.
        """
        found = self._texts.get(context or "")
        return NOWHERE if found is None else found.place

    def context_of(self, line: str, protocol: str = "") -> str | None:
        """The context of the text that a line on a sheet was made from, or None (``TextOrigins``)."""
        return self._origins.context_of(line, protocol)

    @cached_property
    def _origins(self) -> TextOrigins:
        return TextOrigins({context: text.text for context, text in self._texts.items() if text.text})

    @property
    def unchecked(self) -> frozenset[str]:
        """The contexts whose text no second person has checked, or that are left as a machine made them."""
        return frozenset(context for context, text in self._texts.items() if not text.is_checked)

    def only(self, contexts: Iterable[str]) -> Wording:
        """The same words without any text of another context: what is not there cannot be printed."""
        texts = {context: self._texts[context] for context in contexts if context in self._texts}
        part = Wording(self._library, self.tag, texts, self._numerals, self.name, self.fonts)
        part._is_for_proof = self._is_for_proof
        return part

    @property
    def texts(self) -> dict[str, str | None]:
        """Every text as it is written, by context; None where there is none to print."""
        return {context: text.text for context, text in self._texts.items()}

    def for_proof(self, sources: Mapping[str, str]) -> Wording:
        """The same words with each gap named in its place, for prints that are only read through.

        ``sources`` are the source texts by context. A name is no longer than the text it stands for, so
        that it fits where that would; a placeholder without a value stays as it is written.
        """
        named = {
            context: text
            if text.text is not None
            else _Text(text.as_written or _name_of_gap(context, sources.get(context, "")), place=text.place)
            for context, text in self._texts.items()
        }
        proof = Wording(self._library, self.tag, named, self._numerals, self.name, self.fonts)
        proof._is_for_proof = True
        return proof

    @property
    def numeral_system(self) -> str:
        """The CLDR numbering system in which numbers are written."""
        return self._numerals.system

    def content(self, context: str, **values: str) -> str:
        """The text of a context, such as ``kit/apron/name``, with its placeholders filled.

        Raises MissingMessageError for a missing, doubtful or stale translation, for one with other
        placeholders than its source and for a stray brace, MissingValueError for a placeholder without value.
        """
        return self._once(("content", context, *values.items()), lambda: self._filled(context, values))

    def _once(self, key: Hashable, write: Callable[[], str]) -> str:
        """What ``write`` gives: sheets say the same words again and again, and no text ever changes."""
        if key not in self._said:
            self._said[key] = write()
        return self._said[key]

    def _filled(self, context: str, values: Mapping[str, str]) -> str:
        found = self._texts.get(context, _Text(None, "the library has no such text"))
        if found.text is None:
            raise MissingMessageError(self.tag, context, found.lack, found.place)
        if self._is_for_proof and has_stray_brace(found.text):
            return tie(found.text, self.tag)
        if self._is_for_proof:
            values = {name: f"{{{name}}}" for name in placeholder_names(found.text)} | dict(values)
        try:
            return tie(fill(found.text, values), self.tag)
        except KeyError as error:
            raise MissingValueError(self.tag, context, str(error.args[0]), found.place) from None
        except StrayBraceError:
            raise MissingMessageError(self.tag, context, _STRAY_BRACE, found.place) from None

    def fixed(self, id_: str, **values: str) -> str:
        """A fixed word of the sheets by its id in ``signage.words.fixed.interface``."""
        return self.content(f"interface/{id_}", **values)

    def step_text(self, protocol: Protocol, step: Step, field: StepField) -> str | None:
        """A text of a step with times, items, bins, zones and amounts filled; None if it has no such text.

        Posture and pace stand behind the detail, so that whatever shows how a step is done shows them.
        """
        names = _BEHIND_THE_DETAIL if field == "detail" else (field,)
        texts = (self._own_step_text(protocol, step, name) for name in names)
        return " ".join(text for text in texts if text is not None) or None

    def phase_rule(self, protocol: Protocol, phase: Phase) -> str | None:
        """The sentences that hold for a whole phase, as one text; None if it has none."""
        return " ".join(self.content(context) for context in rule_contexts(protocol, phase)) or None

    def _own_step_text(self, protocol: Protocol, step: Step, field: str) -> str | None:
        """One text of a step."""
        if getattr(step, field) is None:
            return None
        context = step_context(protocol, step, field)
        found = self._texts.get(context)
        names = placeholder_names(found.text) if found is not None and found.text is not None else ()
        if not names:
            return self.content(context)
        values = values_of_step(self._library, protocol, step)
        known = {name: self._value(name, values, protocol) for name in names if name in values.filled}
        return self.content(context, **known)

    def _value(self, name: str, values: StepValues, protocol: Protocol) -> str:
        """What the locale writes for a placeholder that the step can fill."""
        if name == "time":
            return self.seconds(values.seconds or 0)
        if name == "amount":
            return self.amount(values.amount or "")
        if name == "zone":
            return self.content(f"ward/{protocol.ward}/zone/{values.zone}")
        if name == "bin":
            names = [self.content(f"ward/{protocol.ward}/fixture/{name}") for name in values.named_bins]
            return self._listed([*(self.code(letter) for letter in values.bins), *names])
        return self._listed([self.content(f"kit/{item}/name") for item in values.items])

    def _listed(self, items: Sequence[str]) -> str:
        return items[0] if len(items) == 1 else self.join(items)

    def number(self, value: float | Decimal) -> str:
        """A number in the numerals of the locale."""
        return self._once(("number", type(value), value), lambda: self._numerals.number(value))

    def seconds(self, value: float, long: bool = False) -> str:
        """A time such as ``20 s``; long: ``20 seconds``."""
        return self._once(("seconds", type(value), value, long), lambda: self._numerals.seconds(value, long))

    def millimetres(self, value: float) -> str:
        """A length such as ``50 mm``."""
        return self._once(("mm", type(value), value), lambda: self._numerals.millimetres(value))

    def amount(self, text: str) -> str:
        """An amount such as ``10 ml`` as the locale writes it; raises ValueError for an unknown unit."""
        return self._numerals.amount(text)

    def date(self, day: date) -> str:
        """A date with the name of its month."""
        return self._once(("date", day), lambda: self._numerals.date(day))

    def code(self, text: str) -> str:
        """A code such as ``P1`` or ``K7M2``, kept from left to right."""
        return isolate_code(text)

    def join(self, items: Iterable[str]) -> str:
        """The items, each isolated, with the list sign of the locale between them."""
        return self.fixed("list-joiner").join(isolate(item) for item in items)


def open_wording(
    library: Library, messages: Sequence[Message], locales: Path, tag: str, fonts: FontSet
) -> Wording:
    """The wording of a locale of the library, of its source language, or of a stand-in locale.

    Raises WrongUsageError for any other tag and for unknown numerals, UnreadableInputError with every
    fault of the locale's files that could change a text. A missing file leaves all its texts missing.
    """
    if tag in STAND_INS:
        texts = _made_texts(messages, STAND_INS[tag], _source_places(messages))
        return Wording(library, tag, texts, Numerals(tag), STAND_IN_NAMES[tag], fonts)
    if tag != library.source_locale and tag not in library.locales:
        known = ", ".join(library.locales)
        raise WrongUsageError(f"'{tag}' is no locale of the library; it has {known}")
    locale = library.locales.get(tag)
    try:
        numerals = Numerals(tag, locale.numerals if locale is not None else None)
    except ValueError as error:
        raise WrongUsageError(f"numerals of the locale {tag}: {error}") from error
    needed = kinds_of(library, tag)
    entries = _entries(locales, tag, needed)
    places = _source_places(messages)
    texts = {}
    for kind, sources in source_texts(messages).items():
        file = Place(catalogue_path(locales, tag, kind).as_posix())
        for context, source in sources.items():
            is_own = kind not in needed
            texts[context] = (
                _own_text(source, places.get(context, NOWHERE))
                if is_own
                else _text_of(entries[kind].get(context), source, file)
            )
    return Wording(library, tag, texts, numerals, autonym(tag), fonts)


def source_texts(messages: Sequence[Message]) -> dict[CatalogueKind, dict[str, str]]:
    """Context to source text of each catalogue, in order."""
    return {
        CatalogueKind.CONTENT: {message.context: message.source for message in messages},
        CatalogueKind.INTERFACE: {f"interface/{text.id}": text.source for text in FIXED_TEXTS.values()},
    }


def _source_places(messages: Sequence[Message]) -> dict[str, Place]:
    return {message.context: message.place for message in messages}


def _made_texts(
    messages: Sequence[Message], make: Callable[[str], str], places: Mapping[str, Place]
) -> dict[str, _Text]:
    return {
        context: _Text(make(source), place=places.get(context, NOWHERE))
        for sources in source_texts(messages).values()
        for context, source in sources.items()
    }


def _entries(
    locales: Path, tag: str, kinds: Iterable[CatalogueKind]
) -> dict[CatalogueKind, dict[str, Entry]]:
    entries: dict[CatalogueKind, dict[str, Entry]] = {}
    problems: list[Problem] = []
    for kind in kinds:
        path = catalogue_path(locales, tag, kind)
        if not path.exists():
            entries[kind] = {}
            continue
        result = read_catalogue_file(path, tag)
        problems.extend(result.problems)
        entries[kind] = result.catalogue.by_context
    refuse_lossy(problems)
    return entries


def _own_text(source: str, place: Place) -> _Text:
    """A text of the source language; also there some cannot be set."""
    lack = reason_not_to_set(source)
    return _Text(None, lack, place) if lack else _Text(source, place=place)


def _text_of(entry: Entry | None, source: str, file: Place) -> _Text:
    place = file if entry is None else entry.place
    lack = _lack_of(entry, source)
    if entry is None or lack:
        written = "" if entry is None or reason_not_to_set(entry.translation) else entry.translation
        return _Text(None, lack, place, as_written=written)
    is_checked = entry.state is EntryState.CHECKED and not entry.marks.is_machine
    return _Text(entry.translation, place=place, is_checked=is_checked)


def _lack_of(entry: Entry | None, source: str) -> str:
    """Why the text of an entry must not be printed; empty where it may."""
    if entry is None or not entry.translation or is_blank(entry.translation):
        return "it is not translated"
    if entry.source != source or entry.is_stale:
        return "its source text has changed since it was translated"
    if entry.state is EntryState.DOUBTFUL:
        return "its translation is marked as doubtful"
    if placeholder_names(entry.translation) != placeholder_names(source):
        return "its translation has other placeholders than its source text"
    if has_stray_brace(entry.translation):
        return _STRAY_BRACE
    return reason_not_to_set(entry.translation)


_SHORTEST_NAME = 8
"""Letters of the name of a gap that stay, however short the text it stands for."""


def _name_of_gap(context: str, source: str) -> str:
    """Such as ``apron-off/text``, cut to the length of the source text."""
    name = "/".join(context.split("/")[-2:]).removeprefix("interface/")
    room = max(len(source), _SHORTEST_NAME)
    return name if len(name) <= room else f"{name[: room - 1]}…"
