"""Single edits of a protocol: one step changed, moved, added or deleted. Each gives a new protocol value."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from signage.model.library import Action, Phase, Protocol, Step
from signage.rehearse.state.setting import Schedule, schedule_of


@dataclass(frozen=True)
class Edit:
    """A protocol that differs by one edit, and what the edit is. ``kind``: change, move, add or delete."""

    kind: str
    description: str
    protocol: Protocol


def change_action(protocol: Protocol, step: Step, index: int, **fields: Any) -> Edit:
    """One movement of a step with other values in some fields."""
    action = replace(step.actions[index], **fields)
    changed = replace(step, actions=(*step.actions[:index], action, *step.actions[index + 1 :]))
    written = ", ".join(f"'{name}: {_text(value)}'" for name, value in fields.items())
    return Edit("change", f"In step {step.id} write {written}.", _with_step(protocol, step, changed))


def move_step(protocol: Protocol, start: int, end: int) -> Edit:
    """The step at position ``start`` moved so that it stands at position ``end``."""
    schedule = list(schedule_of(protocol))
    _phase, step = schedule.pop(start)
    phase = schedule[min(end, len(schedule) - 1)][0]
    schedule.insert(end, (phase, step))
    before = schedule[end - 1][1].id if end else None
    where = f"after step {before}" if before else "to the beginning"
    return Edit("move", f"Move step {step.id} {where}.", _from_schedule(protocol, tuple(schedule)))


def add_step(protocol: Protocol, position: int, action: Action, what: str) -> Edit:
    """A new step before the one at ``position``; its text is the description, to be written by the author."""
    schedule = list(schedule_of(protocol))
    phase = schedule[min(position, len(schedule) - 1)][0]
    name = _free_name(protocol, f"{action.verb}-{action.item or action.to or 'added'}")
    place = f"before step {schedule[position][1].id}" if position < len(schedule) else "at the end"
    description = f"Add a step {place}: {what}."
    schedule.insert(position, (phase, Step(id=name, text=description, picture="", actions=(action,))))
    return Edit("add", description, _from_schedule(protocol, tuple(schedule)))


def delete_step(protocol: Protocol, position: int) -> Edit:
    """The protocol without the step at ``position``."""
    schedule = schedule_of(protocol)
    rest = schedule[:position] + schedule[position + 1 :]
    return Edit("delete", f"Delete step {schedule[position][1].id}.", _from_schedule(protocol, rest))


def _text(value: object) -> str:
    return "yes" if value is True else str(value)


def _free_name(protocol: Protocol, wanted: str) -> str:
    taken = {step.id for step in protocol.steps}
    name, number = wanted, 2
    while name in taken:
        name, number = f"{wanted}-{number}", number + 1
    return name


def _with_step(protocol: Protocol, old: Step, new: Step) -> Protocol:
    def steps(phase: Phase) -> tuple[Step, ...]:
        return tuple(new if step is old else step for step in phase.steps)

    return replace(protocol, phases=tuple(replace(phase, steps=steps(phase)) for phase in protocol.phases))


def _from_schedule(protocol: Protocol, schedule: Schedule) -> Protocol:
    """The protocol with its phases filled from a schedule."""
    phases = tuple(
        replace(phase, steps=tuple(step for other, step in schedule if other is phase))
        for phase in protocol.phases
    )
    return replace(protocol, phases=phases)
