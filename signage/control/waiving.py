"""Waivers are held against findings of words and sheets; the rehearsal does the same for its own."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from signage.ground.problem import Problem
from signage.model.waiver import Waiver
from signage.rehearse.rules.table import RULE_OF
from signage.rehearse.waivers import hold_against

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
    return Excused(*hold_against(problems, waivers, today, _fits, _about))


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
