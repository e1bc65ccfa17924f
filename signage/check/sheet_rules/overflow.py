"""Text that does not fit its box at the smallest size its role may have."""

from collections.abc import Iterator
from dataclasses import replace

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.part_names import overflow_message
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule

TEXT_OVERFLOW = Rule(
    code="SH-1",
    name="text-overflow",
    severity=S1,
    what="Every text of a sheet at the end of the fit ladder (balanced, ties dropped, down to its floor).",
    why="Text that runs out of its box covers another step, and smaller type is not read on the wall.",
    example="A headline of twelve long words needs 11.4 mm more than its tile has.",
    cure="Shorten the text, or print the sheet on a larger paper.",
)


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each text that is left over."""
    wording, library = subject.context.wording, subject.context.library
    for overflow in subject.sheet.overflows:
        text = overflow.message or wording.context_of(overflow.text, subject.sheet.protocol)
        problem = subject.text_problem(TEXT_OVERFLOW, overflow_message(overflow), text)
        shown = overflow.text.strip("\u2066\u2067\u2068\u2069")
        if text is None and shown and shown in library.training_address:
            hint = "Shorten the training address: give the server a shorter name."
            problem = replace(problem, place=library.at("training_address"), hint=hint)
        yield problem


RULE = SheetRule(TEXT_OVERFLOW, find)
