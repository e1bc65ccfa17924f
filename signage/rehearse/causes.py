"""Root causes: one slip often shows in several findings; the cause is shown with its consequences."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from signage.rehearse.finding import Finding
from signage.rehearse.rules.layering import NEVER_REMOVED, STILL_COVERED


@dataclass(frozen=True, slots=True)
class FindingGroup:
    """A finding that explains others, and those others in the order of the steps."""

    cause: Finding
    consequences: tuple[Finding, ...] = ()


def group_findings(findings: Sequence[Finding]) -> tuple[FindingGroup, ...]:
    """Findings by the item they are about; within an item LY-7 is the cause before LY-1 before the first.

    An item that is never removed also explains what is found about others because it is still on.
    Findings about no item stand alone.
    """
    left = list(findings)
    groups: list[tuple[int, FindingGroup]] = []
    for cause in sorted(findings, key=_rank):
        if cause not in left:
            continue
        left.remove(cause)
        consequences = [finding for finding in left if _explains(cause, finding)]
        for finding in consequences:
            left.remove(finding)
        groups.append((findings.index(cause), FindingGroup(cause, tuple(consequences))))
    first = {id(g): min(findings.index(f) for f in (g.cause, *g.consequences)) for _i, g in groups}
    return tuple(group for _i, group in sorted(groups, key=lambda pair: first[id(pair[1])]))


def _rank(finding: Finding) -> int:
    return {NEVER_REMOVED.code: 0, STILL_COVERED.code: 1}.get(finding.code, 2)


def _explains(cause: Finding, finding: Finding) -> bool:
    """Whether one finding follows from another."""
    if cause.item is None:
        return False
    if cause.code == NEVER_REMOVED.code:
        return cause.item == finding.item or cause.item in finding.others
    return cause.item == finding.item
