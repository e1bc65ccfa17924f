"""An audit round: what was found on the walls, held against the register, with a score and its trend."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from signage.control.recall import place_in, walking_order
from signage.control.register.store import NewEvent
from signage.ground.problem import Reading
from signage.load.suggestion import shorten
from signage.model.copies import CopyState, EventKind
from signage.model.library import Library
from signage.trials import ward_faults as faults
from signage.trials.ward_table import Columns, Filled, read_note, read_number, read_word

AUDIT_COLUMNS = Columns(
    ("number", "present", "revision", "readable", "clean", "place"), ("where", "sheet", "code", "remark")
)
"""Columns of the table that goes with the form; ``where`` tells of a sheet that has no number."""

CHECKS = ("present", "revision", "readable", "clean", "place")
AUDIT_DAYS, USUAL_AUDIT_DAYS = "audit-days", 7
"""The value of policy.yaml that says how often every copy is looked at; a week where nothing is said
(common practice, no source)."""

_YES_NO = ("yes", "no")


@dataclass(frozen=True, slots=True)
class Looked:
    """What was seen of one expected copy: the checks that failed, none where all is well."""

    number: str
    failed: tuple[str, ...]
    remark: str = ""

    @property
    def is_ok(self) -> bool:
        """Whether nothing is wrong with it."""
        return not self.failed


@dataclass(frozen=True, slots=True)
class Stranger:
    """A sheet that should not hang there: a known copy that is not mounted, or one without a number."""

    number: str
    where: str
    remark: str


@dataclass(frozen=True, slots=True)
class AuditRound:
    """A round. ``expected`` are numbers of copies that are out, ``strangers`` what hung beside them."""

    on: date
    expected: tuple[str, ...]
    looked: tuple[Looked, ...]
    strangers: tuple[Stranger, ...]

    @property
    def not_looked_at(self) -> tuple[str, ...]:
        """Expected copies of which the table says nothing."""
        seen = {each.number for each in self.looked}
        return tuple(number for number in self.expected if number not in seen)

    @property
    def score(self) -> float | None:
        """The share of expected copies that are all right, from 0 to 1; None where none is expected."""
        if not self.expected:
            return None
        return sum(each.is_ok for each in self.looked) / len(self.expected)

    @property
    def failures(self) -> Mapping[str, int]:
        """How many copies fail each check, in the order of the checks."""
        counts = Counter(check for each in self.looked for check in each.failed)
        return {check: counts[check] for check in CHECKS if counts[check]}

    def as_json(self) -> dict[str, Any]:
        """Its fields by name."""
        return {
            "day": self.on.isoformat(),
            "expected": len(self.expected),
            "ok": sum(each.is_ok for each in self.looked),
            "score": None if self.score is None else round(self.score, 4),
            "failures": dict(self.failures),
            "copies": [
                {"number": each.number, "failed": list(each.failed), "remark": each.remark or None}
                for each in self.looked
                if not each.is_ok or each.remark
            ],
            "not_looked_at": list(self.not_looked_at),
            "strangers": [
                {"number": each.number or None, "where": each.where or None, "remark": each.remark or None}
                for each in self.strangers
            ],
        }


def read_round(rows: Iterable[Filled], states: Iterable[CopyState], on: date) -> Reading[AuditRound]:
    """A filled table as a round; every problem of every row is yielded."""
    known = {state.copy.number: state for state in states}
    expected = tuple(number for number, state in known.items() if state.is_out)
    looked: dict[str, Looked] = {}
    strangers = []
    for row in rows:
        if not any(row[name] for name in (*CHECKS, "remark")):
            continue
        remark = yield from read_note(row, "remark")
        if not row["number"]:
            strangers.append((yield from _without_number(row, remark)))
            continue
        number = yield from read_number(row, "number", known)
        if number is None:
            continue
        if not known[number].is_out:
            strangers.append(Stranger(number, row["where"], remark))
        elif number in looked:
            yield faults.STATE.problem(f"Copy {number} stands in two rows.", row.at("number"))
        else:
            looked[number] = yield from _looked(row, number, remark)
    return AuditRound(on, expected, tuple(looked.values()), tuple(strangers))


def _without_number(row: Filled, remark: str) -> Reading[Stranger]:
    if not row["where"]:
        message = "A sheet without a number stands here, and nothing says where it hangs."
        yield faults.PLACE.problem(message, row.at("where"), hint="Write the place into the column 'where'.")
    return Stranger("", shorten(row["where"], 80), remark)


def _looked(row: Filled, number: str, remark: str) -> Reading[Looked]:
    """What was seen of a copy; of one that is not there nothing else can be said."""
    answers: dict[str, str] = {}
    for check in CHECKS:
        is_needed = check == "present" or answers.get("present") == "yes"
        answers[check] = yield from read_word(row, check, _YES_NO, is_needed=is_needed)
        if answers["present"] == "no" and check != "present" and answers[check]:
            message = f"Copy {number} is not there, and yet its column '{check}' is filled."
            yield faults.VALUE.problem(message, row.at(check), hint="Leave the other columns empty.")
    return Looked(number, tuple(check for check in CHECKS if answers[check] == "no"), remark)


def events_of(audit: AuditRound, by_role: str) -> Iterator[NewEvent]:
    """What the register keeps of a round: an event for every copy that was looked at or found."""
    for each in audit.looked:
        what = f"not {', not '.join(each.failed)}" if each.failed else "all right"
        note = f"{what}: {each.remark}" if each.remark else what
        yield NewEvent(each.number, EventKind.AUDITED, audit.on, by_role, note)
    for stranger in audit.strangers:
        if stranger.number:
            where = f" ({stranger.where})" if stranger.where else ""
            yield NewEvent(stranger.number, EventKind.AUDITED, audit.on, by_role, f"found on a wall{where}")


@dataclass(frozen=True, slots=True)
class Overdue:
    """A copy that nobody has looked at for too long, and the day by which somebody should have."""

    state: CopyState
    due: date


def overdue(library: Library, states: Iterable[CopyState], today: date) -> tuple[Overdue, ...]:
    """The copies on walls that were not looked at within the days of the policy, in walking order."""
    days = number_policy(library, AUDIT_DAYS) or USUAL_AUDIT_DAYS
    found = []
    for state in states:
        if state.is_out and state.spot.slot and state.last is not None:
            seen = max(state.last.on, state.audited.on if state.audited else state.last.on)
            if seen + timedelta(days=days) < today:
                found.append(Overdue(state, seen + timedelta(days=days)))
    order = walking_order(library)
    return tuple(sorted(found, key=lambda each: place_in(order, each.state)))


def number_policy(library: Library, name: str) -> int | None:
    """A whole number of the policy; None where it is not set."""
    policy = library.policy.get(name)
    if policy is None or isinstance(policy.value, bool) or not isinstance(policy.value, int):
        return None
    return policy.value


def blank_rows(
    states: Iterable[CopyState], codes: Mapping[tuple[str, str], str]
) -> Iterator[tuple[str, ...]]:
    """The table to fill in: a row for each copy that is out, and the names of the columns first."""
    yield (*AUDIT_COLUMNS.needed[:1], "where", "sheet", "code", *CHECKS, "remark")
    for state in states:
        copy = state.copy
        code = codes.get((copy.subject, copy.locale), "")
        empty = ("",) * (len(CHECKS) + 1)
        yield (copy.number, str(state.spot), f"{copy.subject} {copy.sheet} {copy.locale}", code, *empty)
