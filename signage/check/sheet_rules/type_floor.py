"""Type below the size that its reader needs."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.part_names import part_name
from signage.drawing.marks import texts_of
from signage.ground.language import script_of
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule
from signage.text.metrics import metrics_of

TYPE_TOO_SMALL = Rule(
    code="SH-7",
    name="type-too-small",
    severity=S2,
    what=(
        "The nominal size of every text against the floor of its role: 9 pt for what is read while "
        "acting, 7 pt for control text."
    ),
    why="Goggles fog, light is poor and hands are busy: small type is not read.",
    example="A headline on an A4 poster at 8 pt.",
    cure="Print on a larger paper, or shorten the texts of that role.",
)

_READ_IN_ACTION = frozenset(
    {
        "title",
        "headline",
        "detail",
        "strip",
        "row",
        "contents",
        "key-rule",
        "key-word",
        "number",
        "zone",
        "time",
        "note",
        "caution",
        "condition",
        "container-name",
        "strip-detail",
        "strip-caution",
        "strip-condition",
        "strip-container-name",
        "step-time",
        "strip-step-time",
    }
)
_ACTION_FLOOR = 9.0
_CONTROL_FLOOR = 7.0
_SMALL_ROLES = {"zone": 8.0}
"""Zone names of cards and pocket rows are repeated on every row head and read at hand distance."""


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each role and text below its floor."""
    seen: set[tuple[str, str]] = set()
    for page in subject.sheet.pages:
        for mark, _box in texts_of(page):
            nominal = (
                mark.points / metrics_of(script_of(mark.language), subject.context.wording.fonts).size_factor
            )
            floor = _SMALL_ROLES.get(
                mark.role, _ACTION_FLOOR if mark.role in _READ_IN_ACTION else _CONTROL_FLOOR
            )
            if nominal < floor - 0.01 and (mark.role, mark.text) not in seen:
                seen.add((mark.role, mark.text))
                yield subject.problem(
                    TYPE_TOO_SMALL,
                    f"{part_name(mark.role)} '{mark.text}' is set at {nominal:.1f} pt; "
                    f"the floor is {floor:.0f} pt",
                )


RULE = SheetRule(TYPE_TOO_SMALL, find)
