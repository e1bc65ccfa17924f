"""Two texts whose ink covers each other."""

from collections.abc import Iterator

from signage.check.rule import Explanation, SheetRule, SheetSubject
from signage.drawing.marks import texts_of
from signage.ground.problem import Problem, Severity

EXPLANATION = Explanation(
    code="SH-5",
    name="text-overlaps-text",
    severity=Severity.S2,
    what="The ink boxes of all texts of a page; an overlap of more than 0.15 mm both ways counts.",
    why="Letters over letters are not read.",
    example="The word of a bin lies over the headline below it.",
    cure="Shorten the longer text, or report it if the texts are short.",
)

_TOLERANCE_MM = 0.15


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each pair of texts."""
    for page in subject.sheet.pages:
        texts = sorted(texts_of(page), key=lambda item: item[1].y)
        for index, (mark, box) in enumerate(texts):
            for other, bounds in texts[index + 1 :]:
                if bounds.y > box.bottom:
                    break
                width, height = box.overlap(bounds)
                if width > _TOLERANCE_MM and height > _TOLERANCE_MM:
                    yield subject.problem(
                        EXPLANATION,
                        f"{mark.role} '{mark.text}' and {other.role} '{other.text}' overlap by "
                        f"{width:.1f} x {height:.1f} mm",
                    )


RULE = SheetRule(EXPLANATION, find)
