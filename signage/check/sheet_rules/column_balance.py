"""A poster whose columns are unevenly heavy."""

import math
from collections.abc import Iterator, Sequence

from signage.check.ink_sketch import Sketch, sketches_of
from signage.check.raster import rasters_of
from signage.check.rule import SheetRule, SheetSubject
from signage.compose.sheet_kind import Owed
from signage.drawing.marks import Page, groups_of
from signage.drawing.roles import GroupRole
from signage.ground.geometry import Box
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule

UNEVEN_COLUMNS = Rule(
    code="SH-16",
    name="uneven-columns",
    severity=S3,
    what="The ink of the big steps of each column; the heaviest has at most 2.6 times that of the lightest.",
    why="A heavy column draws the eye away from the order of the steps.",
    example="The column of the door has a quarter of the ink of its neighbour.",
    cure="Choose pictures of more even weight, or report it.",
)

_MOST = 2.6
_INK_GREY = 200
_DOUBT = 1.2
"""A page whose sketch is nearer to the limit is painted and counted exactly."""


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each page."""
    if Owed.AIR not in subject.kind.owes:
        return
    for number, (page, sketch) in enumerate(zip(subject.sheet.pages, sketches_of(subject), strict=True), 1):
        columns = _columns(page)
        if _is_even_in(sketch, columns):
            continue
        raster = rasters_of(subject)[number - 1]
        ratio = _ratio([[raster.share_darker_than(_INK_GREY, box) for box in boxes] for boxes in columns])
        if ratio > _MOST:
            yield subject.problem(UNEVEN_COLUMNS, f"columns of page {number} differ by {ratio:.1f} in ink")


def _columns(page: Page) -> list[list[Box]]:
    """The big steps of each full column."""
    columns: dict[int, list[Box]] = {}
    for step, box in groups_of(page, GroupRole.STEP):
        if step.fact("kind") == "big":
            columns.setdefault(round(box.x), []).append(box)
    full = max((len(boxes) for boxes in columns.values()), default=0)
    return [boxes for boxes in columns.values() if len(boxes) == full]


def _is_even_in(sketch: Sketch, columns: Sequence[Sequence[Box]]) -> bool:
    """Whether the columns are far from uneven however dark the letters are: all of a page are alike."""
    shares = [[sketch.darkness(_INK_GREY, box) for box in boxes] for boxes in columns]
    ratios = [_ratio([[share[end] for share in column] for column in shares]) for end in (0, 1)]
    return max(ratios) <= _MOST / _DOUBT


def _ratio(columns: Sequence[Sequence[float]]) -> float:
    """The mean of the heaviest column over that of the lightest."""
    weights = [sum(shares) / len(shares) for shares in columns]
    if len(weights) < 2 or not max(weights):
        return 1.0
    return max(weights) / min(weights) if min(weights) else math.inf


RULE = SheetRule(UNEVEN_COLUMNS, find)
