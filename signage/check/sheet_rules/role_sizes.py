"""One role in several sizes on a sheet."""

from collections.abc import Iterator

from signage.check.rule import Explanation, SheetRule, SheetSubject
from signage.drawing.marks import texts_of
from signage.ground.problem import Problem, Severity

EXPLANATION = Explanation(
    code="SH-8",
    name="uneven-type",
    severity=Severity.S3,
    what="Headlines, details and strips of a page have one size each.",
    why="Mixed sizes look like mistakes and make one step seem more important than another.",
    example="One headline at 20 pt among others at 23 pt.",
    cure="Report it: the layout chooses one size for all texts of a role.",
)

_UNIFORM = ("headline", "detail", "strip", "row")


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each role of a page."""
    for number, page in enumerate(subject.sheet.pages, start=1):
        sizes_of: dict[str, set[float]] = {role: set() for role in _UNIFORM}
        for mark, _ in texts_of(page, lambda text: text.role in _UNIFORM):
            sizes_of[mark.role].add(round(mark.points, 2))
        for role, sizes in sizes_of.items():
            if len(sizes) > 1:
                listed = ", ".join(f"{size:g}" for size in sorted(sizes))
                yield subject.problem(EXPLANATION, f"{role} on page {number} is set at {listed} pt")


RULE = SheetRule(EXPLANATION, find)
