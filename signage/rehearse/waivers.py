"""Waivers are held against findings; what is waived stays on record."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Protocol as Shape
from typing import TypeVar

from signage.ground.problem import Problem, Severity
from signage.ground.rule import Rule
from signage.model.waiver import Waiver
from signage.rehearse.finding import Finding
from signage.rehearse.rules.conduct import WAIVER_EXPIRED, WAIVER_NOT_POSSIBLE, WAIVER_WITHOUT_FINDING


@dataclass(frozen=True)
class Waived:
    """``standing`` findings count; ``waived`` ones do not, and are printed with their waiver."""

    standing: tuple[Finding, ...]
    waived: tuple[tuple[Finding, Waiver], ...]
    problems: tuple[Problem, ...]

    @property
    def blocks_release(self) -> bool:
        """Whether only drafts may be printed: an S1 stands."""
        return any(finding.severity is Severity.S1 for finding in self.standing)

    @property
    def blocks_approval(self) -> bool:
        """Whether nobody may sign: an S1, an S2 without a waiver, or a faulty waiver."""
        grave = any(finding.severity is not Severity.S3 for finding in self.standing)
        return grave or any(problem.severity is not Severity.S3 for problem in self.problems)


def apply_waivers(findings: Sequence[Finding], waivers: Sequence[Waiver], today: date) -> Waived:
    """Takes out the findings of the rehearsal that a waiver excuses on this day.

    A waiver fits by rule, protocol and step.
    """
    return Waived(*hold_against(findings, waivers, today, _fits, _about))


class Graded(Shape):
    """What a waiver may excuse: something found, with how bad it is."""

    @property
    def severity(self) -> Severity:
        """How bad it is."""


Found = TypeVar("Found", bound=Graded)


def hold_against(
    found: Sequence[Found],
    waivers: Sequence[Waiver],
    today: date,
    fits: Callable[[Waiver, Found], bool],
    about: Callable[[Waiver], str],
) -> tuple[tuple[Found, ...], tuple[tuple[Found, Waiver], ...], tuple[Problem, ...]]:
    """What stands, what is waived and by which waiver, and what is wrong with the waivers themselves.

    An S1 is never waived; expired waivers, waivers of an S1 and waivers that fit nothing are problems of
    their own, which ``about`` names.
    """
    standing = list(found)
    waived: list[tuple[Found, Waiver]] = []
    problems: list[Problem] = []
    for waiver in waivers:
        fitting = [each for each in found if fits(waiver, each)]
        where = about(waiver)
        if not fitting:
            problems.append(_problem(WAIVER_WITHOUT_FINDING, f"No finding {where}.", waiver))
        elif today > waiver.expires:
            message = f"The waiver of {where} held until {waiver.expires.isoformat()}."
            problems.append(_problem(WAIVER_EXPIRED, message, waiver))
        elif any(each.severity is Severity.S1 for each in fitting):
            message = f"{where} has severity S1 and cannot be waived."
            problems.append(_problem(WAIVER_NOT_POSSIBLE, message, waiver))
        else:
            waived += [(each, waiver) for each in fitting if each in standing]
            standing = [each for each in standing if each not in fitting]
    return tuple(standing), tuple(waived), tuple(problems)


def _fits(waiver: Waiver, finding: Finding) -> bool:
    wanted = waiver.code, waiver.protocol, waiver.step
    return wanted == (finding.code, finding.protocol, finding.step)


def _about(waiver: Waiver) -> str:
    return f"{waiver.code} in step {waiver.step or 'none'} of {waiver.protocol}"


def _problem(rule: Rule, message: str, waiver: Waiver) -> Problem:
    return rule.problem(
        message, waiver.place, protocol=waiver.protocol, step=waiver.step, locale=waiver.locale
    )
