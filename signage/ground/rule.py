"""What can be found wrong, and the one way in which a problem is made of it."""

from __future__ import annotations

from dataclasses import dataclass

from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem, Severity

S1, S2, S3 = Severity.S1, Severity.S2, Severity.S3


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule by its code; ``name`` is the fault. ``example`` shows the fault, ``cure`` ends it.

    S1 blocks every sheet that is no draft, S2 blocks approval unless it is waived, S3 warns.
    """

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
        hint: str = "",
        severity: Severity | None = None,
        protocol: str | None = None,
        step: str | None = None,
        locale: str | None = None,
        sheet: str | None = None,
        text: str | None = None,
    ) -> Problem:
        """A problem of this kind; its hint is the cure and its severity that of the rule unless given.

        ``text`` is the context of the message that it is about.
        """
        return Problem(
            self.code,
            self.name,
            severity or self.severity,
            message,
            hint or self.cure,
            place,
            protocol,
            step,
            locale,
            sheet,
            text,
        )
