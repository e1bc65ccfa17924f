"""Gaps that close in print."""

from collections.abc import Iterator

from signage.check.picture_rule import PictureRule, PictureSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule
from signage.pictograms.legibility import GAP_AREA, GAP_RADIUS, gap_findings

GAP_TOO_NARROW = Rule(
    code="PC-3",
    name="gap-too-narrow",
    severity=S2,
    what=f"Gaps narrower than {2 * GAP_RADIUS:g} unit cover {GAP_AREA:g} square units or less of a picture.",
    why="Fingers, straps and folds are told by their gaps; where ink runs they melt into one blot.",
    example="Two straps that lie half a unit apart.",
    cure="Move the shapes apart by 2.4 units, or let them overlap.",
)


def find(subject: PictureSubject) -> Iterator[Problem]:
    """The problems of one picture."""
    yield from subject.problems(GAP_TOO_NARROW, gap_findings(subject.scene.name, subject.layers))


RULE = PictureRule(GAP_TOO_NARROW, find)
