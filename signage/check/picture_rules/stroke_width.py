"""A line that is drawn thinner than it can be printed."""

from collections.abc import Iterator

from signage.check.picture_rule import PictureRule, PictureSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule
from signage.pictograms.legibility import STROKE_FLOOR, stroke_findings

STROKE_TOO_THIN = Rule(
    code="PC-1",
    name="stroke-too-thin",
    severity=S2,
    what=f"Every line that a scene draws is at least {STROKE_FLOOR} of the 96 units of the canvas wide.",
    why="On a picture of 13.5 mm that is 0.25 mm; copiers lose thinner lines.",
    example="A strap of 1.5 units.",
    cure="Draw the line wider: 2.4 units is the habit, 1.8 the least.",
)


def find(subject: PictureSubject) -> Iterator[Problem]:
    """The problems of one picture."""
    yield from subject.problems(
        STROKE_TOO_THIN, stroke_findings(subject.scene.name, subject.scene.operations)
    )


RULE = PictureRule(STROKE_TOO_THIN, find)
