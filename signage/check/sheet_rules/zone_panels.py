"""A step drawn in a panel that is not its zone."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.drawing.marks import groups_of
from signage.drawing.roles import GroupRole
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule

STEP_OUTSIDE_ITS_ZONE = Rule(
    code="SH-3",
    name="step-outside-its-zone",
    severity=S1,
    what="Every step box of a poster lies inside exactly one zone panel, the panel of its own zone.",
    why="A step on the ground of the wrong zone sends the reader to the wrong side of the line.",
    example="Step 23 belongs to the clean side and stands on the panel of the dirty side.",
    cure="Report it: the layout is at fault, not the content.",
)


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each step box in no panel, in several, or in that of another zone."""
    for page in subject.sheet.pages:
        panels = groups_of(page, GroupRole.ZONE)
        if not panels:
            continue
        for step, box in groups_of(page, GroupRole.STEP):
            homes = [panel.name for panel, bounds in panels if bounds.contains(box, 0.1)]
            zone = step.fact("zone")
            if homes != [zone]:
                found = "no panel" if not homes else f"the panel of {', '.join(homes)}"
                yield subject.problem(
                    STEP_OUTSIDE_ITS_ZONE,
                    f"step {step.fact('number')} belongs to {zone} and stands in {found}",
                    step.name,
                )


RULE = SheetRule(STEP_OUTSIDE_ITS_ZONE, find)
