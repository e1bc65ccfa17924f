"""What is wrong here: orders with one mistake, found by rehearsing the protocol with that mistake."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from signage.model.library import Phase, Protocol, Step
from signage.pages.practice.orders import looks_alike, with_steps
from signage.pages.practice.reasons import Examiner, Reason, known_findings, new_findings, reason_of
from signage.pages.views import TECHNIQUE

SHOWN = 5
"""Steps that a learner sees at once."""

MOST = 4
"""Exercises of this kind in a phase, each with a reason or a step of its own."""


@dataclass(frozen=True)
class MistakeExercise:
    """Steps in an order with one mistake.

    ``culprit`` was left out, or moved one place forward if ``is_moved``; the mistake shows at the step
    that ``reason`` names, which is among ``shown``.
    """

    phase: Phase
    place: int
    shown: tuple[Step, ...]
    culprit: Step
    is_moved: bool
    reason: Reason

    @property
    def name(self) -> str:
        """The last part of its address."""
        return f"wrong-{self.phase.id}-{self.place}"


@dataclass(frozen=True)
class _Mutant:
    steps: tuple[Step, ...]
    at: int
    culprit: Step
    is_moved: bool


def mistake_exercises(protocol: Protocol, phase: Phase, examiner: Examiner) -> Iterator[MistakeExercise]:
    """A few mistakes of different kinds; none in a hand technique, whose order no rule looks at."""
    if phase.layout == TECHNIQUE:
        return
    known = known_findings(examiner, protocol)
    told: set[str] = set()
    place = 0
    for mutant in _mutants(phase):
        findings = new_findings(examiner, with_steps(protocol, phase, mutant.steps), known)
        if not findings:
            continue
        reason = reason_of(findings)
        shown = _window(mutant, reason)
        if shown is None or reason.text in told:
            continue
        told.add(reason.text)
        place += 1
        yield MistakeExercise(phase, place, shown, mutant.culprit, mutant.is_moved, reason)
        if place == MOST:
            return


def _mutants(phase: Phase) -> Iterator[_Mutant]:
    """Each step left out, and each pair of neighbours exchanged, critical steps first."""
    places = sorted(range(len(phase.steps)), key=lambda place: not phase.steps[place].critical)
    for place in places:
        step = phase.steps[place]
        yield _Mutant((*phase.steps[:place], *phase.steps[place + 1 :]), place, step, is_moved=False)
        if place and not looks_alike(phase.steps[place - 1], step):
            before = phase.steps[place - 1]
            steps = (*phase.steps[: place - 1], step, before, *phase.steps[place + 1 :])
            yield _Mutant(steps, place - 1, step, is_moved=True)


def _window(mutant: _Mutant, reason: Reason) -> tuple[Step, ...] | None:
    """The steps to show: some before the mistake, and the step where it shows; None if they lie apart."""
    ids = [step.id for step in mutant.steps]
    if reason.step not in ids:
        return None
    shows_at = ids.index(reason.step)
    first, last = min(mutant.at, shows_at), max(mutant.at, shows_at)
    if last - first >= SHOWN - 1:
        return None
    start = max(0, min(first - 1, len(ids) - SHOWN))
    return mutant.steps[start : max(start + SHOWN, last + 1)]
