"""What the forms of the ward are made from: finished words in one language, and the library they are of."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from signage.compose.context import LocaleContext
from signage.model.library import Protocol


@dataclass(frozen=True)
class Entry:
    """A row: the number of a copy, where it is, which sheet it is, and what is told of it or its code."""

    number: str
    where: str
    sheet: str
    told: str


@dataclass(frozen=True)
class FormContext(LocaleContext):
    """A form in one locale. ``title`` and ``subtitle`` name what it is about, ``by_role`` whom to ask.

    ``made_on`` is the day of the list. ``entries`` are in walking order.
    """

    made_on: date = field(kw_only=True)
    ward: str = field(default="", kw_only=True)
    about: str = field(default="", kw_only=True)
    by_role: str = field(default="", kw_only=True)
    entries: tuple[Entry, ...] = field(default=(), kw_only=True)
    protocol: Protocol | None = field(default=None, kw_only=True)

    @property
    def protocols(self) -> tuple[Protocol, ...]:
        """The protocol that it is about, if it is about one."""
        return (self.protocol,) if self.protocol else ()

    @property
    def review_by(self) -> date:
        """The day of the list: a form is not reviewed."""
        return self.made_on
