"""Everything that this room can say about one protocol, in one value."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import Any

from signage.ground.problem import Problem
from signage.model.choices import ActionVerb
from signage.model.library import Library, Protocol, Step
from signage.rehearse.finding import Finding
from signage.rehearse.rehearsal import Rehearsal, rehearse
from signage.rehearse.rules.conduct import STEP_WITHOUT_EFFECT, UNKNOWN_REFERENCE
from signage.rehearse.variations.alternatives import (
    LeaveOneOut,
    free_swaps,
    leave_one_out,
    walk_protocol,
)

_NOT_LOOKED_AT = LeaveOneOut({}, (), (), ())

_UNSEEN = frozenset(
    {
        ActionVerb.INSPECT,
        ActionVerb.ADJUST,
        ActionVerb.SIT,
        ActionVerb.STAND,
        ActionVerb.RAISE,
        ActionVerb.LOWER,
    }
)
"""Movements of which no rule asks that they be done where nothing depends on them: looking, fitting, sitting
to dress. That nothing is found without them says nothing about them."""


@dataclass(frozen=True)
class Study:
    """A rehearsal, with what its steps carry and which of their orders are free.

    ``findings`` are those of the rehearsal and rule ST-4. Where references are faulty only they are looked
    at, so that the rest is empty.
    """

    rehearsal: Rehearsal
    findings: tuple[Finding, ...]
    steps: LeaveOneOut
    free_swaps: tuple[tuple[str, str], ...]

    def problems(self) -> list[Problem]:
        """The findings in the form of all problems, with their places."""
        return [finding.as_problem() for finding in self.findings]

    def as_json(self) -> dict[str, Any]:
        """The fields of the contract for ``signage rehearse --format json``."""
        return {
            "protocol": self.rehearsal.protocol,
            "findings": [problem.as_json() for problem in self.problems()],
            "trace": [state.as_json() for state in self.rehearsal.trace],
            "load_bearing": list(self.steps.load_bearing),
            "unexplained": list(self.steps.unexplained),
            "critical": list(self.steps.critical),
            "free_swaps": [list(pair) for pair in self.free_swaps],
        }


def study_protocol(library: Library, protocol: Protocol, without: Collection[str] = ()) -> Study:
    """Rehearses a protocol, leaves out each step in turn, and exchanges each pair of neighbours."""
    rehearsal = rehearse(library, protocol, without)
    if any(finding.code == UNKNOWN_REFERENCE.code for finding in rehearsal.findings):
        return Study(rehearsal, rehearsal.findings, _NOT_LOOKED_AT, ())
    walked = walk_protocol(library, protocol, without)
    steps = leave_one_out(library, protocol, without, walked)
    idle = () if STEP_WITHOUT_EFFECT.code in without else _idle_steps(library, protocol, steps)
    return Study(
        rehearsal,
        (*rehearsal.findings, *idle),
        steps,
        free_swaps(library, protocol, without, steps, walked),
    )


def _idle_steps(library: Library, protocol: Protocol, steps: LeaveOneOut) -> tuple[Finding, ...]:
    """Rule ST-4."""
    zones = library.wards[protocol.ward].zones.values()
    asked = {need for zone in zones for need in zone.needs}
    return tuple(
        Finding(
            STEP_WITHOUT_EFFECT,
            f"Nothing is found when step {step.id} is left out, and it states no rationale.",
            protocol.id,
            step.id,
            place=step.place,
            own_hint=_own_hint(step, asked),
        )
        for step in protocol.steps
        if step.id in steps.unexplained and not _is_unseen(step)
    )


def _is_unseen(step: Step) -> bool:
    """Whether the model cannot see what a step is for."""
    return all(action.verb in _UNSEEN for action in step.actions)


def _own_hint(step: Step, asked: Collection[str]) -> str:
    """What to do first about a step without effect: name its need where no zone of the ward asks for it."""
    needs = [action.need for action in step.actions if action.need is not None and action.need not in asked]
    if not needs:
        return ""
    return (
        f"No zone of the ward asks for '{needs[0]}': write it under 'needs' of the zone that nobody may "
        "enter without it. Where no zone does, write 'rationale:' with the reason, or delete the step."
    )
