"""A picture printed below the size at which it can be told."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.drawing.marks import groups_of
from signage.drawing.roles import GroupRole
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

PICTURE_TOO_SMALL = Rule(
    code="SH-20",
    name="picture-too-small",
    severity=S2,
    what="Pictures of steps are at least 15 mm wide; the simplified hand signs of strips at least 8 mm.",
    why="Below that, lines merge and the item of the step cannot be seen.",
    example="A picture of 11 mm on a crowded A4 poster.",
    cure="Print on a larger paper, or shorten the texts beside the picture.",
)

_PICTURE_MM = 15.0
_SIGN_MM = 8.0


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each picture."""
    for page in subject.sheet.pages:
        for picture, box in groups_of(page, GroupRole.PICTURE):
            floor = _SIGN_MM if picture.fact("is_sign") or picture.name.startswith("sign-") else _PICTURE_MM
            if box.width < floor - 0.01:
                yield subject.problem(
                    PICTURE_TOO_SMALL,
                    f"picture {picture.name} is {box.width:.1f} mm wide; {floor:.0f} mm are wanted",
                )


RULE = SheetRule(PICTURE_TOO_SMALL, find)
