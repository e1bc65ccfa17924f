"""What a step does, in the terms by which verbs are chosen: acts and directions of its movements."""

from __future__ import annotations

from dataclasses import dataclass

from signage.model.choices import ActionVerb, PhaseTheme, ZoneClass
from signage.model.library import Action, Library, Protocol, Step

_THEMES = {PhaseTheme.DON: ActionVerb.DON, PhaseTheme.DOFF: ActionVerb.DOFF}


@dataclass(frozen=True, slots=True)
class Move:
    """A way from one zone of the ward to another; ``start`` None where it is not known."""

    start: str | None
    end: str


def acts_of_step(library: Library, protocol: Protocol, step: Step) -> frozenset[str]:
    """The acts of a step: verbs of its movements, the agent of hand hygiene, the directions of a move.

    One of the partial movements of a hand technique has no act of its own: its headline names the part. A
    fastener that is closed has an act; a bag that is tied has none, since each language ties it in its way.
    """
    found: set[str] = set()
    for action in step.actions:
        found.update(_acts_of(library, action))
    move = move_of_step(protocol, step)
    if move is not None:
        found.update(_directions(library, protocol, move))
    return frozenset(found)


def act_of_phase(theme: PhaseTheme) -> frozenset[str]:
    """What the theme of a phase says that its steps do."""
    return frozenset({_THEMES[theme]} if theme in _THEMES else ())


def move_of_step(protocol: Protocol, step: Step) -> Move | None:
    """Where the step goes; None where it moves nobody."""
    zones = {person.id: person.starts_in for person in protocol.people}
    for each in protocol.steps:
        for action in each.actions:
            if action.verb is ActionVerb.MOVE and action.to is not None:
                if each.id == step.id:
                    return Move(zones.get(action.by), action.to)
                zones[action.by] = action.to
    return None


def _acts_of(library: Library, action: Action) -> tuple[str, ...]:
    item = library.garments.get(action.item or "")
    if action.verb is ActionVerb.FASTEN and item is not None and not item.covers:
        return ()
    if action.verb is not ActionVerb.HYGIENE:
        return (action.verb,)
    return (action.agent,) if action.agent is not None and action.part is None else ()


def _directions(library: Library, protocol: Protocol, move: Move) -> tuple[str, ...]:
    """``enter`` into a contaminated zone, ``leave`` out of one or into a clean one; others are only moves."""
    zones = library.wards[protocol.ward].zones
    end = zones[move.end].zone_class if move.end in zones else None
    start = zones[move.start].zone_class if move.start is not None and move.start in zones else None
    if end is ZoneClass.CONTAMINATED and start is not ZoneClass.CONTAMINATED:
        return ("enter",)
    if start is ZoneClass.CONTAMINATED or (end is ZoneClass.CLEAN and start is not ZoneClass.CLEAN):
        return ("leave",)
    return ()
