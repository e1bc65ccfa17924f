"""A waiver: somebody with the right to do so accepts one finding in one step until a date."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from signage.model.located import Located


@dataclass(frozen=True, kw_only=True)
class Waiver(Located):
    """``code`` is the rule of the finding; None in a field is for findings that name no such thing.

    A finding of words is accepted in one language, its ``locale``; other findings in all languages where
    that is None. ``sheet`` is the beginning of a sheet's name, such as ``poster put-on``; None is any
    sheet. ``role`` is who accepts it, never a name. ``expires`` is the last day on which it holds.
    """

    code: str
    protocol: str | None = None
    step: str | None = None
    locale: str | None = None
    sheet: str | None = None
    reason: str
    role: str
    expires: date
