"""Ordering exercises: a few steps to put in order, with a verdict for every order they can have.

A verdict comes from a rehearsal of the whole protocol with the steps rearranged, never from a comparison
with the sheet alone: an order can be safe without being the one that was chosen.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import permutations
from typing import TypeVar

from signage.model.library import Phase, Protocol, Step
from signage.pages.reasons import Assess, Finding, Known, Reason, known_findings, new_findings, reason_of
from signage.pages.views import TECHNIQUE

LARGEST = 5
"""Steps of an exercise: they fit a phone, and their 120 orders can all be rehearsed when pages are made."""

RIGHT, DIFFERENT, FIRST_REASON = 0, 1, 2
"""Verdicts: the order of the sheet; another one that breaks no rule; from here on unsafe, one a reason."""

T = TypeVar("T")


@dataclass(frozen=True)
class OrderExercise:
    """Steps to put in order.

    ``verdicts`` has one entry for each arrangement of 0 … n-1 in dictionary order. An entry of
    FIRST_REASON or more points into ``reasons``. ``is_judged`` is False where the rehearsal does not look
    at the order, as inside a hand technique: then another order is never called safe.
    """

    phase: Phase
    place: int
    steps: tuple[Step, ...]
    shuffled: tuple[int, ...]
    verdicts: tuple[int, ...]
    reasons: tuple[Reason, ...]
    is_judged: bool

    @property
    def name(self) -> str:
        """The last part of its address."""
        return f"order-{self.phase.id}-{self.place}"


def order_exercises(protocol: Protocol, phase: Phase, assess: Assess) -> Iterator[OrderExercise]:
    """The exercises of a phase: all its steps, a few at a time."""
    known = known_findings(assess, protocol)
    start = 0
    for place, length in enumerate(window_lengths(len(phase.steps)), start=1):
        steps = phase.steps[start : start + length]
        if length > 1:
            yield _exercise(protocol, phase, place, start, steps, assess, known)
        start += length


def window_lengths(count: int, largest: int = LARGEST) -> tuple[int, ...]:
    """So many steps cut into windows that differ by one at most."""
    windows = -(-count // largest)
    return tuple(count * (i + 1) // windows - count * i // windows for i in range(windows))


def _exercise(
    protocol: Protocol,
    phase: Phase,
    place: int,
    start: int,
    steps: tuple[Step, ...],
    assess: Assess,
    known: Known,
) -> OrderExercise:
    is_judged = phase.layout != TECHNIQUE
    alike = [next(i for i, other in enumerate(steps) if looks_alike(other, step)) for step in steps]
    reasons: list[Reason] = []
    judged: dict[tuple[int, ...], int] = {tuple(alike): RIGHT}
    verdicts: list[int] = []
    for order in permutations(range(len(steps))):
        seen = tuple(alike[i] for i in order)
        if seen not in judged:
            changed = rearranged(protocol, phase, start, [steps[i] for i in order])
            findings = new_findings(assess, changed, known) if is_judged else []
            judged[seen] = _verdict(findings, reasons)
        verdicts.append(judged[seen])
    seed = f"{protocol.id}/{phase.id}/{place}"
    return OrderExercise(
        phase, place, steps, _shuffled_wrong(steps, seed), tuple(verdicts), tuple(reasons), is_judged
    )


def _verdict(findings: Sequence[Finding], reasons: list[Reason]) -> int:
    """The verdict for findings; a reason that is new joins the list."""
    if not findings:
        return DIFFERENT
    reason = reason_of(findings)
    if reason not in reasons:
        reasons.append(reason)
    return FIRST_REASON + reasons.index(reason)


def looks_alike(one: Step, other: Step) -> bool:
    """Whether a learner cannot tell two steps apart: same words, same picture, same movement."""
    return (one.text, one.picture, one.actions) == (other.text, other.picture, other.actions)


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
