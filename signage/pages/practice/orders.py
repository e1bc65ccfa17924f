"""Ordering exercises: a few steps to put in order, with a verdict for every order they can have.

A verdict comes from a rehearsal of the whole protocol with the steps rearranged, never from a comparison
with the sheet alone: an order can be safe without being the one that was chosen.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import permutations
from typing import TypeVar

from signage.model.library import Phase, Protocol, Step
from signage.pages.practice.reasons import Examiner, Known, Reason, known_findings, new_findings, reason_of

LARGEST = 5
"""Steps of an exercise: they fit a phone, and their 120 orders can all be rehearsed when pages are made."""

RIGHT, SAFE, UNKNOWN, FIRST_REASON = 0, 1, 2, 3
"""Verdicts: the order of the sheet; another that breaks no rule; another in which a step has moved whose
place no rule knows; from here on unsafe, one verdict for each reason."""

T = TypeVar("T")


@dataclass(frozen=True)
class OrderExercise:
    """Steps to put in order.

    ``verdicts`` has one entry for each arrangement of 0 … n-1 in dictionary order. An entry of
    FIRST_REASON or more points into ``reasons``.
    """

    phase: Phase
    place: int
    steps: tuple[Step, ...]
    shuffled: tuple[int, ...]
    verdicts: tuple[int, ...]
    reasons: tuple[Reason, ...]

    @property
    def name(self) -> str:
        """The last part of its address."""
        return f"order-{self.phase.id}-{self.place}"


def order_exercises(protocol: Protocol, phase: Phase, examiner: Examiner) -> Iterator[OrderExercise]:
    """The exercises of a phase: all its steps, a few at a time."""
    known = known_findings(examiner, protocol)
    placed = frozenset(examiner.load_bearing(protocol))
    start = 0
    for place, length in enumerate(window_lengths(len(phase.steps)), start=1):
        steps = phase.steps[start : start + length]
        if length > 1:
            seed = f"{protocol.id}/{phase.id}/{place}"
            judge = _Judge(protocol, phase, start, steps, examiner, known, placed)
            verdicts = judge.verdicts()
            yield OrderExercise(
                phase, place, steps, _shuffled_wrong(steps, seed), verdicts, tuple(judge.reasons)
            )
        start += length


def window_lengths(count: int, largest: int = LARGEST) -> tuple[int, ...]:
    """So many steps cut into windows that differ by one at most."""
    windows = -(-count // largest)
    return tuple(count * (i + 1) // windows - count * i // windows for i in range(windows))


@dataclass
class _Judge:
    """Judges the arrangements of a few steps, from ``start`` on in their phase, and collects the reasons."""

    protocol: Protocol
    phase: Phase
    start: int
    steps: tuple[Step, ...]
    examiner: Examiner
    known: Known
    placed: frozenset[str]
    reasons: list[Reason] = field(default_factory=list)

    def verdicts(self) -> tuple[int, ...]:
        """One for each arrangement in dictionary order; arrangements that look alike share theirs."""
        steps = self.steps
        alike = [next(i for i, other in enumerate(steps) if looks_alike(other, step)) for step in steps]
        judged: dict[tuple[int, ...], int] = {tuple(alike): RIGHT}
        found = []
        for order in permutations(range(len(steps))):
            seen = tuple(alike[i] for i in order)
            if seen not in judged:
                judged[seen] = self._verdict(order)
            found.append(judged[seen])
        return tuple(found)

    def _verdict(self, order: Sequence[int]) -> int:
        changed = rearranged(self.protocol, self.phase, self.start, [self.steps[i] for i in order])
        findings = new_findings(self.examiner, changed, self.known)
        if not findings:
            return UNKNOWN if self._moves_a_step_without_place(order) else SAFE
        reason = reason_of(findings)
        if reason not in self.reasons:
            self.reasons.append(reason)
        return FIRST_REASON + self.reasons.index(reason)

    def _moves_a_step_without_place(self, order: Sequence[int]) -> bool:
        """Whether a step that no rule would miss has other steps before it than on the sheet."""
        return any(
            set(order[:place]) != set(range(i)) and self.steps[i].id not in self.placed
            for place, i in enumerate(order)
        )


def looks_alike(one: Step, other: Step) -> bool:
    """Whether a learner cannot tell two steps apart: same words, same picture, same movement."""
    return (one.when, one.text, one.picture, one.actions) == (
        other.when,
        other.text,
        other.picture,
        other.actions,
    )


def rearranged(protocol: Protocol, phase: Phase, start: int, steps: Sequence[Step]) -> Protocol:
    """The protocol with other steps from a place of a phase on."""
    order = (*phase.steps[:start], *steps, *phase.steps[start + len(steps) :])
    return with_steps(protocol, phase, order)


def with_steps(protocol: Protocol, phase: Phase, steps: Sequence[Step]) -> Protocol:
    """The protocol with all steps of a phase replaced."""
    phases = tuple(
        replace(each, steps=tuple(steps)) if each.id == phase.id else each for each in protocol.phases
    )
    return replace(protocol, phases=phases)


def _shuffled_wrong(steps: Sequence[Step], seed: str) -> tuple[int, ...]:
    """An order to begin with that does not look like the right one."""
    order = shuffled(range(len(steps)), seed)
    for _ in order:
        if not all(looks_alike(steps[i], steps[j]) for i, j in enumerate(order)):
            break
        order = (*order[1:], order[0])
    return tuple(order)


def shuffled(items: Sequence[T], seed: str) -> tuple[T, ...]:
    """The items in an order that looks like chance and is the same on every run."""
    keys = {place: hashlib.sha256(f"{seed}/{place}".encode()).digest() for place in range(len(items))}
    return tuple(items[place] for place in sorted(keys, key=lambda place: keys[place]))
