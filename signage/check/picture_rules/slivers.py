"""A bit that stands alone too small to be anything."""

from collections.abc import Iterator

from signage.check.picture_rule import PictureRule, PictureSubject
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule
from signage.pictograms.legibility import SLIVER, sliver_findings

STRAY_SLIVER = Rule(
    code="PC-4",
    name="sliver",
    severity=S3,
    what=f"Every piece of the drawing that touches no other has at least {SLIVER:g} square units.",
    why="A reader takes a stray bit for dirt, or for a germ.",
    example="The tip of a thumb that shows beside a sleeve.",
    cure="Crop the layer, or move it until the bit is hidden or joined.",
)


def find(subject: PictureSubject) -> Iterator[Problem]:
    """The problems of one picture."""
    yield from subject.problems(STRAY_SLIVER, sliver_findings(subject.scene.name, subject.layers), "sliver")


RULE = PictureRule(STRAY_SLIVER, find)
