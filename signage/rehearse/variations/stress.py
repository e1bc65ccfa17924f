"""Every order that differs from a protocol's own by one slip, and which of them nothing is found in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cached_property

from signage.model.library import Library, Protocol
from signage.rehearse.finding import Identity
from signage.rehearse.variations.alternatives import walk_protocol
from signage.rehearse.variations.walked import Branch, WalkedOrder, WalkedProtocol


class Slip(StrEnum):
    """How an order differs: a step left out, moved, exchanged with another, or done once more."""

    DROP = "left-out"
    MOVE = "moved"
    EXCHANGE = "exchanged"
    AGAIN = "done-again"


@dataclass(frozen=True, slots=True)
class Arrangement:
    """One slip. ``step`` and ``place`` are positions in the protocol's own order.

    A step that is moved or done again stands before the step at ``place``, which is the number of steps
    where it stands last; a step that is exchanged changes places with the one at ``place``; for a step that
    is left out both are the same.
    """

    slip: Slip
    step: int
    place: int

    @property
    def window(self) -> tuple[int, int]:
        """Where the order begins to differ, and the step from which on it is the protocol's again."""
        low, high = sorted((self.step, self.place))
        if self.slip is Slip.AGAIN:
            return self.place, self.place
        return low, high if self.slip is Slip.MOVE and self.place > self.step else high + 1

    @property
    def inside(self) -> tuple[int, ...]:
        """The steps in the window, in the order in which they are done."""
        low, high = self.window
        if self.slip is Slip.DROP:
            return ()
        if self.slip is Slip.AGAIN:
            return (self.step,)
        if self.slip is Slip.EXCHANGE:
            return (high - 1, *range(low + 1, high - 1), low)
        if self.place > self.step:
            return (*range(low + 1, high), self.step)
        return (self.step, *range(low, high - 1))


@dataclass(frozen=True)
class Stress:
    """``rehearsed`` orders by slip, and the ``clean`` ones, in which nothing new is found."""

    walked: WalkedProtocol
    rehearsed: Mapping[Slip, int]
    clean: tuple[Arrangement, ...]

    def clean_count(self, slip: Slip) -> int:
        """How many orders with this slip pass clean."""
        return sum(1 for each in self.clean if each.slip is slip)

    @cached_property
    def steps(self) -> tuple[str, ...]:
        """The identifiers of the steps in their own order."""
        return tuple(step.id for _phase, step in self.walked.schedule)


def stress_protocol(library: Library, protocol: Protocol) -> Stress:
    """Rehearses every single slip, each until its first new finding."""
    walked = walk_protocol(library, protocol)
    count = len(walked.schedule)
    rehearsed = {
        Slip.DROP: count,
        Slip.MOVE: count * (count - 1),
        Slip.EXCHANGE: max(0, (count - 1) * (count - 2) // 2),
        Slip.AGAIN: count * (count + 1),
    }
    if not walked.walks:
        return Stress(walked, rehearsed, ())
    known = frozenset(finding.identity for finding in walked.found.findings)
    clean = set(_clean_in(walked.walks[0], known))
    for walk in walked.walks[1:]:
        clean = {each for each in clean if _is_clean(walk, each, known)}
    order = list(Slip)
    in_order = sorted(clean, key=lambda each: (order.index(each.slip), each.step, each.place))
    return Stress(walked, rehearsed, tuple(in_order))


def _clean_in(walk: WalkedOrder, known: frozenset[Identity]) -> Iterator[Arrangement]:
    """The clean orders of one walk; orders that begin alike share their beginning."""
    count = len(walk.schedule)
    for step in range(count):
        yield from _later(walk, step, known)
    for place in range(count + 1):
        start = walk.branch(place)
        for step in range(count):
            branch = start.copy()
            if not branch.does((step,), known):
                continue
            if branch.copy().passes(place, known):
                yield Arrangement(Slip.AGAIN, step, place)
            if step <= place:
                continue
            if step > place + 1:
                exchanged = branch.copy()
                rest = (*range(place + 1, step), place)
                if exchanged.does(rest, known) and exchanged.passes(step + 1, known):
                    yield Arrangement(Slip.EXCHANGE, place, step)
            if branch.does(range(place, step), known) and branch.passes(step + 1, known):
                yield Arrangement(Slip.MOVE, step, place)


def _later(walk: WalkedOrder, step: int, known: frozenset[Identity]) -> Iterator[Arrangement]:
    """A step left out, or moved behind others: these are done first, so long as nothing is found in them."""
    without = walk.branch(step)
    if without.copy().passes(step + 1, known):
        yield Arrangement(Slip.DROP, step, step)
    for other in range(step + 1, len(walk.schedule)):
        if not without.does((other,), known):
            return
        branch = without.copy()
        if branch.does((step,), known) and branch.passes(other + 1, known):
            yield Arrangement(Slip.MOVE, step, other + 1)


def _is_clean(walk: WalkedOrder, arrangement: Arrangement, known: frozenset[Identity]) -> bool:
    branch: Branch = walk.branch(arrangement.window[0])
    return branch.does(arrangement.inside, known) and branch.passes(arrangement.window[1], known)
