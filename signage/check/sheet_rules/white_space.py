"""A poster with too little paper left between things."""

from collections.abc import Iterator

from signage.check.ink_sketch import sketches_of
from signage.check.raster import Raster, rasters_of
from signage.check.rule import SheetRule, SheetSubject
from signage.compose.sheet_kind import Owed
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule

CROWDED_SHEET = Rule(
    code="SH-15",
    name="crowded-sheet",
    severity=S3,
    what="The share of paper (lighter than 238 of 255) inside the margins: at least 60 % on a poster.",
    why="Crowded sheets are not read; empty ones waste the distance at which type could be larger.",
    example="A poster whose paper share is 52 %.",
    cure="Shorten details, or print on a larger paper.",
)

_LEAST_PAPER = 0.60
_PAPER_GREY = 238
_DOUBT = 0.02
"""A page whose sketch is nearer to the limit is painted and counted exactly."""


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each crowded page."""
    if Owed.AIR not in subject.kind.owes:
        return
    for number, sketch in enumerate(sketches_of(subject), start=1):
        _, darkest = sketch.darkness(_PAPER_GREY)
        if darkest <= 1 - _LEAST_PAPER - _DOUBT:
            continue
        share = paper_share(rasters_of(subject)[number - 1])
        if share < _LEAST_PAPER:
            yield subject.problem(
                CROWDED_SHEET, f"page {number} is {share:.0%} paper; {_LEAST_PAPER:.0%} is wanted"
            )


def paper_share(raster: Raster) -> float:
    """The share of pixels that are paper inside the margins."""
    return raster.share_lighter_than(_PAPER_GREY)


RULE = SheetRule(CROWDED_SHEET, find)
