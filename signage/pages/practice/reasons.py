"""Findings of a rehearsal in words for learners: one plain sentence for several rules."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Sequence
from dataclasses import dataclass
from typing import Protocol as Shape

from signage.ground.problem import Severity
from signage.model.library import Library, Protocol
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.variations.alternatives import leave_one_out


class Finding(Shape):
    """What the pages need to know of a finding of a rehearsal."""

    @property
    def code(self) -> str:
        """The rule."""

    @property
    def severity(self) -> Severity:
        """How grave it is."""

    @property
    def step(self) -> str | None:
        """The step at which it shows."""


@dataclass(frozen=True)
class Examiner:
    """How orders are judged. ``findings`` walks a protocol; they come in the order in which they arise.

    ``load_bearing`` names the steps whose absence the rehearsal would notice; of the others it cannot say
    where they must stand.
    """

    findings: Callable[[Protocol], Sequence[Finding]]
    load_bearing: Callable[[Protocol], Collection[str]]


def rehearsing(library: Library) -> Examiner:
    """Judgement by rehearsing against kit, ward and policy of the library."""
    return Examiner(
        lambda protocol: rehearse(library, protocol).findings,
        lambda protocol: leave_one_out(library, protocol).load_bearing,
    )


Known = frozenset[tuple[str, str | None]]
"""Rule and step of findings."""

_REASON_OF = {
    "page-why-covered": ("LY-1",),
    "page-why-closed": ("LY-4",),
    "page-why-under": ("LY-3",),
    "page-why-too-late": ("LY-2",),
    "page-why-stays-on": ("LY-7",),
    "page-why-not-worn": ("LY-6", "EN-7"),
    "page-why-no-rub": ("HH-1", "HH-6", "HH-8", "HH-9"),
    "page-why-wrong-layer": ("HH-3",),
    "page-why-skin": ("CT-1", "CT-2", "CT-5"),
    "page-why-face": ("CT-3",),
    "page-why-clean-kit": ("CT-4", "ZN-1"),
    "page-why-air": ("RP-1", "RP-2"),
    "page-why-no-bin": ("BN-1", "BN-2", "BN-3"),
    "page-why-in-hand": ("BN-4",),
    "page-why-place": ("FX-1", "ZN-3", "ZN-5", "ST-3"),
    "page-why-carried": ("CT-6", "FX-2", "ZN-2", "ZN-4"),
    "page-why-seat": ("FX-5", "FX-6"),
    "page-why-check": ("EN-1", "EN-2", "EN-3", "EN-4", "EN-5", "EN-6"),
}
"""Fixed text to the rules that it stands for."""

REASON_BY_CODE = {code: text for text, codes in _REASON_OF.items() for code in codes}
OTHER_REASON = "page-why-other"


@dataclass(frozen=True, order=True)
class Reason:
    """Why an order is not safe: a fixed text, and the step at which it shows where there is one."""

    text: str
    step: str | None


def grave(findings: Iterable[Finding]) -> list[Finding]:
    """The findings that block a sheet or its approval (S1 and S2)."""
    return [finding for finding in findings if finding.severity is not Severity.S3]


def new_findings(examiner: Examiner, changed: Protocol, known: Known) -> list[Finding]:
    """The grave findings of a changed protocol that its unchanged order does not have."""
    return [f for f in grave(examiner.findings(changed)) if (f.code, f.step) not in known]


def known_findings(examiner: Examiner, protocol: Protocol) -> Known:
    """The grave findings of the order as it stands; none in content that checks clean."""
    return frozenset((finding.code, finding.step) for finding in grave(examiner.findings(protocol)))


def reason_of(findings: Sequence[Finding]) -> Reason:
    """The reason to give for findings: the first of the gravest."""
    gravest = min(findings, key=lambda finding: finding.severity.value)
    return Reason(REASON_BY_CODE.get(gravest.code, OTHER_REASON), gravest.step)
