"""A wall slot from which no printable poster can be read."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.papers import paper_of
from signage.compose.sheet_kind import Owed
from signage.drawing.marks import texts_of
from signage.drawing.roles import TypeRole
from signage.ground.language import script_of
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule
from signage.ground.visual_angle import reading_distance_mm
from signage.model.library import Slot
from signage.text.metrics import metrics_of

TOO_FAR_TO_READ = Rule(
    code="SH-19",
    name="too-far-to-read",
    severity=S3,
    what=(
        "For each wall slot that names this poster: the headline at 15 minutes of arc against the reading "
        "distance, for the largest paper of the library that fits the slot."
    ),
    why="A poster that can only be read by stepping up to it is not followed while hands are busy.",
    example="Slot S3 is read from 2 m; the headline of the A3 poster carries to 1 m.",
    cure="Add a larger paper to library.yaml, or move the slot nearer to the reader.",
)

_ARC_MINUTES = 15.0
_TOLERANCE = 0.05
"""Half points of the fit ladder are not worth a finding."""


def find(subject: SheetSubject) -> Iterator[Problem]:
    """Problems of the slots for which this sheet is the largest that fits."""
    sheet = subject.sheet
    if Owed.DISTANCE not in subject.kind.owes:
        return
    page = sheet.pages[0]
    headlines = texts_of(page, lambda text: text.role is TypeRole.HEADLINE)
    if not headlines:
        return
    fonts = subject.context.wording.fonts
    height = min(
        mark.size * metrics_of(script_of(mark.language), fonts).reference_height for mark, _ in headlines
    )
    carries = reading_distance_mm(height, _ARC_MINUTES)
    for slot in subject.protocol_context.ward.slots:
        names = {f"{sheet.protocol}/{sheet.phase}", sheet.protocol}
        is_meant = bool(names & set(slot.sheets)) and _is_largest(subject, slot)
        if is_meant and carries < slot.reading_distance * (1 - _TOLERANCE):
            yield subject.problem(
                TOO_FAR_TO_READ,
                f"slot {slot.id} is read from {slot.reading_distance / 1000:.1f} m; "
                f"the headline on {sheet.paper} carries to {carries / 1000:.1f} m",
            )


def _is_largest(subject: SheetSubject, slot: Slot) -> bool:
    fitting = [
        paper
        for name in subject.context.library.papers
        if (paper := paper_of(name)).width <= slot.width and paper.height <= slot.height
    ]
    if not fitting:
        return False
    largest = max(fitting, key=lambda paper: paper.width * paper.height)
    return largest.name == subject.sheet.paper


RULE = SheetRule(TOO_FAR_TO_READ, find)
