"""A ruler that is not 50 mm long."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.sheet_kind import Owed
from signage.drawing.marks import groups_of
from signage.drawing.roles import GroupRole
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule

RULER_LENGTH = Rule(
    code="SH-12",
    name="ruler-length",
    severity=S1,
    what=(
        "Each page carries a ruler of exactly 50 mm (0.05 mm tolerance), also after imposition; cards and "
        "folded sheets at least one each."
    ),
    why="The ruler is the only proof that a print is at full size, and with it that type and codes are.",
    example="A ruler of 47 mm after four cards were put on a sheet.",
    cure="Report it: the layout is at fault, not the content.",
)

_LENGTH_MM = 50.0
_TOLERANCE_MM = 0.05


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each page without a true ruler."""
    if Owed.RULER not in subject.kind.owes:
        return
    for number, page in enumerate(subject.sheet.pages, start=1):
        rulers = groups_of(page, GroupRole.RULER)
        if not rulers:
            yield subject.problem(RULER_LENGTH, f"page {number} has no ruler")
        for _ruler, box in rulers:
            if abs(max(box.width, box.height) - _LENGTH_MM) > _TOLERANCE_MM:
                yield subject.problem(
                    RULER_LENGTH, f"the ruler of page {number} is {max(box.width, box.height):.2f} mm long"
                )


RULE = SheetRule(RULER_LENGTH, find)
