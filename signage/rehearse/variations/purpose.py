"""What a step protects: what would become wrong without it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from signage.ground.problem import Severity
from signage.model.library import Library, Protocol, Step
from signage.rehearse.explanation import Fact, History
from signage.rehearse.finding import Finding
from signage.rehearse.rehearsal import Found, find
from signage.rehearse.state.people import Exposure
from signage.rehearse.state.setting import prepare, schedule_of
from signage.rehearse.variations.alternatives import worst


@dataclass(frozen=True)
class Purpose:
    """A step, and what is found and who is exposed only when it is left out, with what led to it."""

    protocol: Protocol
    step: Step
    findings: tuple[tuple[Finding, tuple[Fact, ...]], ...]
    exposures: tuple[Exposure, ...]

    @property
    def worst(self) -> Severity | None:
        """The gravest of the findings; None where nothing is found."""
        return worst([finding for finding, _facts in self.findings])

    def as_json(self) -> dict[str, Any]:
        """Plain values; each finding in the form of all problems with what led to it under ``because``."""
        return {
            "protocol": self.protocol.id,
            "step": self.step.id,
            "text": self.step.text,
            "worst": self.worst.value if self.worst else None,
            "rationale": self.step.rationale,
            "without": [
                {**finding.as_problem().as_json(), "because": [fact.as_json() for fact in facts]}
                for finding, facts in self.findings
            ],
            "exposures": [
                {"step": each.step, "person": each.person, "site": each.site, "source": each.source}
                for each in self.exposures
            ],
        }


def purpose_of(library: Library, protocol: Protocol, step: Step) -> Purpose:
    """Rehearses a protocol without one of its steps and tells what is new."""
    setting, schedule = prepare(library, protocol), schedule_of(protocol)
    whole = find(setting, schedule)
    rest = tuple(entry for entry in schedule if entry[1] is not step)
    left: Found = find(setting, rest, is_traced=True)
    states = (left.start, *left.trace) if left.start is not None else ()
    history = History(setting, states)
    known = {finding.identity for finding in whole.findings}
    reached = {(each.person, each.site) for each in whole.exposures}
    new = tuple(finding for finding in left.findings if finding.identity not in known)
    exposures = sorted(
        (each for each in left.exposures if (each.person, each.site) not in reached),
        key=lambda each: (each.person, each.site, each.step, each.source),
    )
    return Purpose(protocol, step, tuple((each, history.explain(each)) for each in new), tuple(exposures))
