"""The item of the step is too small to be found, or fills the picture."""

from collections.abc import Iterator

from signage.check.picture_rule import PictureRule, PictureSubject
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule
from signage.pictograms.legibility import ACCENT_RANGE, balance_findings

ACCENT_SHARE = Rule(
    code="PC-9",
    name="accent-share",
    severity=S3,
    what=f"Accent and arrows together cover {ACCENT_RANGE[0]:.1%} to {ACCENT_RANGE[1]:.1%} of the canvas.",
    why="The reader looks for the coloured thing first: it is what the step is about.",
    example="Goggles of 0.9 % of the canvas in a picture of a whole person.",
    cure="Choose a nearer view of the item, or show more of it.",
)


def find(subject: PictureSubject) -> Iterator[Problem]:
    """The problems of one picture."""
    yield from subject.problems(
        ACCENT_SHARE, balance_findings(subject.scene.name, subject.layers), "accent-share"
    )


RULE = PictureRule(ACCENT_SHARE, find)
