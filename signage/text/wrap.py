"""Where lines end: full lines first, then lines of equal length, with no lonely word at the end.

A layout tries the same words at hundreds of widths. Between two of the widths at which some line gains or
loses a word nothing changes, so a filling is kept with the range of widths for which it holds.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import inf

from signage.text.measure import Measure

_TOLERANCE = 1e-6
"""Ems by which sums of advances may differ from one another through rounding."""

_BISECTION_STEP = 0.02
"""Ems to which the balanced width is found; a fiftieth of the type size is not seen."""

_LONELY_SHARE = 0.4
"""A last line of one word is lonely when it is shorter than this share of the longest line."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """``text[start:end]`` between two forced breaks, with the indices where lines may end, ``end`` last.

    ``limits`` are the advances before each of them (``Measure.limits``).
    """

    start: int
    end: int
    ends: tuple[int, ...]
    limits: tuple[float, ...]


def stretch_of(measure: Measure, start: int, ends: Sequence[int]) -> Stretch:
    """The stretch from ``start`` to the last of the indices where lines may end."""
    return Stretch(start, ends[-1], tuple(ends), tuple(measure.limits(start, ends)))


@dataclass(frozen=True, slots=True)
class Filling:
    """Lines that are each as full as a limit allows; the same for every limit from ``low`` to below ``high``.

    ``is_whole`` is False where a part without a place to end a line is wider than the limit: the lines
    before it are given.
    """

    ends: tuple[int, ...]
    is_whole: bool
    low: float
    high: float


class Filler:
    """Fills lines of a stretch, and keeps each filling for all limits that lead to it.

    ``stretches`` are the same stretch with more and more places where a line may end: the next is asked where
    not even one part of those before it fits. A limit is a width in ems with the tolerance.
    """

    def __init__(self, stretches: Sequence[Stretch], measure: Measure) -> None:
        self._stretches, self._measure = stretches, measure
        self._lows: list[float] = []
        self._fillings: list[Filling] = []

    def fill(self, limit: float, *, must_end: bool = False) -> Filling:
        """Lines within a limit; with ``must_end`` a part that no line holds stands alone beyond it."""
        at = bisect_right(self._lows, limit)
        if at and limit < self._fillings[at - 1].high:
            return self._fillings[at - 1]
        filling = self._filled(limit, must_end)
        self._lows.insert(at, filling.low)
        self._fillings.insert(at, filling)
        return filling

    def _filled(self, limit: float, must_end: bool) -> Filling:
        width, before = self._measure.width, self._measure.before
        last = self._stretches[-1]
        breaks: list[int] = []
        start, low, high = last.start, -inf, inf
        while start < last.end:
            for stretch in self._stretches:
                ends = stretch.ends
                first = bisect_right(ends, start)
                # The limits lead to the place; the exact widths decide there.
                at = max(first, bisect_right(stretch.limits, before(start) + limit))
                while at > first and (needed := width(start, ends[at - 1])) > limit:
                    high = min(high, needed)
                    at -= 1
                while at < len(ends) and (needed := width(start, ends[at])) <= limit:
                    low = max(low, needed)
                    at += 1
                if at < len(ends):
                    high = min(high, needed)
                if at > first:
                    low = max(low, width(start, ends[at - 1]))
                    break
            if at == first:
                if not must_end:
                    return Filling(tuple(breaks), is_whole=False, low=low, high=high)
                at += 1
            start = ends[at - 1]
            breaks.append(start)
        return Filling(tuple(breaks), is_whole=True, low=low, high=high)


class Wrap:
    """The lines of one stretch at any width.

    ``finer`` give the same stretch with more and more ends, for where not even one word fits; the last of
    them has the ends of its graphemes, of which a line holds at least one.
    """

    def __init__(self, stretch: Stretch, measure: Measure, finer: Sequence[Callable[[], Stretch]]) -> None:
        self._stretch, self._measure, self._finer = stretch, measure, finer
        self._words = Filler((stretch,), measure)
        self._known: dict[int, tuple[float, float]] = {}
        self._not_lonely: set[tuple[int, ...]] = set()

    @cached_property
    def _parts(self) -> Filler:
        return Filler((self._stretch, *(each() for each in self._finer)), self._measure)

    def full(self, width: float) -> tuple[int, ...]:
        """Ends of lines that are each as full as the width allows."""
        filling = self._words.fill(width + _TOLERANCE)
        return filling.ends if filling.is_whole else self._parts.fill(width + _TOLERANCE, must_end=True).ends

    def balanced(self, width: float) -> tuple[int, ...]:
        """As many lines as the full ones, about equally long, and no lonely last word where avoidable.

        Stretches in which a word had to be broken stay as they are.
        """
        filling = self._words.fill(width + _TOLERANCE)
        full = filling.ends if filling.is_whole else self.full(width)
        if len(full) == 1 or not (filling.is_whole or set(self._stretch.ends).issuperset(full)):
            return full
        best = full
        narrowest = self._narrowest(width, len(full))
        if narrowest != width:
            best = self._words.fill(narrowest + _TOLERANCE).ends
        if best in self._not_lonely:
            return best
        return self._without_lonely_word(width, best)

    def _narrowest(self, width: float, count: int) -> float:
        """The least width, found by bisection, at which the words need no more lines than ``count``."""
        too_narrow, wide_enough = self._known.get(count, (-inf, inf))
        low, high = 0.0, width
        while high - low > _BISECTION_STEP:
            middle = (low + high) / 2
            limit = middle + _TOLERANCE
            if too_narrow <= limit < wide_enough:
                filling = self._words.fill(limit)
                if filling.is_whole and len(filling.ends) <= count:
                    wide_enough = min(wide_enough, filling.low)
                else:
                    too_narrow = max(too_narrow, filling.high)
            if limit >= wide_enough:
                high = middle
            else:
                low = middle
        self._known[count] = too_narrow, wide_enough
        return high

    def _without_lonely_word(self, width: float, breaks: tuple[int, ...]) -> tuple[int, ...]:
        """Move words from the last line but one to a last line of one word, as far as both fit."""
        stretch, measure = self._stretch, self._measure
        starts = [stretch.start, *breaks[:-1]]
        longest = max(measure.width(a, b) for a, b in zip(starts, breaks, strict=True))
        before, last = starts[-2], starts[-1]
        is_alone = _words(stretch, measure, last, stretch.end) <= 1
        if not is_alone or measure.width(last, stretch.end) >= _LONELY_SHARE * longest:
            self._not_lonely.add(breaks)
            return breaks
        for earlier in reversed([end for end in stretch.ends if before < end < last]):
            if measure.width(earlier, stretch.end) > width + _TOLERANCE:
                break
            if _words(stretch, measure, earlier, stretch.end) > 1:
                return (*breaks[:-2], earlier, stretch.end)
        return breaks


def _words(stretch: Stretch, measure: Measure, start: int, end: int) -> int:
    """Words of a line: parts between blanks, or between opportunities in scripts without blanks."""
    parts = sum(1 for opportunity in stretch.ends if start < opportunity <= end)
    return max(parts, len(measure.text[start:end].split()))
