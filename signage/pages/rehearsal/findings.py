"""Findings as the page of a rehearsal lists them: numbered, by cause, and those that a waiver excuses."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from math import ceil

from signage.ground.problem import Problem, Severity
from signage.model.library import Protocol
from signage.model.waiver import Waiver
from signage.rehearse.causes import group_findings
from signage.rehearse.explanation import told_facts
from signage.rehearse.finding import Finding
from signage.rehearse.rehearsal import Rehearsal
from signage.rehearse.waivers import Waived

EFFECTS: Mapping[Severity, str] = {
    Severity.S1: "blocks every sheet but drafts",
    Severity.S2: "blocks approval unless waived",
    Severity.S3: "warns",
}
"""What a finding of each severity does."""

_LINE = 0.36
"""How much room a line of what led to a finding takes, an entry without such lines being 1."""


@dataclass(frozen=True, slots=True)
class FindingView:
    """A finding with its number on the page, and those that follow from it.

    ``step`` is how the page calls its step; None where it belongs to none. ``because`` are the lines that
    say what was where since which step.
    """

    number: int
    finding: Finding
    step: str | None
    because: tuple[str, ...] = ()
    consequences: tuple[FindingView, ...] = ()


@dataclass(frozen=True, slots=True)
class FindingList:
    """All findings of a report. ``counts`` are of those that count: neither waived nor withheld."""

    groups: tuple[FindingView, ...]
    waived: tuple[tuple[FindingView, Waiver], ...]
    problems: tuple[Problem, ...]
    counts: tuple[tuple[Severity, int], ...]
    numbers: Mapping[Finding, int]

    @property
    def total(self) -> int:
        """How many entries the list has."""
        return len(self.numbers) + len(self.problems)

    @property
    def length(self) -> int:
        """How long the list is printed, in entries without lines that say what led to them."""
        views = [view for group in self.groups for view in (group, *group.consequences)]
        views += [view for view, _waiver in self.waived]
        return self.total + ceil(_LINE * sum(len(view.because) for view in views))


def list_findings(protocol: Protocol, waived: Waived, rehearsal: Rehearsal) -> FindingList:
    """The findings of a rehearsal, numbered from 1 in the order in which they are listed."""
    groups = group_findings(waived.standing)
    in_order = [finding for group in groups for finding in (group.cause, *group.consequences)]
    in_order += [finding for finding, _waiver in waived.waived]
    numbers = {finding: number for number, finding in enumerate(dict.fromkeys(in_order), start=1)}
    names = step_names(protocol)

    def view(finding: Finding, consequences: tuple[Finding, ...] = ()) -> FindingView:
        step = names.get(finding.step) if finding.step else None
        because = tuple(told_facts(rehearsal.explain(finding)))
        return FindingView(numbers[finding], finding, step, because, tuple(map(view, consequences)))

    counted = Counter([finding.severity for finding in waived.standing])
    counted.update(problem.severity for problem in waived.problems)
    return FindingList(
        tuple(view(group.cause, group.consequences) for group in groups),
        tuple((view(finding), waiver) for finding, waiver in waived.waived),
        waived.problems,
        tuple((severity, counted[severity]) for severity in Severity),
        numbers,
    )


def step_names(protocol: Protocol) -> dict[str, str]:
    """How the page calls each step: its phase and its number there, such as ``Put on 3``."""
    return {
        step.id: f"{phase.title} {number}"
        for phase in protocol.phases
        for number, step in enumerate(phase.steps, start=1)
    }
