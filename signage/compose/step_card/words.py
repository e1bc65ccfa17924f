"""What a step card says besides headline, detail and reason: when it holds, what it goes into, how long."""

from __future__ import annotations

from signage.compose.arrangement import NumberedStep, numbered_steps
from signage.compose.context import SheetContext, container_message
from signage.compose.hand_technique.layout import parts_of, shared_seconds
from signage.compose.word_stack import Look, Piece, StackSizes, WordStack
from signage.drawing.roles import TypeRole
from signage.model.choices import RuleKind
from signage.model.library import Phase, Step

STACK_GAP = 2.0
"""Between the headline and the stack below it, in millimetres."""
CONDITION_GAP = 3.0
"""Between the frame of a condition and the headline: a capital may carry an accent."""

SIZES = StackSizes(12.0, 12.0)


def condition_stack(context: SheetContext, step: Step, width: float) -> WordStack:
    """Above the headline: the condition of a conditional step; empty for others."""
    words = context.condition_words(step)
    pieces = (
        [Piece(TypeRole.CONDITION, words, f"interface/{step.when}", 700, lines=2, look=Look.FRAME)]
        if words
        else []
    )
    return WordStack.of(pieces, width, 1.0, context.wording)


def fact_stack(context: SheetContext, step: Step, width: float) -> WordStack:
    """Below the headline: the names of bins without a letter, and times that the words do not say."""
    pieces = [
        Piece(
            TypeRole.CONTAINER_NAME,
            context.container_name(fixture) or "",
            container_message(context.ward, fixture),
            600,
        )
        for fixture in context.containers(step)
        if not fixture.code and fixture.name
    ]
    message = f"{context.protocol.id}/{step.id}/seconds"
    time = context.untold_time(step) or _shared_time(context, step)
    if time:
        pieces.append(Piece(TypeRole.STEP_TIME, time, message, 600, lines=2, is_care=True))
    return WordStack.of(pieces, width, 1.0, context.wording)


def phase_rule(context: SheetContext, numbered: NumberedStep) -> Phase | None:
    """The phase whose rule stands on the card of a step: a stop rule on each, another on the first only."""
    phase = next(each for each in context.protocol.phases if numbered.step in each.steps)
    if phase.rule is None or (phase.rule_kind is not RuleKind.STOP and numbered.number > 1):
        return None
    return phase


def _shared_time(context: SheetContext, step: Step) -> str | None:
    """The time that the movements of a hand technique share, on the card of each of them."""
    phase = next(each for each in context.protocol.phases if step in each.steps)
    seconds = shared_seconds(context.protocol, phase)
    movements = parts_of(numbered_steps(context.protocol, phase)).movements
    if seconds is None or not any(numbered.step is step for numbered in movements):
        return None
    return context.wording.fixed("movements-together", time=context.wording.seconds(seconds))
