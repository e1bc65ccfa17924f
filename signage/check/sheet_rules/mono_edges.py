"""Marks that a photocopier loses."""

from collections.abc import Iterator

from signage.check.raster import rasters_of
from signage.check.rule import SheetRule, SheetSubject
from signage.compose.theme import Tone
from signage.drawing.marks import groups_of
from signage.drawing.roles import GroupRole
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

PALE_ON_COPIER = Rule(
    code="SH-17",
    name="pale-on-copier",
    severity=S2,
    what=(
        "A sheet for photocopiers, at one bit: black share of zone patterns (15 to 45 %), of critical "
        "marks (at least 60 %)."
    ),
    why="A rail that turns solid black or vanishes no longer tells the zones apart.",
    example="The speckle of the dirty side copies as 8 % black.",
    cure="Report it: patterns are chosen by the theme.",
)

_PATTERN = (0.12, 0.5)
_CRITICAL = 0.6


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each pattern of each page, on sheets made for photocopiers."""
    if subject.context.tone is not Tone.MONO:
        return
    for page, raster in zip(subject.sheet.pages, rasters_of(subject), strict=True):
        for pattern, box in groups_of(page, GroupRole.PATTERN):
            if pattern.name == "blank" or min(box.width, box.height) < 3:
                continue
            share = raster.share_darker_than(140, box)
            if not _PATTERN[0] <= share <= _PATTERN[1]:
                yield subject.problem(
                    PALE_ON_COPIER, f"the pattern {pattern.name} copies as {share:.0%} black"
                )
        for critical, box in groups_of(page, GroupRole.CRITICAL):
            share = raster.share_darker_than(140, box)
            if share < _CRITICAL:
                yield subject.problem(
                    PALE_ON_COPIER, f"the critical mark of {critical.name} copies as {share:.0%} black"
                )


RULE = SheetRule(PALE_ON_COPIER, find)
