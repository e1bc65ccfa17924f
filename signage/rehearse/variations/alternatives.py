"""The same steps in other arrangements: one left out, two exchanged, or a whole other order."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from signage.ground.problem import Severity
from signage.model.library import Library, Protocol
from signage.rehearse.finding import Finding
from signage.rehearse.local_policy import MARK_EXPOSURE, LocalPolicy
from signage.rehearse.rehearsal import find
from signage.rehearse.rules.contact import RESPIRATOR_OFF_IN_HAZARDOUS_AIR
from signage.rehearse.state.setting import Schedule, prepare, schedule_of
from signage.rehearse.variations.walked import WalkedProtocol

_COUNTS = frozenset({Severity.S1, Severity.S2})


@dataclass(frozen=True)
class LeaveOneOut:
    """What each step carries: ``criticality`` is the worst new finding when a step is left out.

    ``load_bearing`` steps give a new S1 or S2, ``critical`` ones a new S1 or are marked by the author;
    ``unexplained`` ones give nothing and state no rationale. ``marked`` are the critical steps that sheets
    mark, by the policy value ``critical-marks``: all of them, or those by whose absence contamination
    reaches a bare part of the body or bad air the airway, and those that the author marks.
    """

    criticality: Mapping[str, Severity | None]
    load_bearing: tuple[str, ...]
    critical: tuple[str, ...]
    unexplained: tuple[str, ...]
    marked: tuple[str, ...] = ()


def walk_protocol(library: Library, protocol: Protocol, without: Collection[str] = ()) -> WalkedProtocol:
    """The protocol walked in its own order, to be asked about others."""
    return WalkedProtocol(prepare(library, protocol), schedule_of(protocol), without)


def leave_one_out(
    library: Library,
    protocol: Protocol,
    without: Collection[str] = (),
    walked: WalkedProtocol | None = None,
) -> LeaveOneOut:
    """Rehearses the protocol once for each step, without that step. ``walked`` is its walk, if at hand."""
    walked = walked or walk_protocol(library, protocol, without)
    schedule, whole = walked.schedule, walked.found
    known = {finding.identity for finding in whole.findings}
    bare = {(exposure.person, exposure.site) for exposure in whole.exposures}
    criticality: dict[str, Severity | None] = {}
    exposing: set[str] = set()
    for index, (_phase, step) in enumerate(schedule):
        rest = schedule[:index] + schedule[index + 1 :]
        left = walked.find(rest)
        new = [finding for finding in left.findings if finding.identity not in known]
        criticality[step.id] = worst(new)
        reached = {(exposure.person, exposure.site) for exposure in left.exposures} - bare
        if reached or any(finding.code == RESPIRATOR_OFF_IN_HAZARDOUS_AIR.code for finding in new):
            exposing.add(step.id)
    steps = [step for _phase, step in schedule]
    critical = tuple(step.id for step in steps if criticality[step.id] is Severity.S1 or step.critical)
    marks_exposure_only = LocalPolicy(library.policy).critical_marks == MARK_EXPOSURE
    return LeaveOneOut(
        criticality,
        tuple(step.id for step in steps if criticality[step.id] in _COUNTS),
        critical,
        tuple(step.id for step in steps if criticality[step.id] not in _COUNTS and not step.rationale),
        tuple(step.id for step in steps if step.critical or step.id in exposing)
        if marks_exposure_only
        else critical,
    )


def with_marks(protocol: Protocol, marked: Collection[str]) -> Protocol:
    """The protocol with these steps marked as critical besides those that its author marks."""
    return replace(
        protocol,
        phases=tuple(
            replace(
                phase,
                steps=tuple(
                    replace(step, critical=step.critical or step.id in marked) for step in phase.steps
                ),
            )
            for phase in protocol.phases
        ),
    )


def free_swaps(
    library: Library,
    protocol: Protocol,
    without: Collection[str] = (),
    known: LeaveOneOut | None = None,
    walked: WalkedProtocol | None = None,
) -> tuple[tuple[str, str], ...]:
    """Neighbouring steps whose order is free: exchanged, they give no new S1 or S2.

    Only load-bearing steps are ever called free. Of a step whose absence changes nothing that the model
    sees, such as a wait or one movement of a technique card, it cannot know where it must stand. ``known``
    is the result of leaving out and ``walked`` the walk of the protocol, where they are at hand.
    """
    walked = walked or walk_protocol(library, protocol, without)
    judged = (known or leave_one_out(library, protocol, without, walked)).load_bearing
    schedule = walked.schedule
    before = {finding.identity for finding in walked.found.findings}
    names = _names(schedule)
    return tuple(
        (names[index], names[index + 1])
        for index in range(len(schedule) - 1)
        if {names[index], names[index + 1]} <= set(judged)
        and worst(_new(walked, exchanged(schedule, index), before)) not in _COUNTS
    )


@dataclass(frozen=True)
class OrderJudgement:
    """What is wrong with an order: its new S1 and S2, and moved steps that the model cannot place."""

    findings: tuple[Finding, ...]
    unjudged: tuple[str, ...]

    @property
    def is_accepted(self) -> bool:
        """Whether the order is as good as the protocol's own, as far as the model sees."""
        return not self.findings and not self.unjudged


def judge_order(
    library: Library, protocol: Protocol, order: Sequence[str], known: LeaveOneOut | None = None
) -> OrderJudgement:
    """Another order of the steps, such as a learner's, judged by rehearsing it, not by comparing it.

    ``order`` names every step of the protocol, or of one of its phases, once; ``ValueError`` if not. Steps
    that are not load-bearing must have the same steps before them as in the protocol. ``known`` is the
    result of leaving out, where it is at hand.
    """
    judged = (known or leave_one_out(library, protocol)).load_bearing
    setting, schedule = prepare(library, protocol), schedule_of(protocol)
    before = {finding.identity for finding in find(setting, schedule).findings}
    other = reordered(protocol, order)
    new = (finding for finding in find(setting, other).findings if finding.identity not in before)
    found = tuple(finding for finding in new if finding.severity in _COUNTS)
    own, theirs = _earlier_steps(schedule), _earlier_steps(other)
    moved = tuple(name for name in own if name not in judged and own[name] != theirs[name])
    return OrderJudgement(found, moved)


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


def _new(walked: WalkedProtocol, order: Schedule, known: Collection[object]) -> list[Finding]:
    return [finding for finding in walked.find(order).findings if finding.identity not in known]


def _earlier_steps(schedule: Schedule) -> dict[str, frozenset[str]]:
    """Each step with the steps that come before it."""
    names = _names(schedule)
    return {name: frozenset(names[:position]) for position, name in enumerate(names)}


def _names(schedule: Schedule) -> tuple[str, ...]:
    return tuple(step.id for _phase, step in schedule)
