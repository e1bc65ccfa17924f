"""One role in several sizes on a sheet."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.part_names import part_name
from signage.drawing.marks import TextMark, texts_of
from signage.drawing.roles import TypeRole
from signage.ground.problem import Problem
from signage.ground.quotation import quoted
from signage.ground.rule import S3, Rule

UNEVEN_TYPE = Rule(
    code="SH-8",
    name="uneven-type",
    severity=S3,
    what="Headlines, details and strips of a page have one size each.",
    why="Mixed sizes look like mistakes and make one step seem more important than another.",
    example="One headline at 20 pt among others at 23 pt.",
    cure="Shorten the text that the message quotes: it alone is too long for the size of the others.",
)

_UNIFORM = (TypeRole.HEADLINE, TypeRole.DETAIL, TypeRole.STRIP, TypeRole.ROW)


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each role of a page."""
    for number, page in enumerate(subject.sheet.pages, start=1):
        marks_of: dict[TypeRole, dict[float, TextMark]] = {role: {} for role in _UNIFORM}
        for mark, _ in texts_of(page, lambda text: text.role in _UNIFORM):
            marks_of[mark.role].setdefault(round(mark.points, 2), mark)
        for role, marks in marks_of.items():
            if len(marks) > 1:
                listed = ", ".join(f"{size:g}" for size in sorted(marks))
                smallest = marks[min(marks)]
                yield subject.text_problem(
                    UNEVEN_TYPE,
                    f"{part_name(role)} on page {number} is set at {listed} pt; "
                    f"the smallest is {quoted(smallest.text)}",
                    smallest.message,
                )


RULE = SheetRule(UNEVEN_TYPE, find)
