"""The words of a language as pages set them: lines may break wherever a phone is narrow."""

from __future__ import annotations

from datetime import date

from signage.ground.language import language_of
from signage.model.library import Phase, Protocol, Step
from signage.words.ties import soften
from signage.words.wording import StepField, Wording


class PageWords:
    """The wording of a locale without the soft ties that keep lines of a sheet together."""

    def __init__(self, wording: Wording) -> None:
        self.wording = wording
        self.tag = wording.tag
        self.name = wording.name
        self.script = wording.script
        self.is_right_to_left = wording.is_right_to_left

    @property
    def direction(self) -> str:
        """The value of the attribute ``dir``."""
        return "rtl" if self.is_right_to_left else "ltr"

    @property
    def speech(self) -> str:
        """The primary language, by which a voice of the phone is chosen."""
        return language_of(self.tag)

    @property
    def digits(self) -> str:
        """The digits from zero to nine, for numbers that a script counts."""
        return "".join(self.wording.number(digit) for digit in range(10))

    def content(self, context: str, **values: str) -> str:
        """A text of the content by its context."""
        return soften(self.wording.content(context, **values), self.tag)

    def fixed(self, id_: str, **values: str) -> str:
        """A fixed word by its id."""
        return soften(self.wording.fixed(id_, **values), self.tag)

    def step_text(self, protocol: Protocol, step: Step, field: StepField) -> str | None:
        """A text of a step, None where it has no such text."""
        text = self.wording.step_text(protocol, step, field)
        return None if text is None else soften(text, self.tag)

    def phase_rule(self, protocol: Protocol, phase: Phase) -> str | None:
        """The sentences that hold for a whole phase, None where it has none."""
        text = self.wording.phase_rule(protocol, phase)
        return None if text is None else soften(text, self.tag)

    def number(self, value: int) -> str:
        """A whole number in the numerals of the locale."""
        return self.wording.number(value)

    def seconds(self, value: int) -> str:
        """A time such as ``20 s``."""
        return self.wording.seconds(value)

    def date(self, day: date) -> str:
        """A date with the name of its month."""
        return self.wording.date(day)

    def code(self, text: str) -> str:
        """A code kept from left to right."""
        return self.wording.code(text)
