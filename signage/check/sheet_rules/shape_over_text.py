"""A shape that covers words."""

from collections.abc import Iterator

from signage.check.page_ink import covers, ink_of_pages
from signage.check.rule import SheetRule, SheetSubject
from signage.compose.part_names import part_name
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule

SHAPE_OVER_TEXT = Rule(
    code="SH-30",
    name="shape-over-text",
    severity=S1,
    what=(
        "Every filled shape that is painted after a text, against the ink of each of its lines; more than "
        "0.15 mm both ways counts. Grounds are painted before their text and do not."
    ),
    why="Half a word can say the opposite, and nobody sees that something is missing.",
    example="The block behind the number of a critical step hides the second line of the zone's name.",
    cure="Shorten the text, or report it if the text is short.",
)

_TOLERANCE_MM = 0.15


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each text that something covers."""
    for number, page in enumerate(ink_of_pages(subject), start=1):
        for text in page.texts:
            covering = [
                shape
                for line in text.lines
                for shape in page.shapes_near(line)
                if shape.order > text.order and covers(shape, line, _TOLERANCE_MM)
            ]
            if covering:
                over = min(covering, key=lambda shape: shape.order)
                yield subject.problem(
                    SHAPE_OVER_TEXT,
                    f"{part_name(text.mark.role)} '{text.mark.text}' on page {number} lies under a shape"
                    + (f" of '{over.role}'" if over.role else ""),
                )


RULE = SheetRule(SHAPE_OVER_TEXT, find)
