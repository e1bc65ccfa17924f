"""Drawing that reaches the edge of the canvas unannounced."""

from collections.abc import Iterator

from signage.check.picture_rule import PictureRule, PictureSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule
from signage.pictograms.legibility import LIVE_MARGIN, live_area_findings

DRAWING_AT_EDGE = Rule(
    code="PC-6",
    name="drawing-at-edge",
    severity=S2,
    what=(
        f"The outer {LIVE_MARGIN:g} units of the canvas stay empty on each side that the scene does not name "
        "under cropped."
    ),
    why="Pictures stand close to words and frames; what sticks out is cut or touches them.",
    example="An elbow 1 unit from the left edge.",
    cure="Move or scale the drawing, or name the side under cropped where it is cut on purpose.",
)


def find(subject: PictureSubject) -> Iterator[Problem]:
    """The problems of one picture."""
    yield from subject.problems(
        DRAWING_AT_EDGE, live_area_findings(subject.scene.name, subject.layers, subject.scene.cropped)
    )


RULE = PictureRule(DRAWING_AT_EDGE, find)
