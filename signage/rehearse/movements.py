"""The movements of a schedule, and which of them share one time."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from signage.model.choices import ActionVerb
from signage.model.library import Action, Phase, Step
from signage.rehearse.state.people import Moment
from signage.rehearse.state.setting import Schedule


@dataclass(frozen=True, slots=True)
class Movement:
    """One movement with the time that counts for it.

    On a technique card several movements in a row are one hand hygiene: the first carries the time of all,
    the others are ``is_continued``.
    """

    moment: Moment
    seconds: int | None
    is_continued: bool = False


Last = tuple[Phase, Action]
"""The movement before, with its phase."""


def plan(schedule: Schedule, skipped: Collection[int], wanted: Collection[str]) -> list[tuple[Movement, ...]]:
    """The movements of each step that is done, in order; steps for other conditions are left out."""
    planned: list[tuple[Movement, ...]] = []
    before: Last | None = None
    for index, (phase, step) in enumerate(schedule):
        if index in skipped or step.when not in wanted or not step.actions:
            continue
        planned.append(plan_step(index, phase, step, is_continued=continues(before, phase, step)))
        before = (phase, step.actions[-1])
    return planned


def continues(before: Last | None, phase: Phase, step: Step) -> bool:
    """Whether a step goes on with the hygiene of the movement before it."""
    return before is not None and _is_same_hygiene(before, phase, step.actions[0])


def plan_step(index: int, phase: Phase, step: Step, *, is_continued: bool) -> tuple[Movement, ...]:
    """The movements of one step; the first goes on with what was done before it if ``is_continued``."""
    movements: list[Movement] = []
    before: Last | None = None
    for action in step.actions:
        goes_on = is_continued if before is None else _is_same_hygiene(before, phase, action)
        movements.append(Movement(Moment(index, phase, step, action), _seconds(phase, action), goes_on))
        before = (phase, action)
    return tuple(movements)


def _is_same_hygiene(before: Last, phase: Phase, action: Action) -> bool:
    """Whether this movement goes on with the hygiene of the movement before it."""
    earlier_phase, earlier = before
    return (
        phase is earlier_phase
        and earlier.verb is action.verb is ActionVerb.HYGIENE
        and bool(earlier.part and action.part)
        and (earlier.by, earlier.on, earlier.agent, earlier.layer)
        == (action.by, action.on, action.agent, action.layer)
    )


def _seconds(phase: Phase, action: Action) -> int | None:
    """The time of a movement; on a technique card it is that of the phase, which all its parts share."""
    is_share = action.verb is ActionVerb.HYGIENE and bool(action.part)
    return phase.seconds if is_share and phase.seconds is not None else action.seconds
