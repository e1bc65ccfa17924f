"""Where each step of a protocol happens, read from its moves, and what goes into which container."""

from collections.abc import Iterator, Mapping

from signage.model.choices import ActionVerb, PersonRole
from signage.model.garment import Garment
from signage.model.library import Protocol, Step


def zones_of_steps(protocol: Protocol, actor: str | None = None) -> dict[str, str]:
    """Step id to the zone in which it is shown.

    A step is shown where the person is who does it; what an observer does is shown where the person is
    whom it is about, for an observer stands apart. ``actor``, by default the first person of the
    protocol, is that person where the step names none. A move is shown in the zone it enters, except the
    last move of the protocol, which is shown in the zone it leaves.
    """
    reader = protocol.people[0] if actor is None else next(p for p in protocol.people if p.id == actor)
    zones = {person.id: person.starts_in for person in protocol.people}
    apart = {person.id for person in protocol.people if person.role is PersonRole.OBSERVER} - {reader.id}
    shown: dict[str, str] = {}
    steps = protocol.steps
    for step in steps:
        person = step.action.by
        if person in apart or person not in zones:
            person = step.action.on or reader.id
        before = zones[person]
        for action in step.actions:
            if action.verb is ActionVerb.MOVE and action.to is not None:
                zones[action.by] = action.to
        shown[step.id] = zones[person]
        if step is steps[-1] and leaves(step):
            shown[step.id] = before
    return shown


def leaves(step: Step) -> bool:
    """Whether the step is a move to another zone."""
    return any(action.verb is ActionVerb.MOVE for action in step.actions)


def contents_of_containers(
    protocol: Protocol, garments: Mapping[str, Garment]
) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Each bin or tub that a movement names, with the items that it takes there, in order.

    Where clothes are changed these are the clothes that were worn until then, not the item that goes on.
    """
    clothes = {
        person.id: tuple(
            item for item in person.wears if item in garments and garments[item].kind == "clothes"
        )
        for person in protocol.people
    }
    for action in (action for step in protocol.steps for action in step.actions):
        items: tuple[str, ...] = (action.item,) if action.item else ()
        if action.verb is ActionVerb.CHANGE_CLOTHES:
            wearer = action.on or action.by
            items, clothes[wearer] = clothes.get(wearer, ()), items
        if action.bin and items:
            yield action.bin, items


def _is_clothes(garments: Mapping[str, Garment], item: str) -> bool:
    return item in garments and garments[item].kind == "clothes"
