"""Too little or too much dark in a picture."""

from collections.abc import Iterator

from signage.check.picture_rule import PictureRule, PictureSubject
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule
from signage.pictograms.legibility import INK_RANGE, balance_findings

INK_SHARE = Rule(
    code="PC-8",
    name="ink-share",
    severity=S3,
    what=f"Ink (the person and all outlines) covers {INK_RANGE[0]:.1%} to {INK_RANGE[1]:.1%} of the canvas.",
    why="Pictures of one sheet should weigh alike; a black one draws the eye from the others.",
    example="Two bare hands that fill half of the canvas.",
    cure="Show less of the body, or give a large dark thing another view.",
)


def find(subject: PictureSubject) -> Iterator[Problem]:
    """The problems of one picture."""
    yield from subject.problems(INK_SHARE, balance_findings(subject.scene.name, subject.layers), "ink-share")


RULE = PictureRule(INK_SHARE, find)
