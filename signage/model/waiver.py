"""A waiver: somebody with the right to do so accepts one finding in one step until a date."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from signage.model.library import Located


@dataclass(frozen=True, kw_only=True)
class Waiver(Located):
    """``code`` is the rule of the finding; ``step`` None is for findings that belong to no step.

    ``role`` is who accepts it, never a name. ``expires`` is the last day on which it holds.
    """

    code: str
    protocol: str
    step: str | None
    reason: str
    role: str
    expires: date
