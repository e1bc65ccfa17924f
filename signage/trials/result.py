"""What a trial says of each picture: counts, share, interval and verdict by a declared rule."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from signage.model.picture_trial import Category
from signage.trials.agreement import cohen_kappa, wilson_interval
from signage.trials.reading import Answer, Trial

DEFAULT_THRESHOLD = 0.67
STRICT_THRESHOLD = 0.85
MOST_OPPOSITE = 0.05
"""About 67 % correct is quoted for ISO 9186 and ISO 3864, 85 % with at most 5 % critical confusion for ANSI
Z535.3; both from memory, not read in the standards."""

_FROM_BAD_TO_GOOD = (
    Category.OPPOSITE, Category.WRONG, Category.NONE, Category.PARTLY, Category.CORRECT,
)  # fmt: skip
"""While raters differ, the rating nearer the beginning counts."""


class Counting(StrEnum):
    """What counts as understood.

    ``strict``: only correct answers, like the comprehension score of ISO 9186-1 since its edition of 2007.
    ``half``: partly correct ones count one half, like the weight of answers whose correctness was marginal
    in the edition of 2001. Both from memory, not read in the standard.
    """

    STRICT = "strict"
    HALF = "half"


class Verdict(StrEnum):
    """Whether a picture may be used without words.

    ``proved``: the whole interval lies at or above the threshold. ``reached``: the share does, and more
    readers are needed to prove it. ``fails``: the share lies below, or answers were dangerous.
    """

    PROVED = "proved"
    REACHED = "reached"
    FAILS = "fails"


@dataclass(frozen=True, slots=True)
class PictureResult:
    """One picture: answers by category, the understood share with its 95 % interval, and the verdict.

    ``strict_verdict`` is that for the threshold of 0.85 with few opposite answers.
    """

    picture: str
    answers: int
    counts: Mapping[Category, int]
    share: float
    interval: tuple[float, float]
    is_critical: bool
    verdict: Verdict
    reason: str
    strict_verdict: Verdict

    def as_json(self) -> dict[str, Any]:
        """Its fields by name."""
        return {
            "picture": self.picture,
            "answers": self.answers,
            "counts": {category.value: self.counts[category] for category in Category},
            "share": round(self.share, 4),
            "interval": [round(bound, 4) for bound in self.interval],
            "critical": self.is_critical,
            "verdict": self.verdict.value,
            "reason": self.reason or None,
            "strict_verdict": self.strict_verdict.value,
        }


@dataclass(frozen=True, slots=True)
class TrialResult:
    """All pictures by name, the agreement of the raters, and the answers on which they differ."""

    pictures: tuple[PictureResult, ...]
    kappa: float | None
    answers: int
    disagreements: tuple[Answer, ...]
    settled: int

    @property
    def failed(self) -> tuple[str, ...]:
        """The pictures that fail."""
        return tuple(result.picture for result in self.pictures if result.verdict is Verdict.FAILS)


def judge(
    trial: Trial,
    critical: Collection[str],
    threshold: float = DEFAULT_THRESHOLD,
    counting: Counting = Counting.STRICT,
) -> TrialResult:
    """The result of a trial. ``critical`` are the pictures of steps where a mistake can hurt.

    Opposite answers to a critical picture fail it whatever its share. An answer on which the raters differ
    counts as the worse of the two until a row of the rater ``agreed`` settles it.
    """
    by_picture: dict[str, list[Answer]] = {}
    for answer in trial.answers:
        by_picture.setdefault(answer.picture, []).append(answer)
    results = [
        _judge_picture(name, answers, name in critical, threshold, counting)
        for name, answers in sorted(by_picture.items())
    ]
    differing = [answer for answer in trial.answers if answer.first.category is not answer.second.category]
    open_ones = tuple(answer for answer in differing if answer.agreed is None)
    kappa = cohen_kappa([(answer.first.category, answer.second.category) for answer in trial.answers])
    return TrialResult(
        tuple(results), kappa, len(trial.answers), open_ones, settled=len(differing) - len(open_ones)
    )


def category_of(answer: Answer) -> Category:
    """What counts for an answer: what was agreed, what both say, or the worse of two ratings."""
    if answer.agreed is not None:
        return answer.agreed.category
    return min(answer.first.category, answer.second.category, key=_FROM_BAD_TO_GOOD.index)


def _judge_picture(
    name: str, answers: list[Answer], is_critical: bool, threshold: float, counting: Counting
) -> PictureResult:
    counts = Counter(category_of(answer) for answer in answers)
    total = len(answers)
    understood = counts[Category.CORRECT] + (
        counts[Category.PARTLY] / 2 if counting is Counting.HALF else 0.0
    )
    share = understood / total
    interval = wilson_interval(understood, total)
    opposite = counts[Category.OPPOSITE]
    is_dangerous = is_critical and opposite > 0
    reason = ""
    if is_dangerous:
        reason = f"{opposite} of {total} answers say the opposite on a critical step"
    elif share < threshold:
        reason = f"a share of {share:.3f} is below {threshold:.2f}"
    is_confusing = is_dangerous or opposite / total > MOST_OPPOSITE
    return PictureResult(
        name,
        total,
        {category: counts[category] for category in Category},
        share,
        interval,
        is_critical,
        Verdict.FAILS if is_dangerous else _verdict(share, interval, threshold),
        reason,
        Verdict.FAILS if is_confusing else _verdict(share, interval, STRICT_THRESHOLD),
    )


def _verdict(share: float, interval: tuple[float, float], threshold: float) -> Verdict:
    if share < threshold:
        return Verdict.FAILS
    return Verdict.PROVED if interval[0] >= threshold else Verdict.REACHED
