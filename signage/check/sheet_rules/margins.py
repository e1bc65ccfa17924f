"""Text that leaves the printable area."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.part_names import part_name
from signage.drawing.marks import texts_of
from signage.drawing.roles import TypeRole
from signage.ground.geometry import Box
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

TEXT_IN_MARGIN = Rule(
    code="SH-6",
    name="text-in-margin",
    severity=S2,
    what="Every text but the draft ribbon lies inside the margins of its page (0.3 mm tolerance).",
    why="Printers do not reach the edge, and laminate covers it.",
    example="A footer line in Hindi ends 2 mm outside the margin.",
    cure="Shorten the text, or report it if the text is short.",
)

_TOLERANCE_MM = 0.3


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each text outside."""
    for number, page in enumerate(subject.sheet.pages, start=1):
        margin = page.margin
        live = Box(margin, margin, page.width - 2 * margin, page.height - 2 * margin)
        for mark, box in texts_of(page, lambda text: text.role is not TypeRole.RIBBON):
            if not live.contains(box, _TOLERANCE_MM):
                outside = max(
                    live.x - box.x, live.y - box.y, box.right - live.right, box.bottom - live.bottom
                )
                yield subject.problem(
                    TEXT_IN_MARGIN,
                    f"{part_name(mark.role)} '{mark.text}' reaches {outside:.1f} mm "
                    f"into the margin of page {number}",
                )


RULE = SheetRule(TEXT_IN_MARGIN, find)
