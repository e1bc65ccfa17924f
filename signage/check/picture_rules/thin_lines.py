"""What is left of a line or a point after others have covered it is too thin to print."""

from collections.abc import Iterator

from signage.check.picture_rule import PictureRule, PictureSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule
from signage.pictograms.legibility import THIN_PIECE, THINNEST_RADIUS, thin_findings

LINE_TOO_THIN = Rule(
    code="PC-2",
    name="line-too-thin",
    severity=S2,
    what=(
        f"Ink, accent and signs as far as they are seen: at most {THIN_PIECE:g} square units of a piece are "
        f"narrower than {2 * THINNEST_RADIUS:g} units."
    ),
    why="A line may be drawn wide and be shaved by what lies over it; what is left vanishes in print.",
    example="The rim of goggles of which a halo leaves one unit.",
    cure="Move the layers apart, or take the halo off the layer above with halo: 0.",
)


def find(subject: PictureSubject) -> Iterator[Problem]:
    """The problems of one picture."""
    yield from subject.problems(LINE_TOO_THIN, thin_findings(subject.scene.name, subject.layers))


RULE = PictureRule(LINE_TOO_THIN, find)
