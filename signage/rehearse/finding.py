"""What the rehearsal found."""

from __future__ import annotations

from dataclasses import dataclass

from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem, Severity

Identity = tuple[str, str | None, str | None, str | None]


@dataclass(frozen=True, slots=True)
class Finding:
    """One finding: the rule, the step and the person it concerns, and the item that it is about.

    ``step`` is None where the finding is about kit, ward or policy as a whole. ``others`` are further items
    involved, such as what still lies over the item.
    """

    code: str
    name: str
    severity: Severity
    message: str
    hint: str
    protocol: str
    step: str | None = None
    person: str | None = None
    item: str | None = None
    others: tuple[str, ...] = ()
    place: Place = NOWHERE

    @property
    def identity(self) -> Identity:
        """What makes two findings of two runs the same one."""
        return self.code, self.step, self.person, self.item

    def as_problem(self) -> Problem:
        """The finding in the form of all problems."""
        return Problem(
            self.code,
            self.name,
            self.severity,
            self.message,
            self.hint,
            self.place,
            self.protocol,
            self.step,
        )
