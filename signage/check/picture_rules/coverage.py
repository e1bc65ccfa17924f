"""Too little drawing on the canvas, or too much."""

from collections.abc import Iterator

from signage.check.picture_rule import PictureRule, PictureSubject
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule
from signage.pictograms.legibility import COVERAGE_RANGE, balance_findings

DRAWING_SHARE = Rule(
    code="PC-7",
    name="drawing-share",
    severity=S3,
    what=f"All but white garments covers {COVERAGE_RANGE[0]:.1%} to {COVERAGE_RANGE[1]:.1%} of the canvas.",
    why="A small drawing is not seen from afar, a crowded one is not told apart.",
    example="A bottle that fills 9 % of its canvas.",
    cure="Enlarge the item, choose a nearer view, or leave scenery out.",
)


def find(subject: PictureSubject) -> Iterator[Problem]:
    """The problems of one picture."""
    yield from subject.problems(
        DRAWING_SHARE, balance_findings(subject.scene.name, subject.layers), "coverage"
    )


RULE = PictureRule(DRAWING_SHARE, find)
