"""A text that another one covers, so that neither is read."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.check.text_pairs import overlapping_texts
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule

TEXT_COVERS_TEXT = Rule(
    code="SH-33",
    name="text-covers-text",
    severity=S1,
    what="The ink boxes of all texts of a page; an overlap of more than 0.8 mm both ways counts.",
    why="What cannot be read is guessed, or left out.",
    example="A long name of a zone runs into the number of a step.",
    cure="Shorten the longer text, or report it if the texts are short.",
)

_COVERED_MM = 0.8
"""Half the height of a small letter at 9 pt, the smallest size of a step's words (derived, no source)."""


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each pair of texts."""
    for page in subject.sheet.pages:
        for pair in overlapping_texts(page, _COVERED_MM):
            yield subject.problem(TEXT_COVERS_TEXT, str(pair))


RULE = SheetRule(TEXT_COVERS_TEXT, find)
