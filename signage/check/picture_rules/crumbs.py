"""A crumb of one colour that shows between others."""

from collections.abc import Iterator

from signage.check.picture_rule import PictureRule, PictureSubject
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule
from signage.pictograms.legibility import CRUMB, sliver_findings

STRAY_CRUMB = Rule(
    code="PC-5",
    name="crumb",
    severity=S3,
    what=f"Every visible piece of one colour has at least {CRUMB:g} square units.",
    why="Crumbs are left where outlines nearly meet; they look like faults of the print.",
    example="A speck of accent beside the rim of a prohibition ring.",
    cure="Move the layer above by a unit, so that it covers the crumb or leaves a real shape.",
)


def find(subject: PictureSubject) -> Iterator[Problem]:
    """The problems of one picture."""
    yield from subject.problems(STRAY_CRUMB, sliver_findings(subject.scene.name, subject.layers), "crumb")


RULE = PictureRule(STRAY_CRUMB, find)
