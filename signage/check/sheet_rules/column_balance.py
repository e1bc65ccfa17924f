"""A poster whose columns are unevenly heavy."""

from collections.abc import Iterator

from signage.check.raster import rasters_of
from signage.check.rule import SheetRule, SheetSubject
from signage.compose.sheet_kind import Owed
from signage.drawing.marks import groups_of
from signage.drawing.roles import GroupRole
from signage.ground.geometry import Box
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule

UNEVEN_COLUMNS = Rule(
    code="SH-16",
    name="uneven-columns",
    severity=S3,
    what="The ink of the big steps of each column; the heaviest has at most 2.6 times that of the lightest.",
    why="A heavy column draws the eye away from the order of the steps.",
    example="The column of the door has a quarter of the ink of its neighbour.",
    cure="Choose pictures of more even weight, or report it.",
)

_MOST = 2.6


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each page."""
    if Owed.AIR not in subject.kind.owes:
        return
    for number, (page, raster) in enumerate(zip(subject.sheet.pages, rasters_of(subject), strict=True), 1):
        columns: dict[int, list[Box]] = {}
        for step, box in groups_of(page, GroupRole.STEP):
            if step.fact("kind") == "big":
                columns.setdefault(round(box.x), []).append(box)
        full = max((len(boxes) for boxes in columns.values()), default=0)
        weights = [
            sum(raster.share_darker_than(200, box) for box in boxes) / len(boxes)
            for boxes in columns.values()
            if len(boxes) == full
        ]
        if len(weights) > 1 and max(weights) > _MOST * min(weights):
            ratio = max(weights) / min(weights)
            yield subject.problem(UNEVEN_COLUMNS, f"columns of page {number} differ by {ratio:.1f} in ink")


RULE = SheetRule(UNEVEN_COLUMNS, find)
