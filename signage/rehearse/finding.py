"""What the rehearsal found."""

from __future__ import annotations

from dataclasses import dataclass

from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem, Severity
from signage.ground.rule import Rule

Identity = tuple[str, str | None, str | None, str | None]


@dataclass(frozen=True, slots=True)
class Finding:
    """One finding: the rule, the step and the person it concerns, and the item that it is about.

    ``step`` is None where the finding is about kit, ward or policy as a whole. ``others`` are further items
    involved, such as what still lies over the item.
    """

    rule: Rule
    message: str
    protocol: str
    step: str | None = None
    person: str | None = None
    item: str | None = None
    others: tuple[str, ...] = ()
    place: Place = NOWHERE
    own_hint: str = ""
    own_severity: Severity | None = None

    @property
    def code(self) -> str:
        """The code of its rule."""
        return self.rule.code

    @property
    def severity(self) -> Severity:
        """How bad it is: as bad as its rule says, unless this one is worse or milder."""
        return self.own_severity or self.rule.severity

    @property
    def hint(self) -> str:
        """What to do: the cure of its rule unless this one has its own."""
        return self.own_hint or self.rule.cure

    @property
    def identity(self) -> Identity:
        """What makes two findings of two runs the same one."""
        return self.code, self.step, self.person, self.item

    def as_problem(self) -> Problem:
        """The finding in the form of all problems."""
        return self.rule.problem(
            self.message,
            self.place,
            hint=self.own_hint,
            severity=self.own_severity,
            protocol=self.protocol,
            step=self.step,
        )
