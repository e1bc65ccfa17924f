"""A protocol is rehearsed: the entrance to this room."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from signage.ground.problem import Problem
from signage.model.library import Library, Protocol
from signage.rehearse.causes import FindingGroup, group_findings
from signage.rehearse.finding import Finding
from signage.rehearse.references import setting_faults
from signage.rehearse.rules.conduct import SAME_STEP_TWICE, UNKNOWN_REFERENCE
from signage.rehearse.rules.layering import LAYERS_IN_A_CIRCLE
from signage.rehearse.state.people import Exposure
from signage.rehearse.state.setting import Schedule, Setting, prepare, schedule_of
from signage.rehearse.trace import StepState
from signage.rehearse.walkthrough import walk_through

NOT_SAFE = "No finding does not mean safe."
SIMPLIFICATIONS = (
    "No droplets, splashes, aerosols, leaks or sweat are modelled.",
    "Left and right hand are one.",
    "Hygiene is whole or absent; a part of it is nothing.",
    "A contaminated zone contaminates on the way in, and what is put on inside; not what is uncovered later.",
    "Who begins outside a contaminated zone begins with clean kit, also on the dirty side.",
    "Hands do not contaminate the inside or the straps by which they take something off.",
    "Straps that are declared to lie under another garment are taken as clean while it is worn.",
    "The inside of gloves stays clean.",
    "All agents that policy allows work equally well.",
    "Time counts only where it is declared.",
    "A technique is taken at its word; nobody watches it.",
    "Every zone outside the contaminated ones is taken to have a window for the observer.",
    "Two published orders may both pass; they are never ranked.",
    NOT_SAFE,
)
"""What the model leaves out, and what follows from it; each stands once in every report."""

_ALWAYS_SHOWN = frozenset({UNKNOWN_REFERENCE.code, SAME_STEP_TWICE.code, LAYERS_IN_A_CIRCLE.code})


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
    trace: list[StepState] = []
    findings, withheld = find(setting, schedule_of(protocol), without, trace)
    return Rehearsal(protocol.id, findings, withheld, tuple(trace))


def find(
    setting: Setting,
    schedule: Schedule,
    without: Collection[str] = (),
    trace: list[StepState] | None = None,
    exposures: set[Exposure] | None = None,
) -> tuple[tuple[Finding, ...], tuple[Finding, ...]]:
    """The findings for an order of steps, and those withheld because references are faulty.

    ``trace`` and ``exposures``, if given, receive the state after each step and the exposures of all walks.
    """
    faults = setting_faults(setting)
    if faults:
        return _setting_findings(setting, faults, without), ()
    scene = walk_through(setting, schedule, without=without, trace=trace)
    scenes, findings = [scene], scene.findings()
    for condition in sorted({step.when for _phase, step in schedule} - {"always"}):
        extra: list[StepState] | None = None if trace is None else []
        other = walk_through(setting, schedule, without=without, conditions={condition}, trace=extra)
        scenes.append(other)
        known = {finding.identity for finding in findings}
        findings += tuple(finding for finding in other.findings() if finding.identity not in known)
        if trace is not None and extra is not None:
            _merge(trace, extra, schedule)
    if exposures is not None:
        exposures.update(e for scene in scenes for person in scene.people.values() for e in person.exposures)
    if any(finding.code == UNKNOWN_REFERENCE.code for finding in findings):
        shown = sorted(
            (finding for finding in findings if finding.code in _ALWAYS_SHOWN),
            key=lambda finding: finding.code != UNKNOWN_REFERENCE.code,
        )
        return tuple(shown), tuple(f for f in findings if f.code not in _ALWAYS_SHOWN)
    return findings, ()


def _setting_findings(setting: Setting, faults: list[str], without: Collection[str]) -> tuple[Finding, ...]:
    """Faults of people, ward and end as findings of ST-2."""
    protocol = setting.protocol
    if UNKNOWN_REFERENCE.code in without:
        return ()
    return tuple(Finding(UNKNOWN_REFERENCE, fault, protocol.id, place=protocol.place) for fault in faults)


def _merge(trace: list[StepState], extra: list[StepState], schedule: Schedule) -> None:
    """Puts the states of conditional steps where those steps stand in the protocol."""
    known = {state.step: state for state in (*extra, *trace)}
    trace[:] = [known[step.id] for _phase, step in schedule if step.id in known]
