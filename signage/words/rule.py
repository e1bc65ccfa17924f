"""What a rule of words is: its code, severity and explanation, and the problem it finds."""

from __future__ import annotations

from dataclasses import dataclass

from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem, Severity


@dataclass(frozen=True, slots=True)
class WordsRule:
    """A rule by its code; ``name`` is the fault. ``example`` shows the fault, ``cure`` ends it."""

    code: str
    name: str
    severity: Severity
    what: str
    why: str
    example: str
    cure: str

    def problem(
        self,
        message: str,
        place: Place = NOWHERE,
        *,
        locale: str | None = None,
        protocol: str | None = None,
        step: str | None = None,
        text: str | None = None,
    ) -> Problem:
        """A finding of this rule; its hint is the cure. ``text`` is the context of the message."""
        return Problem(
            self.code,
            self.name,
            self.severity,
            message,
            self.cure,
            place,
            protocol,
            step,
            locale=locale,
            text=text,
        )


S1, S2, S3 = Severity.S1, Severity.S2, Severity.S3
