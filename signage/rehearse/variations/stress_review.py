"""Orders that pass clean although they differ, by reason, for a reviewer to sign or to turn into a rule."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from types import MappingProxyType
from typing import Any

from signage.model.library import Library, Protocol
from signage.rehearse.variations.commuting import Grounds, Reason, reason_of
from signage.rehearse.variations.stress import Arrangement, Slip, Stress, stress_protocol

MEANINGS: Mapping[Grounds, str] = MappingProxyType(
    {
        Grounds.NONE: "No reason found: sign it, or turn it into a rule",
        Grounds.RATIONALE: "Left out, nothing is found; the author gives a rationale",
        Grounds.SHARED_AS_BEFORE: "What the steps share is for each of them as in the protocol's own order",
        Grounds.NOTHING_SHARED: "No step that changed places changes anything that another needs",
        Grounds.ALIKE: "Both steps do the same",
        Grounds.CHANGES_NOTHING: "Done once more, the step changes nothing that it has to do with",
        Grounds.FURTHER_LOOK: "Asked, looked at or said once more",
        Grounds.FURTHER_HYGIENE: "Hands are cleaned once more",
    }
)
"""What each reason says, in the order in which a reviewer reads them."""


@dataclass(frozen=True, slots=True)
class CleanGroup:
    """Orders of one step by one slip and with one reason. ``places`` say where it stands in each of them."""

    slip: Slip
    step: str
    places: tuple[str, ...]
    reason: Reason


@dataclass(frozen=True)
class StressReview:
    """A stressed protocol with the reason of each of its clean orders."""

    protocol: Protocol
    stress: Stress
    reasons: Mapping[Arrangement, Reason]

    @cached_property
    def groups(self) -> Mapping[Grounds, tuple[CleanGroup, ...]]:
        """The clean orders by reason; those that a reason tells of in the same words stand together."""
        found: dict[Grounds, dict[tuple[object, ...], CleanGroup]] = {grounds: {} for grounds in MEANINGS}
        for arrangement in self.stress.clean:
            reason = self.reasons[arrangement]
            step = self.stress.steps[arrangement.step]
            telling = tuple((each.thing, each.was, each.now) for each in reason.telling)
            key = (arrangement.slip, step, telling, reason.disjoint, reason.unchanged)
            known = found[reason.grounds].get(key) or CleanGroup(arrangement.slip, step, (), reason)
            places = (*known.places, place_of(self.stress.steps, arrangement))
            found[reason.grounds][key] = replace(known, places=places)
        return {grounds: tuple(groups.values()) for grounds, groups in found.items() if groups}

    def count(self, grounds: Grounds) -> int:
        """How many clean orders have this reason."""
        return sum(len(group.places) for group in self.groups.get(grounds, ()))

    def as_json(self) -> dict[str, Any]:
        """Counts by slip and by reason, and every clean order."""
        stress = self.stress
        return {
            "protocol": self.protocol.id,
            "slips": {
                slip.value: {"rehearsed": number, "clean": stress.clean_count(slip)}
                for slip, number in stress.rehearsed.items()
            },
            "reasons": {grounds.value: self.count(grounds) for grounds in MEANINGS},
            "clean": [
                {
                    "slip": each.slip.value,
                    "step": stress.steps[each.step],
                    "place": place_of(stress.steps, each),
                    **self.reasons[each].as_json(),
                }
                for each in stress.clean
            ],
        }


def review_stress(library: Library, protocol: Protocol) -> StressReview:
    """Rehearses every single slip of a protocol and computes why the clean ones are clean."""
    stress = stress_protocol(library, protocol)
    return StressReview(protocol, stress, {each: reason_of(stress, each) for each in stress.clean})


def place_of(steps: tuple[str, ...], arrangement: Arrangement) -> str:
    """Where the step stands in an order, such as ``after zip-close``; empty where it is left out."""
    place = arrangement.place
    if arrangement.slip is Slip.DROP:
        return ""
    if arrangement.slip is Slip.EXCHANGE:
        return f"with {steps[place]}"
    if place > arrangement.step:
        return f"after {steps[place - 1]}"
    return f"before {steps[place]}"
