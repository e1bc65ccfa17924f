"""What a rule over the content as a whole is: it looks at the library on a day and returns problems."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date

from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem
from signage.ground.rule import Rule
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
        rule: Rule,
        message: str,
        place: Place = NOWHERE,
        *,
        hint: str = "",
        protocol: str | None = None,
        step: str | None = None,
    ) -> Problem:
        """A finding of a rule about this library; its hint is the cure unless one is given."""
        return rule.problem(message, place, hint=hint, protocol=protocol, step=step)


@dataclass(frozen=True)
class ContentRule:
    """A rule over the content as a whole."""

    rule: Rule
    find: Callable[[ContentSubject], Iterable[Problem]]
