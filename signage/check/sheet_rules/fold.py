"""Panels of a folded sheet in the wrong order."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.sheet_kind import Imposition
from signage.drawing.marks import groups_of
from signage.drawing.roles import GroupRole
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule

FOLD_ORDER = Rule(
    code="SH-18",
    name="fold-order",
    severity=S1,
    what=(
        "Back-to-back pairs of the eight panels are (1,2), (3,4), (5,6) and (7,8), in both directions of "
        "reading."
    ),
    why="A checklist folded from a wrong sheet reads out of order.",
    example="Panel 3 lies behind panel 6.",
    cure="Report it: the imposition is at fault, not the content.",
)

_LEAVES = {frozenset(pair) for pair in ((1, 2), (3, 4), (5, 6), (7, 8))}


def find(subject: SheetSubject) -> Iterator[Problem]:
    """Folds the sheet by the position of its panels: outer columns at the middle, inner ones at the slit."""
    if subject.kind.imposition is not Imposition.FOLD_EIGHT:
        return
    for page in subject.sheet.pages:
        panels = groups_of(page, GroupRole.PANEL)
        rows: dict[bool, list[tuple[float, int]]] = {True: [], False: []}
        for panel, box in panels:
            rows[box.y + box.height / 2 < page.height / 2].append((box.x, int(panel.name)))
        upper = [number for _, number in sorted(rows[True])]
        lower = [number for _, number in sorted(rows[False])]
        if len(upper) != 4 or len(lower) != 4:
            yield subject.problem(
                FOLD_ORDER, f"there are {len(upper)} panels above and {len(lower)} below the fold"
            )
            continue
        pairs = {
            frozenset((upper[0], lower[0])),
            frozenset((upper[3], lower[3])),
            frozenset((lower[1], lower[2])),
            frozenset((upper[1], upper[2])),
        }
        if pairs != _LEAVES:
            wrong = sorted(sorted(pair) for pair in pairs - _LEAVES)
            yield subject.problem(FOLD_ORDER, f"panels {wrong} lie back to back")


RULE = SheetRule(FOLD_ORDER, find)
