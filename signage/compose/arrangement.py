"""What kind of thing each step is on a poster, and which steps hang together.

The kind of a step decides its size, never the number of steps: a *big* step gets a tile with a
picture, a *small* one a strip under the big step that it follows, a *gate* a card in the head of the
zone that it opens.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from signage.model.choices import ActionVerb
from signage.model.library import Phase, Protocol, Step
from signage.model.walk import zones_of_steps


class Kind(StrEnum):
    """The size of a step on a poster."""

    BIG = "big"
    SMALL = "small"
    GATE = "gate"


@dataclass(frozen=True)
class NumberedStep:
    """A step with its number inside its phase, its kind and the zone in which it is shown."""

    number: int
    step: Step
    kind: Kind
    zone: str

    @property
    def is_hygiene(self) -> bool:
        """Whether hands are cleaned in this step."""
        return self.step.action.verb is ActionVerb.HYGIENE


@dataclass(frozen=True)
class Module:
    """One card of a poster: a big step and the small steps that hang under it."""

    big: NumberedStep
    hanging: tuple[NumberedStep, ...] = ()


@dataclass(frozen=True)
class ZonePart:
    """The steps of one stay in one zone. ``is_continued`` marks the rest of a zone begun elsewhere."""

    zone: str
    gates: tuple[NumberedStep, ...] = ()
    modules: tuple[Module, ...] = ()
    is_continued: bool = False

    @property
    def steps(self) -> tuple[NumberedStep, ...]:
        """All steps in order."""
        hung = [step for module in self.modules for step in (module.big, *module.hanging)]
        return (*self.gates, *hung)


def _kind(step: Step, is_last_of_protocol: bool) -> Kind:
    action = step.action
    if any(each.bin for each in step.actions):
        return Kind.BIG
    if action.verb is ActionVerb.NEED:
        return Kind.GATE
    if action.verb is ActionVerb.MOVE:
        return Kind.BIG if is_last_of_protocol else Kind.GATE
    if action.verb in {ActionVerb.SIT, ActionVerb.STAND} or (
        action.verb is ActionVerb.HYGIENE and action.agent == "rub" and not action.part
    ):
        return Kind.SMALL
    return Kind.BIG


def numbered_steps(protocol: Protocol, phase: Phase) -> tuple[NumberedStep, ...]:
    """The steps of a phase, numbered from 1."""
    zones = zones_of_steps(protocol)
    last = protocol.steps[-1]
    return tuple(
        NumberedStep(number, step, _kind(step, step is last), zones[step.id])
        for number, step in enumerate(phase.steps, start=1)
    )


def zone_parts(steps: tuple[NumberedStep, ...]) -> tuple[ZonePart, ...]:
    """The steps grouped by stay in a zone; a small step before the zone's first big one becomes a gate."""
    parts: list[ZonePart] = []
    for numbered in steps:
        if not parts or parts[-1].zone != numbered.zone:
            parts.append(ZonePart(numbered.zone))
        part = parts[-1]
        if numbered.kind is Kind.BIG:
            parts[-1] = replace(part, modules=(*part.modules, Module(numbered)))
        elif not part.modules:
            parts[-1] = replace(part, gates=(*part.gates, replace(numbered, kind=Kind.GATE)))
        elif numbered.kind is Kind.GATE:
            parts.append(ZonePart(numbered.zone, gates=(numbered,), is_continued=True))
        else:
            last = part.modules[-1]
            hung = replace(last, hanging=(*last.hanging, numbered))
            parts[-1] = replace(part, modules=(*part.modules[:-1], hung))
    return tuple(parts)


def cut_after(parts: tuple[ZonePart, ...], modules: int) -> tuple[tuple[ZonePart, ...], tuple[ZonePart, ...]]:
    """The parts cut after so many modules: never inside a card, the rest of a zone marked as continued."""
    left = modules
    first: list[ZonePart] = []
    second: list[ZonePart] = []
    for part in parts:
        if second or (left <= 0 and part.modules):
            second.append(part)
        elif left >= len(part.modules):
            first.append(part)
            left -= len(part.modules)
        else:
            first.append(replace(part, modules=part.modules[:left]))
            second.append(replace(part, gates=(), modules=part.modules[left:], is_continued=True))
            left = 0
    return tuple(first), tuple(second)
