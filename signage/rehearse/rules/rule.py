"""What a rule of the rehearsal is."""

from __future__ import annotations

from dataclasses import dataclass

from signage.ground.problem import Severity

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
