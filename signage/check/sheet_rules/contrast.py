"""Text that is too pale for its ground."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.part_names import part_name
from signage.drawing.marks import TextMark
from signage.ground.colour import contrast_ratio
from signage.ground.geometry import Box
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

LOW_CONTRAST = Rule(
    code="SH-10",
    name="low-contrast",
    severity=S2,
    what=(
        "Every text colour against paper and every tint of the sheet, and on filled bands: at least 4.5 "
        "to 1 (WCAG 2.2, 1.4.3)."
    ),
    why="Pale text disappears in poor light and on worn laminate.",
    example="Grey text at 3.1 to 1 on the care tint.",
    cure="Report it: colours are chosen by the theme.",
)

_WANTED = 4.5

_Ground = tuple[float, float, float, float, str]
"""Left, top, right and bottom of a fill on the page, and its colour."""


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each text on a ground that is too like it."""
    seen: set[tuple[str, str, str]] = set()
    for page in subject.sheet.pages:
        grounds: list[_Ground] = []
        for mark, _, box in page.painted:
            if isinstance(mark, TextMark):
                ground = _ground_under(box, grounds)
                ratio = contrast_ratio(mark.colour, ground)
                key = (mark.role, mark.colour, ground)
                if ratio < _WANTED and key not in seen:
                    seen.add(key)
                    yield subject.problem(
                        LOW_CONTRAST,
                        f"{part_name(mark.role)} '{mark.text}' has {ratio:.1f} to 1 "
                        f"on {ground}; 4.5 is wanted",
                    )
            elif isinstance(mark.fill, str):
                grounds.append((box.x, box.y, box.right, box.bottom, mark.fill))


def _ground_under(box: Box, grounds: list[_Ground]) -> str:
    """The colour that was painted last under the middle of a box."""
    x, y = box.x + box.width / 2, box.y + box.height / 2
    for left, top, right, bottom, colour in reversed(grounds):
        if left <= x <= right and top <= y <= bottom:
            return colour
    return "#FFFFFF"


RULE = SheetRule(LOW_CONTRAST, find)
