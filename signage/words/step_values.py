"""What a step's placeholders stand for, before a locale writes it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from signage.model.choices import ActionVerb
from signage.model.library import Library, Protocol, Step
from signage.model.walk import zones_of_steps


@dataclass(frozen=True, slots=True)
class StepValues:
    """Seconds, garment ids, bin letters, zone id and amount of a step; None or empty where it has none.

    ``named_bins`` are the ids of bins that have a name and no letter.
    """

    seconds: int | None
    items: tuple[str, ...]
    bins: tuple[str, ...]
    zone: str | None
    amount: str | None
    named_bins: tuple[str, ...] = ()

    @property
    def filled(self) -> frozenset[str]:
        """The placeholders that the step can fill."""
        values = {
            "time": self.seconds,
            "item": self.items or None,
            "bin": self.bins or self.named_bins or None,
            "zone": self.zone,
            "amount": self.amount,
        }
        return frozenset(name for name, value in values.items() if value is not None)


def values_of_step(library: Library, protocol: Protocol, step: Step) -> StepValues:
    """The values of the step's movements; a time may come from its phase, a zone from where it happens."""
    seconds = next((action.seconds for action in step.actions if action.seconds is not None), None)
    if seconds is None:
        seconds = next((phase.seconds for phase in protocol.phases if step in phase.steps), None)
    items = _distinct(action.item for action in step.actions)
    ward = library.wards[protocol.ward]
    bins = [ward.fixtures[name] for name in _distinct(action.bin for action in step.actions)]
    entered = next((action.to for action in step.actions if action.verb is ActionVerb.MOVE), None)
    zone = entered if entered is not None else zones_of_steps(protocol).get(step.id)
    return StepValues(
        seconds=seconds,
        items=tuple(item for item in items if item in library.garments),
        bins=_distinct(fixture.code for fixture in bins),
        zone=zone if zone in ward.zones else None,
        named_bins=tuple(fixture.id for fixture in bins if not fixture.code and fixture.name),
        amount=next((action.amount for action in step.actions if action.amount is not None), None),
    )


def garments_of_step(library: Library, step: Step) -> frozenset[str]:
    """The garments that any movement of the step touches: its items, what leaves with them, hand layers."""
    named = _distinct(
        name
        for action in step.actions
        for name in (action.item, action.together, action.layer, action.target)
    )
    return frozenset(named) & library.garments.keys()


def _distinct(values: Iterable[str | None]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(value for value in values if value is not None))
