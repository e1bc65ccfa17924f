"""Type below the size that its reader needs."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.part_names import part_name
from signage.drawing.marks import texts_of
from signage.drawing.roles import TypeRole
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

_ACTION_FLOOR, _ZONE_FLOOR, _CONTROL_FLOOR = 9.0, 8.0, 7.0
"""In points. Names of zones stand on every row head of cards and pocket rows, read at hand distance."""

FLOORS: dict[TypeRole, float] = {
    **dict.fromkeys(
        (
            TypeRole.TITLE,
            TypeRole.HEADLINE,
            TypeRole.DETAIL,
            TypeRole.STRIP,
            TypeRole.ROW,
            TypeRole.CONTENTS,
            TypeRole.KEY_RULE,
            TypeRole.KEY_WORD,
            TypeRole.NUMBER,
            TypeRole.TIME,
            TypeRole.NOTE,
            TypeRole.CAUTION,
            TypeRole.CONDITION,
            TypeRole.CONTAINER_NAME,
            TypeRole.STRIP_DETAIL,
            TypeRole.STRIP_CAUTION,
            TypeRole.STRIP_CONDITION,
            TypeRole.STRIP_CONTAINER_NAME,
            TypeRole.STEP_TIME,
            TypeRole.STRIP_STEP_TIME,
        ),
        _ACTION_FLOOR,
    ),
    TypeRole.ZONE: _ZONE_FLOOR,
    **dict.fromkeys(
        (
            TypeRole.OVER,
            TypeRole.PLATE,
            TypeRole.HEAD,
            TypeRole.PANEL_TITLE,
            TypeRole.CODE_TITLE,
            TypeRole.WHY,
            TypeRole.BAR,
            TypeRole.KEY_NUMBER,
            TypeRole.RULE,
            TypeRole.RULE_NUMBER,
            TypeRole.LABEL,
            TypeRole.LEGEND,
            TypeRole.CRITICAL,
            TypeRole.CONTAINER,
            TypeRole.CONTAINER_WORD,
            TypeRole.DRAFT,
            TypeRole.DRAFT_SENTENCE,
            TypeRole.RIBBON,
            TypeRole.CODE,
            TypeRole.CONTROL,
            TypeRole.CONTROL_HEAD,
            TypeRole.LOCAL_POLICY,
            TypeRole.RULER_WORDS,
            TypeRole.MEMORY_AID,
            TypeRole.CAUTIONS,
            TypeRole.SHEET,
            TypeRole.SCENE_NAME,
            TypeRole.SCENE_NUMBER,
            TypeRole.QUESTION,
            TypeRole.QUESTION_NUMBER,
            TypeRole.FIELD,
            TypeRole.SENTENCE,
            TypeRole.MEANING,
            TypeRole.CATEGORY,
            TypeRole.MARK,
        ),
        _CONTROL_FLOOR,
    ),
}


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each role and text below its floor."""
    seen: set[tuple[TypeRole, str]] = set()
    for page in subject.sheet.pages:
        for mark, _box in texts_of(page):
            nominal = (
                mark.points / metrics_of(script_of(mark.language), subject.context.wording.fonts).size_factor
            )
            floor = FLOORS[mark.role]
            if nominal < floor - 0.01 and (mark.role, mark.text) not in seen:
                seen.add((mark.role, mark.text))
                yield subject.problem(
                    TYPE_TOO_SMALL,
                    f"{part_name(mark.role)} '{mark.text}' is set at {nominal:.1f} pt; "
                    f"the floor is {floor:.0f} pt",
                )


RULE = SheetRule(TYPE_TOO_SMALL, find)
