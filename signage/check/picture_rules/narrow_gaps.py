"""Gaps that close in print."""

from collections.abc import Iterator

from signage.check.picture_rule import PictureRule, PictureSubject
from signage.check.rule import Explanation
from signage.ground.problem import Problem, Severity
from signage.pictograms.legibility import GAP_AREA, GAP_RADIUS, gap_findings

EXPLANATION = Explanation(
    code="PC-3",
    name="gap-too-narrow",
    severity=Severity.S2,
    what=f"Gaps narrower than {2 * GAP_RADIUS:g} unit cover {GAP_AREA:g} square units or less of a picture.",
    why="Fingers, straps and folds are told by their gaps; where ink runs they melt into one blot.",
    example="Two straps that lie half a unit apart.",
    cure="Move the shapes apart by 2.4 units, or let them overlap.",
)


def find(subject: PictureSubject) -> Iterator[Problem]:
    """The problems of one picture."""
    yield from subject.problems(EXPLANATION, gap_findings(subject.scene.name, subject.layers))


RULE = PictureRule(EXPLANATION, find)
