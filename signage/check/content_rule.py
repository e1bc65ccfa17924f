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
class SignOffFault:
    """What is wrong with sign-offs, and where; the hint is empty where the cure of the rule holds."""

    message: str
    place: Place = NOWHERE
    hint: str = ""


@dataclass(frozen=True)
class SignOffFaults:
    """``fault``: for which no sign-off counts at all. ``uncounted``: those that do not, in a whole file."""

    fault: SignOffFault | None = None
    uncounted: tuple[SignOffFault, ...] = ()


@dataclass(frozen=True)
class ContentSubject:
    """A library on a day, with what its folders hold beside it.

    ``unlisted`` are the locale folders that library.yaml does not name, as tag and place.
    """

    library: Library
    today: date
    unread: tuple[UnreadFile, ...] = ()
    unlisted: tuple[tuple[str, Place], ...] = ()
    sign_offs: SignOffFaults = SignOffFaults()

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
