"""A kind of fault that a file written by people can have."""

from __future__ import annotations

from dataclasses import dataclass

from signage.ground.place import Place
from signage.ground.problem import Problem, Severity


@dataclass(frozen=True, slots=True)
class InputFault:
    """A kind of fault: its code, its name, what it is, why it is refused, one example and the cure."""

    code: str
    name: str
    what: str
    why: str
    example: str
    cure: str

    @property
    def severity(self) -> Severity:
        """What cannot be read with certainty is not used at all."""
        return Severity.S1

    def at(self, place: Place, message: str, hint: str = "") -> Problem:
        """A problem of this kind at a place; the hint is the fault's own cure unless one is given."""
        return Problem(self.code, self.name, self.severity, message, hint or self.cure, place)
