"""A QR code that a phone may not read."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.drawing.marks import groups_of, texts_of
from signage.drawing.roles import GroupRole
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule

QR_CODE = Rule(
    code="SH-11",
    name="qr-code",
    severity=S1,
    what=(
        "Each code: modules of at least 0.5 mm, a side of at least a tenth of the scanning distance (0.2 "
        "m), no text on it or its quiet zone."
    ),
    why="A dead code sends nobody to the training page, and nobody notices.",
    example="A code with modules of 0.41 mm on a card.",
    cure="Shorten the training address, or print on a larger paper.",
)

_MODULE_MM = 0.5
_SIDE_MM = 20.0


def find(subject: SheetSubject) -> Iterator[Problem]:
    """Problems of each code of each page."""
    for page in subject.sheet.pages:
        for code, box in groups_of(page, GroupRole.QR):
            module = float(code.fact("module") or 0.0)
            if module < _MODULE_MM - 1e-6:
                yield subject.problem(
                    QR_CODE,
                    f"the code for {code.name} has modules of {module:.2f} mm; {_MODULE_MM} mm are wanted",
                )
            if box.width < _SIDE_MM:
                yield subject.problem(QR_CODE, f"the code for {code.name} is {box.width:.1f} mm wide")
            for text, bounds in texts_of(page):
                width, height = box.overlap(bounds)
                if width > 0.1 and height > 0.1:
                    yield subject.problem(
                        QR_CODE, f"{text.role} '{text.text}' lies on the code for {code.name}"
                    )


RULE = SheetRule(QR_CODE, find)
