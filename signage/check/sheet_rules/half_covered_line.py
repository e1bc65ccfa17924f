"""A rule of a list that the ground of the next row half covers."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.drawing.marks import Page, PathMark
from signage.ground.geometry import Box
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule

LINE_HALF_COVERED = Rule(
    code="SH-32",
    name="line-half-covered",
    severity=S3,
    what=(
        "Level lines of 20 mm and more: no fill that is painted later ends inside the thickness of the line."
    ),
    why="Half a hairline is lost on a photocopy, and with it where a row ends.",
    example="The tint of a row of hand hygiene lies over the lower half of the line above it.",
    cure="Report it: the layout is at fault, not the content.",
)

_LEAST_LENGTH_MM = 20.0
_SHARED_MM = 1.0


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each page with such lines."""
    for number, page in enumerate(subject.sheet.pages, start=1):
        count = _half_covered(page)
        if count:
            yield subject.problem(
                LINE_HALF_COVERED, f"lines half covered by a fill on page {number}: {count}"
            )


def _half_covered(page: Page) -> int:
    lines: list[tuple[Box, float]] = []
    covered: set[Box] = set()
    for mark, transform, box in page.painted:
        if not isinstance(mark, PathMark):
            continue
        if mark.fill is None:
            if mark.stroke and box.height < 0.001 and box.width >= _LEAST_LENGTH_MM:
                lines.append((box, mark.width * transform.scale / 2))
        elif not mark.stroke and box.width >= _SHARED_MM:
            covered.update(
                line
                for line, half in lines
                if line.overlap(box)[0] >= _SHARED_MM
                and min(abs(line.y - box.y), abs(line.y - box.bottom)) < half - 1e-6
            )
    return len(covered)


RULE = SheetRule(LINE_HALF_COVERED, find)
