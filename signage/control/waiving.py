"""Waivers are held against findings of words and sheets; the rehearsal does the same for its own."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from signage.ground.problem import Problem, Severity
from signage.model.waiver import Waiver
from signage.rehearse.rules.conduct import WAIVER_EXPIRED, WAIVER_NOT_POSSIBLE, WAIVER_WITHOUT_FINDING
from signage.rehearse.rules.rule import Rule
from signage.rehearse.rules.table import RULE_OF

_OF_ONE_LANGUAGE = ("WD-", "PO-")
"""Codes of words: what is accepted in one language stands in all others."""


@dataclass(frozen=True)
class Excused:
    """``standing`` findings count; ``waived`` ones do not. ``faults`` are those of the waivers themselves.

    Of the faults, a waiver without finding (WV-3) means something only where all was looked at.
    """

    standing: tuple[Problem, ...]
    waived: tuple[tuple[Problem, Waiver], ...] = ()
    faults: tuple[Problem, ...] = ()


def beyond_rehearsal(waivers: Iterable[Waiver]) -> tuple[Waiver, ...]:
    """The waivers of findings that the rehearsal does not make."""
    return tuple(waiver for waiver in waivers if waiver.code not in RULE_OF)


def excuse(problems: Sequence[Problem], waivers: Sequence[Waiver], today: date) -> Excused:
    """Takes out the findings that a waiver excuses on this day.

    A waiver fits by rule, protocol and step, by language where it names one or the finding is one of
    words, and by sheet where it names one. An S1 is never waived; expired waivers, waivers of an S1 and
    waivers that fit nothing are faults.
    """
    standing = list(problems)
    waived: list[tuple[Problem, Waiver]] = []
    faults: list[Problem] = []
    for waiver in waivers:
        fitting = [problem for problem in problems if _fits(waiver, problem)]
        if not fitting:
            faults.append(_fault(WAIVER_WITHOUT_FINDING, f"No finding {_about(waiver)}.", waiver))
        elif today > waiver.expires:
            message = f"The waiver of {_about(waiver)} held until {waiver.expires.isoformat()}."
            faults.append(_fault(WAIVER_EXPIRED, message, waiver))
        elif any(problem.severity is Severity.S1 for problem in fitting):
            message = f"{_about(waiver)} has severity S1 and cannot be waived."
            faults.append(_fault(WAIVER_NOT_POSSIBLE, message, waiver))
        else:
            waived += [(problem, waiver) for problem in fitting if problem in standing]
            standing = [problem for problem in standing if problem not in fitting]
    return Excused(tuple(standing), tuple(waived), tuple(faults))


def _fits(waiver: Waiver, problem: Problem) -> bool:
    wanted = waiver.code, waiver.protocol, waiver.step
    names_language = waiver.locale is not None or waiver.code.startswith(_OF_ONE_LANGUAGE)
    return (
        wanted == (problem.code, problem.protocol, problem.step)
        and (waiver.locale == problem.locale or not names_language)
        and (waiver.sheet is None or f"{problem.sheet} ".startswith(f"{waiver.sheet} "))
    )


def _about(waiver: Waiver) -> str:
    parts = {"in step": waiver.step, "of": waiver.protocol, "in": waiver.locale, "on": waiver.sheet}
    return " ".join((waiver.code, *(f"{word} {name}" for word, name in parts.items() if name)))


def _fault(rule: Rule, message: str, waiver: Waiver) -> Problem:
    return Problem(
        rule.code, rule.name, rule.severity, message, rule.cure, waiver.place, waiver.protocol, waiver.step,
        locale=waiver.locale,
    )  # fmt: skip
