"""Where lines end: full lines first, then lines of equal length, with no lonely word at the end."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from signage.text.measure import Measure

_TOLERANCE = 1e-6
"""Ems by which sums of advances may differ from one another through rounding."""

_BISECTION_STEP = 0.02
"""Ems to which the balanced width is found; a fiftieth of the type size is not seen."""

_LONELY_SHARE = 0.4
"""A last line of one word is lonely when it is shorter than this share of the longest line."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """``text[start:end]`` between two forced breaks, with the indices where lines may end, ``end`` last."""

    start: int
    end: int
    opportunities: tuple[int, ...]


def greedy_breaks(
    stretch: Stretch, width: float, measure: Measure, graphemes: Callable[[], Sequence[int]]
) -> list[int]:
    """Ends of lines that are each as full as the width allows.

    Where not even one word fits, the line ends after as many graphemes as fit, and at least one.
    """
    breaks: list[int] = []
    start = stretch.start
    while start < stretch.end:
        end = _last_fitting(stretch.opportunities, start, width, measure)
        if end is None:
            end = _last_fitting(graphemes(), start, width, measure, stretch.end)
        if end is None:
            ends = graphemes()
            end = ends[bisect_right(ends, start)]
        breaks.append(end)
        start = end
    return breaks


def balanced_breaks(stretch: Stretch, width: float, measure: Measure, full: Sequence[int]) -> list[int]:
    """As many lines as the full ones, about equally long, and no lonely last word where avoidable.

    Stretches in which a word had to be broken stay as they are.
    """
    known = set(stretch.opportunities)
    if not known.issuperset(full):
        return list(full)
    best = list(full)
    low, high = 0.0, width
    while high - low > _BISECTION_STEP:
        middle = (low + high) / 2
        breaks = _count_within(stretch, middle, measure, len(full))
        if breaks is None:
            low = middle
        else:
            best, high = breaks, middle
    return _without_lonely_word(stretch, width, measure, best)


def _count_within(stretch: Stretch, width: float, measure: Measure, count: int) -> list[int] | None:
    """Greedy breaks at opportunities only, or None when they need more than ``count`` lines."""
    breaks: list[int] = []
    start = stretch.start
    while start < stretch.end:
        end = _last_fitting(stretch.opportunities, start, width, measure)
        if end is None or len(breaks) == count:
            return None
        breaks.append(end)
        start = end
    return breaks


def _last_fitting(
    ends: Sequence[int], start: int, width: float, measure: Measure, limit: int | None = None
) -> int | None:
    """The last of the ends after ``start`` up to which the text fits, or None."""
    fitting: int | None = None
    for i in range(bisect_right(ends, start), len(ends)):
        end = ends[i]
        if (limit is not None and end > limit) or measure.width(start, end) > width + _TOLERANCE:
            break
        fitting = end
    return fitting


def _without_lonely_word(stretch: Stretch, width: float, measure: Measure, breaks: list[int]) -> list[int]:
    """Move words from the last line but one to a last line of one word, as far as both fit."""
    starts = [stretch.start, *breaks[:-1]]
    longest = max(measure.width(a, b) for a, b in zip(starts, breaks, strict=True))
    before, last = starts[-2], starts[-1]
    if _words(stretch, measure, last, stretch.end) > 1:
        return breaks
    if measure.width(last, stretch.end) >= _LONELY_SHARE * longest:
        return breaks
    for earlier in reversed([end for end in stretch.opportunities if before < end < last]):
        if measure.width(earlier, stretch.end) > width + _TOLERANCE:
            break
        if _words(stretch, measure, earlier, stretch.end) > 1:
            return [*breaks[:-2], earlier, stretch.end]
    return breaks


def _words(stretch: Stretch, measure: Measure, start: int, end: int) -> int:
    """Words of a line: parts between blanks, or between opportunities in scripts without blanks."""
    parts = sum(1 for opportunity in stretch.opportunities if start < opportunity <= end)
    return max(parts, len(measure.text[start:end].split()))
