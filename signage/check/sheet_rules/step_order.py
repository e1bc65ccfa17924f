"""Steps that are missing, printed twice or out of order."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.sheet_kind import Owed
from signage.drawing.marks import Group
from signage.drawing.roles import GroupRole
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule

STEP_NUMBERS = Rule(
    code="SH-4",
    name="step-numbers",
    severity=S1,
    what=(
        "The steps of a sheet are those of its protocol or phase: each once, numbered from 1, in reading "
        "order."
    ),
    why="A lost step is the one that was needed; a reader follows the page, not the file.",
    example="Step 12 stands before step 11 when the cards are read row by row.",
    cure="Report it: the layout is at fault, not the content.",
)


def find(subject: SheetSubject) -> Iterator[Problem]:
    """Problems of counting and of order over all pages."""
    if Owed.STEPS not in subject.kind.owes:
        return
    sheet, protocol = subject.sheet, subject.protocol_context.protocol
    wanted = [
        (step.id, number)
        for phase in protocol.phases
        if not sheet.phase or phase.id == sheet.phase
        for number, step in enumerate(phase.steps, start=1)
    ]
    drawn = [
        (mark.name, mark.fact("number"))
        for page in sheet.pages
        for mark, _ in page.placed
        if isinstance(mark, Group) and mark.role is GroupRole.STEP
    ]
    if drawn == wanted:
        return
    for step, number in wanted:
        times = [name for name, _ in drawn].count(step)
        if times != 1:
            how = "is not on the sheet" if not times else f"is on the sheet {times} times"
            yield subject.problem(STEP_NUMBERS, f"step {number} ({step}) {how}", step)
    if sorted(map(str, drawn)) == sorted(map(str, wanted)):
        place = next(index for index, pair in enumerate(drawn) if pair != wanted[index])
        yield subject.problem(
            STEP_NUMBERS,
            f"step {wanted[place][1]} should come where step {drawn[place][1]} stands",
            wanted[place][0],
        )


RULE = SheetRule(STEP_NUMBERS, find)
