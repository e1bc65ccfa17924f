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


def greedy_breaks(
    stretch: Stretch, width: float, measure: Measure, finer: Sequence[Callable[[], Stretch]]
) -> list[int]:
    """Ends of lines that are each as full as the width allows.

    Where not even one word fits, the line ends where the same stretch with more and more ends, ``finer``,
    lets it; the last of them has the ends of its graphemes, of which a line holds at least one.
    """
    breaks: list[int] = []
    start = stretch.start
    while start < stretch.end:
        end = _last_fitting(stretch, start, width, measure)
        for each in finer:
            if end is not None:
                break
            broken = each()
            end = _last_fitting(broken, start, width, measure)
        if end is None:
            end = broken.ends[bisect_right(broken.ends, start)]
        breaks.append(end)
        start = end
    return breaks


def balanced_breaks(stretch: Stretch, width: float, measure: Measure, full: Sequence[int]) -> list[int]:
    """As many lines as the full ones, about equally long, and no lonely last word where avoidable.

    Stretches in which a word had to be broken stay as they are.
    """
    best = list(full)
    if not set(stretch.ends).issuperset(full):
        return best
    low, high = 0.0, width
    while high - low > _BISECTION_STEP:
        middle = (low + high) / 2
        breaks = _breaks_within(stretch, middle, measure, len(full))
        if breaks is None:
            low = middle
        else:
            best, high = breaks, middle
    return _without_lonely_word(stretch, width, measure, best)


def _breaks_within(stretch: Stretch, width: float, measure: Measure, count: int) -> list[int] | None:
    """Breaks between words only, or None when they need more than ``count`` lines."""
    breaks: list[int] = []
    start = stretch.start
    while start < stretch.end:
        end = _last_fitting(stretch, start, width, measure)
        if end is None or len(breaks) == count:
            return None
        breaks.append(end)
        start = end
    return breaks


def _last_fitting(stretch: Stretch, start: int, width: float, measure: Measure) -> int | None:
    """The last end after ``start`` up to which the text fits, or None.

    The limits lead to the place; the exact widths decide there.
    """
    ends = stretch.ends
    first = bisect_right(ends, start)
    at = max(first, bisect_right(stretch.limits, measure.before(start) + width + _TOLERANCE))
    while at > first and measure.width(start, ends[at - 1]) > width + _TOLERANCE:
        at -= 1
    while at < len(ends) and measure.width(start, ends[at]) <= width + _TOLERANCE:
        at += 1
    return ends[at - 1] if at > first else None


def _without_lonely_word(stretch: Stretch, width: float, measure: Measure, breaks: list[int]) -> list[int]:
    """Move words from the last line but one to a last line of one word, as far as both fit."""
    starts = [stretch.start, *breaks[:-1]]
    longest = max(measure.width(a, b) for a, b in zip(starts, breaks, strict=True))
    before, last = starts[-2], starts[-1]
    if _words(stretch, measure, last, stretch.end) > 1:
        return breaks
    if measure.width(last, stretch.end) >= _LONELY_SHARE * longest:
        return breaks
    for earlier in reversed([end for end in stretch.ends if before < end < last]):
        if measure.width(earlier, stretch.end) > width + _TOLERANCE:
            break
        if _words(stretch, measure, earlier, stretch.end) > 1:
            return [*breaks[:-2], earlier, stretch.end]
    return breaks


def _words(stretch: Stretch, measure: Measure, start: int, end: int) -> int:
    """Words of a line: parts between blanks, or between opportunities in scripts without blanks."""
    parts = sum(1 for opportunity in stretch.ends if start < opportunity <= end)
    return max(parts, len(measure.text[start:end].split()))
