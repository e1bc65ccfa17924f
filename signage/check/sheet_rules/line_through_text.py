"""A line or an edge that runs through words."""

from collections.abc import Iterator, Sequence

from signage.check.page_ink import ShapeInk, TextInk, covers, ink_of_pages, touches
from signage.check.rule import SheetRule, SheetSubject
from signage.compose.part_names import part_name
from signage.ground.geometry import Box
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

LINE_THROUGH_TEXT = Rule(
    code="SH-31",
    name="line-through-text",
    severity=S2,
    what=(
        "Every stroke and every edge of a fill (rulers, rules, frames, grounds, pictures) against the ink of "
        "each line of text; more than 0.15 mm counts."
    ),
    why="Words that a ruler or a frame crosses are misread, and a crossed ruler cannot be measured.",
    example="The 50 mm ruler of a step card runs through 'Review by'.",
    cure="Shorten the text, or report it if the text is short.",
)

_TOLERANCE_MM = 0.15


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each text that something crosses and nothing covers."""
    for number, page in enumerate(ink_of_pages(subject), start=1):
        for text in page.texts:
            role = next(
                (role for line in text.lines for role in _crossing(text, line, page.shapes_near(line))), None
            )
            if role is not None:
                what = f"an edge or line of '{role}'" if role else "an edge or line"
                yield subject.problem(
                    LINE_THROUGH_TEXT,
                    f"{what} runs through {part_name(text.mark.role)} '{text.mark.text}' on page {number}",
                )


def _crossing(text: TextInk, line: Box, shapes: Sequence[ShapeInk]) -> Iterator[str]:
    """The roles of what crosses a line of text; the seam between two fills of one colour does not."""
    near = [shape for shape in shapes if touches(shape, line, _TOLERANCE_MM)]
    grounds = [shape.fill for shape in near if not shape.stroke_width and shape.order < text.order]
    for shape in near:
        is_cover = shape.order > text.order and covers(shape, line, _TOLERANCE_MM)
        is_seam = not shape.stroke_width and grounds.count(shape.fill) > 1
        if not is_cover and not is_seam:
            yield shape.role


RULE = SheetRule(LINE_THROUGH_TEXT, find)
