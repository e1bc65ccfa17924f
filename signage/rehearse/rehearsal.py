"""A protocol is rehearsed: the entrance to this room."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from signage.ground.problem import Problem
from signage.model.choices import StepCondition
from signage.model.library import Library, Protocol
from signage.rehearse.causes import FindingGroup, group_findings
from signage.rehearse.explanation import Fact, History
from signage.rehearse.finding import Finding
from signage.rehearse.references import setting_faults
from signage.rehearse.rules.conduct import SAME_STEP_TWICE, UNKNOWN_REFERENCE
from signage.rehearse.rules.layering import LAYERS_IN_A_CIRCLE
from signage.rehearse.state.people import Exposure
from signage.rehearse.state.setting import Schedule, Setting, prepare, schedule_of
from signage.rehearse.trace import StepState
from signage.rehearse.walkthrough import Walk, walk_through

NOT_SAFE = "No finding does not mean safe."
SIMPLIFICATIONS = (
    "No droplets, splashes, aerosols, leaks or sweat are modelled.",
    "Left and right hand are one.",
    "Hygiene is whole or absent; a part of it is nothing.",
    "A contaminated zone contaminates on the way in, and what is put on or bared inside; not bared hands.",
    "Where people come from is taken as the protocol says it, for all of their kit alike.",
    "Hands do not contaminate the inside or the straps by which they take something off.",
    "What is held in a hand, a bag as well, meets hands and zones; it brushes against no clothes.",
    "A thing that is carried into a contaminated zone is contaminated there, also in a pocket.",
    "A lid, tap or door that opens by hand is met when it is opened, not when it is closed.",
    "Straps that are declared to lie under another garment are taken as clean while it is worn.",
    "The inside of gloves stays clean.",
    "All agents that policy allows work equally well.",
    "Time counts only where it is declared.",
    "A technique is taken at its word; nobody watches it.",
    "Posture and pace are printed and not judged.",
    "A part that is raised or lowered brushes over nothing.",
    "Whether gloves are sterile is not judged.",
    "Who is in a zone that is seen is taken to look.",
    "Two published orders may both pass; they are never ranked.",
    NOT_SAFE,
)
"""What the model leaves out, and what follows from it; each stands once in every report."""

ALWAYS_SHOWN = frozenset({UNKNOWN_REFERENCE.code, SAME_STEP_TWICE.code, LAYERS_IN_A_CIRCLE.code})
"""Faults of what is written; nothing else is shown where a reference is faulty."""


@dataclass(frozen=True)
class Rehearsal:
    """What one rehearsal found. ``trace`` holds the state after each step that was done.

    ``withheld`` are findings that follow from steps which could not be rehearsed; they are neither shown
    nor lost, and count again once the references are mended.
    """

    protocol: str
    findings: tuple[Finding, ...]
    withheld: tuple[Finding, ...]
    trace: tuple[StepState, ...]
    history: History

    def explain(self, finding: Finding) -> tuple[Fact, ...]:
        """What was where since which step, and who did it, as far as the finding concerns it."""
        return self.history.explain(finding)

    @property
    def exposures(self) -> tuple[Exposure, ...]:
        """All exposures of all persons."""
        return tuple(e for person in self.trace[-1].people for e in person.exposures) if self.trace else ()

    @property
    def groups(self) -> tuple[FindingGroup, ...]:
        """The findings by cause, each with its consequences."""
        return group_findings(self.findings)

    def problems(self) -> list[Problem]:
        """The findings in the form of all problems, with their places."""
        return [finding.as_problem() for finding in self.findings]


def rehearse(library: Library, protocol: Protocol, without: Collection[str] = ()) -> Rehearsal:
    """Walks the steps of a protocol in their own order against kit, ward and policy.

    Steps with a condition (``when: if-torn``) are left out of the main walk; for each condition there is a
    second walk with its steps, and what it finds beyond the main walk is added. Never raises for any
    content, however wrong. ``without`` are codes of rules to switch off, for tests of the rules.
    """
    setting = prepare(library, protocol)
    found = find(setting, schedule_of(protocol), without, is_traced=True)
    states = (found.start, *found.trace) if found.start is not None else ()
    return Rehearsal(protocol.id, found.findings, found.withheld, found.trace, History(setting, states))


@dataclass(frozen=True)
class Found:
    """What all walks through an order of steps found, and the exposures of all of them.

    ``withheld`` are findings that count again once faulty references are mended. ``trace`` is the state
    after each step in the order, empty where it was not asked for, and ``start`` that before them.
    """

    findings: tuple[Finding, ...]
    withheld: tuple[Finding, ...] = ()
    exposures: frozenset[Exposure] = frozenset()
    trace: tuple[StepState, ...] = ()
    start: StepState | None = None


def find(
    setting: Setting, schedule: Schedule, without: Collection[str] = (), *, is_traced: bool = False
) -> Found:
    """Walks an order of steps once without, and once for each condition with, the steps that have it."""
    faults = setting_faults(setting)
    if faults:
        return Found(_setting_findings(setting, faults, without))
    walks = [
        walk_through(setting, schedule, without=without, conditions=conditions, is_traced=is_traced)
        for conditions in conditions_of(schedule)
    ]
    return merge(schedule, walks)


def conditions_of(schedule: Schedule) -> tuple[frozenset[str], ...]:
    """Under which conditions a schedule is walked: under none, and under each that a step names."""
    named = sorted({step.when for _phase, step in schedule} - {StepCondition.ALWAYS})
    return (frozenset(), *(frozenset({condition}) for condition in named))


def merge(schedule: Schedule, walks: Sequence[Walk]) -> Found:
    """What all walks found: that of the first, and what others found beyond the walks before them."""
    findings = list(walks[0].findings)
    known = {finding.identity for finding in findings}
    states = {state.step: state for state in reversed(walks[0].trace)}
    for other in walks[1:]:
        findings += (finding for finding in other.findings if finding.identity not in known)
        known.update(finding.identity for finding in other.findings)
        states = {**{state.step: state for state in other.trace}, **states}
    trace = walks[0].trace
    if len(walks) > 1:
        trace = tuple(states[step.id] for _phase, step in schedule if step.id in states)
    exposures = frozenset(exposure for walk in walks for exposure in walk.exposures)
    if not any(finding.code == UNKNOWN_REFERENCE.code for finding in findings):
        return Found(tuple(findings), (), exposures, trace, walks[0].start)
    shown = sorted(
        (finding for finding in findings if finding.code in ALWAYS_SHOWN),
        key=lambda finding: finding.code != UNKNOWN_REFERENCE.code,
    )
    withheld = (finding for finding in findings if finding.code not in ALWAYS_SHOWN)
    return Found(tuple(shown), tuple(withheld), exposures, trace, walks[0].start)


def _setting_findings(setting: Setting, faults: list[str], without: Collection[str]) -> tuple[Finding, ...]:
    """Faults of people, ward and end as findings of ST-2."""
    protocol = setting.protocol
    if UNKNOWN_REFERENCE.code in without:
        return ()
    return tuple(Finding(UNKNOWN_REFERENCE, fault, protocol.id, place=protocol.place) for fault in faults)
