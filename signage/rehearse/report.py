"""What is told about a rehearsed protocol, whatever the form: text, JSON or a page."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from datetime import date
from typing import Any

from signage.ground.problem import Problem
from signage.model.library import Library, Protocol
from signage.rehearse.equipment import Equipment, derive_equipment
from signage.rehearse.finding import Finding
from signage.rehearse.rehearsal import SIMPLIFICATIONS
from signage.rehearse.rules.table import RULE_OF
from signage.rehearse.variations.study import Study
from signage.rehearse.waivers import Waived, apply_waivers


@dataclass(frozen=True)
class Report:
    """A study held against the waivers of a day, and what the protocol needs on the ward for one run."""

    protocol: Protocol
    study: Study
    waived: Waived
    equipment: Equipment

    @property
    def problems(self) -> list[Problem]:
        """What counts: findings that nobody has waived, and faults of waivers."""
        return [*(finding.as_problem() for finding in self.waived.standing), *self.waived.problems]

    def explained(self, finding: Finding) -> dict[str, Any]:
        """A finding in the form of all problems, with what led to it under ``because``."""
        facts = self.study.rehearsal.explain(finding)
        return {**finding.as_problem().as_json(), "because": [fact.as_json() for fact in facts]}

    def as_json(self) -> dict[str, Any]:
        """The fields of the contract for ``signage rehearse --format json``, and what is said beside them.

        ``waived`` are findings with the reason, role and last day of their waiver.
        """
        return {
            **self.study.as_json(),
            "findings": [
                *(self.explained(finding) for finding in self.waived.standing),
                *(problem.as_json() for problem in self.waived.problems),
            ],
            "waived": [
                {
                    **self.explained(finding),
                    "reason": waiver.reason,
                    "role": waiver.role,
                    "expires": waiver.expires.isoformat(),
                }
                for finding, waiver in self.waived.waived
            ],
            "marked": list(self.study.steps.marked),
            "equipment": {
                "fixtures": [asdict(fixture) for fixture in self.equipment.fixtures],
                "kit": [asdict(kit) for kit in self.equipment.kit],
                "hygiene": dict(self.equipment.hygiene),
                "bin_loads": dict(self.equipment.bin_loads),
            },
            "blocks_release": self.waived.blocks_release,
            "blocks_approval": self.waived.blocks_approval,
            "simplifications": list(SIMPLIFICATIONS),
        }


def report_on(library: Library, protocol: Protocol, study: Study, today: date) -> Report:
    """The report of a protocol; of its library's waivers only those of its own rehearsal."""
    waivers = [w for w in library.waivers if w.protocol == protocol.id and w.code in RULE_OF]
    waived = apply_waivers(study.findings, waivers, today)
    return Report(protocol, study, waived, derive_equipment(library, protocol))
