"""What a rule over the content as a whole is: it looks at the library on a day and returns problems."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date

from signage.check.rule import Explanation
from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem
from signage.load.unread_files import UnreadFile
from signage.model.library import Library


@dataclass(frozen=True)
class ContentSubject:
    """A library on a day, with what its folders hold beside it.

    ``unlisted`` are the locale folders that library.yaml does not name, as tag and place.
    """

    library: Library
    today: date
    unread: tuple[UnreadFile, ...] = ()
    unlisted: tuple[tuple[str, Place], ...] = ()

    def problem(
        self,
        rule: Explanation,
        message: str,
        place: Place = NOWHERE,
        *,
        hint: str = "",
        protocol: str | None = None,
        step: str | None = None,
    ) -> Problem:
        """A finding of a rule about this library; its hint is the cure unless one is given."""
        return Problem(rule.code, rule.name, rule.severity, message, hint or rule.cure, place, protocol, step)


@dataclass(frozen=True)
class ContentRule:
    """A rule over the content as a whole."""

    explanation: Explanation
    find: Callable[[ContentSubject], Iterable[Problem]]
