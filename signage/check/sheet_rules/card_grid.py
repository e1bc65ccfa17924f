"""Cards of a poster that are not on one grid."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.sheet_kind import Owed
from signage.drawing.marks import groups_of
from signage.drawing.roles import GroupRole
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule

UNEVEN_CARDS = Rule(
    code="SH-21",
    name="uneven-cards",
    severity=S3,
    what=(
        "All big steps of a page start on the same few columns and have one width and one tile height; "
        "the line of number and headline has one height on all strips."
    ),
    why="An even grid lets the eye go from card to card; an odd card looks more important.",
    example="One tile is 3 mm higher than its neighbours.",
    cure="Report it: the layout is at fault, not the content.",
)

_TOLERANCE_MM = 0.1


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each kind of step and measure that varies on a page."""
    if Owed.GRID not in subject.kind.owes:
        return
    for number, page in enumerate(subject.sheet.pages, start=1):
        steps = groups_of(page, GroupRole.STEP)
        tiles = [box for step, box in steps if step.fact("kind") == "big"]
        lines = [float(step.fact("line") or 0.0) for step, _ in steps if step.fact("kind") == "small"]
        measured = (
            ("big", "width", [box.width for box in tiles]),
            ("big", "height", [box.height for box in tiles]),
            ("small", "the height of their line", lines),
        )
        for kind, measure, values in measured:
            if values and max(values) - min(values) > _TOLERANCE_MM:
                yield subject.problem(
                    UNEVEN_CARDS,
                    f"{kind} steps of page {number} are {min(values):.1f} to {max(values):.1f} mm "
                    f"in {measure}",
                )


RULE = SheetRule(UNEVEN_CARDS, find)
