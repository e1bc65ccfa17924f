"""The same steps in other arrangements: one left out, two exchanged, or a whole other order."""

from __future__ import annotations

from collections import deque
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

from signage.ground.problem import Severity
from signage.model.library import Library, Protocol
from signage.rehearse.finding import Finding
from signage.rehearse.movements import is_part_of_technique
from signage.rehearse.rehearsal import find
from signage.rehearse.setting import Schedule, Setting, prepare, schedule_of

_COUNTS = frozenset({Severity.S1, Severity.S2})


@dataclass(frozen=True)
class LeaveOneOut:
    """What each step carries: ``criticality`` is the worst new finding when a step is left out.

    ``load_bearing`` steps give a new S1 or S2, ``critical`` ones a new S1 or are marked by the author;
    ``unexplained`` ones give nothing and state no rationale.
    """

    criticality: Mapping[str, Severity | None]
    load_bearing: tuple[str, ...]
    critical: tuple[str, ...]
    unexplained: tuple[str, ...]


def leave_one_out(library: Library, protocol: Protocol, without: Collection[str] = ()) -> LeaveOneOut:
    """Rehearses the protocol once for each step, without that step."""
    setting, schedule = prepare(library, protocol), schedule_of(protocol)
    known = {finding.identity for finding in find(setting, schedule, without)[0]}
    criticality: dict[str, Severity | None] = {}
    for index, (_phase, step) in enumerate(schedule):
        rest = schedule[:index] + schedule[index + 1 :]
        criticality[step.id] = worst(_new(setting, rest, known, without))
    steps = [step for _phase, step in schedule]
    return LeaveOneOut(
        criticality,
        tuple(step.id for step in steps if criticality[step.id] in _COUNTS),
        tuple(step.id for step in steps if criticality[step.id] is Severity.S1 or step.critical),
        tuple(step.id for step in steps if criticality[step.id] not in _COUNTS and not step.rationale),
    )


def free_swaps(
    library: Library, protocol: Protocol, without: Collection[str] = ()
) -> tuple[tuple[str, str], ...]:
    """Neighbouring steps whose order is free: exchanged, they give no new S1 or S2.

    Movements of a technique card are never called free: the model does not look into one hand hygiene.
    """
    setting, schedule = prepare(library, protocol), schedule_of(protocol)
    known = {finding.identity for finding in find(setting, schedule, without)[0]}
    return tuple(
        (schedule[index][1].id, schedule[index + 1][1].id)
        for index in range(len(schedule) - 1)
        if _may_be_exchanged(schedule, index)
        and worst(_new(setting, exchanged(schedule, index), known, without)) not in _COUNTS
    )


def _may_be_exchanged(schedule: Schedule, index: int) -> bool:
    """Whether the model can judge the exchange of the steps at ``index`` and after it at all."""
    return not any(is_part_of_technique(step) for _phase, step in schedule[index : index + 2])


def judge_order(library: Library, protocol: Protocol, order: Sequence[str]) -> tuple[Finding, ...]:
    """What is wrong with another order of the steps, such as a learner's: its new S1 and S2 findings.

    ``order`` names every step of the protocol, or of one of its phases, once. It is judged by rehearsing
    it and never by comparing it with the protocol's own order. ``ValueError`` if steps are missing or
    repeated, or if movements of a technique card, which the model does not look into, change places.
    """
    setting, schedule = prepare(library, protocol), schedule_of(protocol)
    known = {finding.identity for finding in find(setting, schedule)[0]}
    other = reordered(protocol, order)
    if _technique(other) != _technique(schedule):
        raise ValueError("The movements of one hand hygiene have a published order; it is not rehearsed.")
    found = _new(setting, other, known, ())
    return tuple(finding for finding in found if finding.severity in _COUNTS)


def accepted_orders(library: Library, protocol: Protocol, limit: int = 1000) -> Iterator[Schedule]:
    """Orders without a new S1 or S2 that free swaps lead to, the protocol's own first, at most ``limit``."""
    setting, start = prepare(library, protocol), schedule_of(protocol)
    known = {finding.identity for finding in find(setting, start)[0]}
    seen = {_names(start)}
    waiting = deque([start])
    given = 0
    while waiting and given < limit:
        schedule = waiting.popleft()
        given += 1
        yield schedule
        for index in range(len(schedule) - 1):
            other = exchanged(schedule, index)
            if _names(other) in seen or not _may_be_exchanged(schedule, index):
                continue
            if worst(_new(setting, other, known, ())) not in _COUNTS:
                seen.add(_names(other))
                waiting.append(other)


def exchanged(schedule: Schedule, index: int) -> Schedule:
    """The steps with those at ``index`` and after it exchanged."""
    return (*schedule[:index], schedule[index + 1], schedule[index], *schedule[index + 2 :])


def reordered(protocol: Protocol, order: Sequence[str]) -> Schedule:
    """The steps in a given order; the order of one phase leaves the other phases as they are."""
    for phases in (protocol.phases, *((phase,) for phase in protocol.phases)):
        steps = {step.id: (phase, step) for phase in phases for step in phase.steps}
        if sorted(steps) == sorted(order):
            named = tuple(steps[name] for name in order)
            before = protocol.phases[: protocol.phases.index(phases[0])]
            after = protocol.phases[protocol.phases.index(phases[-1]) + 1 :]
            return (
                *((phase, step) for phase in before for step in phase.steps),
                *named,
                *((phase, step) for phase in after for step in phase.steps),
            )
    raise ValueError("The order must name every step of the protocol, or of one phase, once.")


def worst(findings: Sequence[Finding]) -> Severity | None:
    """The gravest severity, None where there is no finding."""
    return min((finding.severity for finding in findings), default=None)


def _new(
    setting: Setting, schedule: Schedule, known: Collection[object], without: Collection[str]
) -> list[Finding]:
    return [f for f in find(setting, schedule, without)[0] if f.identity not in known]


def _technique(schedule: Schedule) -> tuple[str, ...]:
    return tuple(step.id for _phase, step in schedule if is_part_of_technique(step))


def _names(schedule: Schedule) -> tuple[str, ...]:
    return tuple(step.id for _phase, step in schedule)
