"""How sure a share is, and how far two raters agree beyond chance."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from statistics import NormalDist

_CONFIDENCE = 0.95


def wilson_interval(successes: float, trials: int, confidence: float = _CONFIDENCE) -> tuple[float, float]:
    """The score interval of a proportion without continuity correction (E. B. Wilson, 1927).

    Raises ValueError without trials or with more successes than trials.
    """
    if trials <= 0 or not 0 <= successes <= trials:
        raise ValueError(f"{successes} of {trials} is no proportion")
    z = NormalDist().inv_cdf(0.5 + confidence / 2)
    share = successes / trials
    spread = z * math.sqrt(share * (1 - share) / trials + z**2 / (4 * trials**2))
    middle = share + z**2 / (2 * trials)
    scale = 1 + z**2 / trials
    low, high = (middle - spread) / scale, (middle + spread) / scale
    return min(max(low, 0.0), share), max(min(high, 1.0), share)


def cohen_kappa(ratings: Sequence[tuple[str, str]]) -> float | None:
    """Agreement of two raters beyond chance, unweighted (J. Cohen, 1960).

    None without ratings, and where both have used one and the same category only: chance alone would
    then agree always.
    """
    if not ratings:
        return None
    count = len(ratings)
    observed = sum(first == second for first, second in ratings) / count
    firsts = Counter(first for first, _ in ratings)
    seconds = Counter(second for _, second in ratings)
    expected = sum(firsts[category] * seconds[category] for category in firsts) / count**2
    return None if expected == 1 else (observed - expected) / (1 - expected)
