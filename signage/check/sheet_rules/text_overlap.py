"""Two texts whose ink covers each other."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.check.text_pairs import overlapping_texts
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

TEXT_OVERLAPS_TEXT = Rule(
    code="SH-5",
    name="text-overlaps-text",
    severity=S2,
    what="The ink boxes of all texts of a page; an overlap of more than 0.15 mm both ways counts.",
    why="Letters over letters are not read.",
    example="The word of a bin lies over the headline below it.",
    cure="Shorten the longer text, or report it if the texts are short.",
)

_TOLERANCE_MM = 0.15


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each pair of texts."""
    for page in subject.sheet.pages:
        for pair in overlapping_texts(page, _TOLERANCE_MM):
            yield subject.problem(TEXT_OVERLAPS_TEXT, str(pair))


RULE = SheetRule(TEXT_OVERLAPS_TEXT, find)
