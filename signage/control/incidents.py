"""Incident slips: whether a sheet was part of the cause. Nothing about people can be kept here."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import Any

from signage.ground.problem import Reading
from signage.load.suggestion import shorten, suggest
from signage.model.copies import CopyState
from signage.model.library import Library
from signage.trials import ward_faults as faults
from signage.trials.ward_table import Columns, Filled, read_day, read_note, read_number, read_word

INCIDENT_COLUMNS = Columns(("day", "number", "step", "part"), ("language", "mend", "fixed"))
"""There is no column for a name, a contact or anything about health, and one that is brought is refused."""

PARTS = ("yes", "no", "unsure")


@dataclass(frozen=True, slots=True)
class Incident:
    """A slip. ``step`` is the id of a step, ``part`` whether the sheet was part of the cause.

    ``mend`` is what the sheet should say, ``fixed`` the code of the revision that does.
    """

    on: date
    number: str
    subject: str
    step: str
    locale: str
    part: str
    mend: str = ""
    fixed: str = ""

    def as_json(self) -> dict[str, Any]:
        """Its fields by name."""
        return {
            "day": self.on.isoformat(),
            "number": self.number,
            "protocol": self.subject,
            "step": self.step,
            "language": self.locale,
            "part": self.part,
            "mend": self.mend or None,
            "fixed": self.fixed or None,
        }


def read_incidents(
    rows: Iterable[Filled], library: Library, states: Iterable[CopyState], today: date
) -> Reading[tuple[Incident, ...]]:
    """The slips of a filled table; every problem of every row is yielded."""
    known = {state.copy.number: state for state in states}
    found = []
    for row in rows:
        number = yield from read_number(row, "number", known)
        on = yield from read_day(row, "day", today)
        part = yield from read_word(row, "part", PARTS)
        mend = yield from read_note(row, "mend")
        fixed = yield from read_note(row, "fixed")
        if number is None:
            continue
        copy = known[number].copy
        step = yield from _step(row, library, copy.subject)
        if row["language"] and row["language"] != copy.locale:
            message = f"Copy {number} is in {copy.locale}, not in '{shorten(row['language'])}'."
            yield faults.VALUE.problem(message, row.at("language"), hint="Leave the language empty.")
        found.append(Incident(on, number, copy.subject, step, copy.locale, part, mend, fixed))
    return tuple(found)


def _step(row: Filled, library: Library, subject: str) -> Reading[str]:
    """The id of the step that is meant by its id or by its number on the sheet."""
    text = row["step"]
    protocol = library.protocols.get(subject)
    steps = [step.id for step in protocol.steps] if protocol else []
    if text in steps or not steps:
        return shorten(text)
    if text.isdecimal() and protocol is not None:
        at_number = [
            phase.steps[int(text) - 1].id for phase in protocol.phases if 0 < int(text) <= len(phase.steps)
        ]
        if len(at_number) == 1:
            return at_number[0]
        if at_number:
            message = f"More than one sheet of {protocol.code} has a step {text}."
            hint = f"Write its id: {' or '.join(at_number)}."
            yield faults.VALUE.problem(message, row.at("step"), hint=hint)
            return ""
    message = f"{protocol.code if protocol else subject} has no step '{shorten(text)}'."
    yield faults.VALUE.problem(message, row.at("step"), hint=suggest(text, steps, "Steps are"))
    return ""
