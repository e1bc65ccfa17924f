"""A piece of wall where it is too dark to read."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

LEAST_LUX = 20.0
"""A corridor at night; larger type does not help below it. Common practice, no source."""

DARK_SLOT = Rule(
    code="CN-8",
    name="dark-slot",
    severity=S2,
    what=f"The light of each wall slot: at least {LEAST_LUX:g} lux at the darkest hour.",
    why="In the dark no size of type is read, and a step is guessed.",
    example="light: 2",
    cure="Measure again with the lamps on that are on at night, hang a lamp, or choose another wall.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each slot that is too dark."""
    for ward in subject.library.wards.values():
        for slot in ward.slots:
            if slot.light < LEAST_LUX:
                yield subject.problem(
                    DARK_SLOT,
                    f"The slot '{slot.id}' has {slot.light:g} lux; at least {LEAST_LUX:g} are wanted.",
                    slot.at("light"),
                )


RULE = ContentRule(DARK_SLOT, find)
