"""What is wrong, how bad, where, and what to do."""

from collections.abc import Generator, Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any, TypeAlias, TypeVar

from signage.ground.place import NOWHERE, Place


class Severity(StrEnum):
    """S1 blocks every non-draft sheet, S2 blocks approval unless waived, S3 warns."""

    S1 = "S1"
    S2 = "S2"
    S3 = "S3"


@dataclass(frozen=True, slots=True)
class Problem:
    """One finding. ``message`` says what was found and what was wanted, ``hint`` what to do.

    ``text`` is the context of the message that a finding is about, such as ``off/apron-off/text``.
    ``is_in_work``: it is of a language that nothing is printed in yet, so it fails no command.
    """

    code: str
    name: str
    severity: Severity
    message: str
    hint: str = ""
    place: Place = NOWHERE
    protocol: str | None = None
    step: str | None = None
    locale: str | None = None
    sheet: str | None = None
    text: str | None = None
    is_in_work: bool = False

    def as_json(self) -> dict[str, str | int | None]:
        """The fields of the contract; those that do not apply are null."""
        known = bool(self.place.path)
        return {
            "code": self.code,
            "name": self.name,
            "severity": self.severity.value,
            "message": self.message,
            "hint": self.hint or None,
            "path": self.place.path if known else None,
            "line": self.place.line or None,
            "column": self.place.column or None,
            "protocol": self.protocol,
            "step": self.step,
            "locale": self.locale,
            "sheet": self.sheet,
            "text": self.text,
            "in_work": self.is_in_work,
        }


Value = TypeVar("Value")
Reading: TypeAlias = Generator[Problem, None, Value]
"""What is read: every problem is yielded, and the value is returned at the end (``yield from`` gives it)."""


def read_each(readings: Iterable[Reading[Value]]) -> Reading[tuple[Value, ...]]:
    """The values of several readings in their order."""
    values = []
    for reading in readings:
        value = yield from reading
        values.append(value)
    return tuple(values)


def with_problems(reading: Reading[Value]) -> tuple[Value, tuple[Problem, ...]]:
    """The value of a reading, and all problems that were met on the way."""
    problems = []
    while True:
        try:
            problems.append(next(reading))
        except StopIteration as end:
            return end.value, tuple(problems)


def problem_from_json(fields: Mapping[str, Any]) -> Problem:
    """The finding of which these are the fields of the contract. Raises KeyError, TypeError or ValueError."""
    path = fields["path"]
    return Problem(
        code=fields["code"],
        name=fields["name"],
        severity=Severity(fields["severity"]),
        message=fields["message"],
        hint=fields["hint"] or "",
        place=Place(path, fields["line"] or 0, fields["column"] or 0) if path else NOWHERE,
        protocol=fields["protocol"],
        step=fields["step"],
        locale=fields["locale"],
        sheet=fields["sheet"],
        text=fields["text"],
        is_in_work=fields["in_work"],
    )
