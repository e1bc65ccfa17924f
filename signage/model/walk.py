"""Where each step of a protocol happens, read from its moves."""

from signage.model.library import Protocol, Step


def zones_of_steps(protocol: Protocol, actor: str | None = None) -> dict[str, str]:
    """Step id to the zone in which it is shown.

    A move is shown in the zone it enters, except the last move of the protocol, which is shown in
    the zone it leaves. ``actor`` defaults to the first person of the protocol.
    """
    person = protocol.people[0] if actor is None else next(p for p in protocol.people if p.id == actor)
    zone = person.starts_in
    shown: dict[str, str] = {}
    steps = protocol.steps
    for step in steps:
        before = zone
        for action in step.actions:
            if action.verb == "move" and action.by == person.id and action.to is not None:
                zone = action.to
        shown[step.id] = zone
        if step is steps[-1] and leaves(step):
            shown[step.id] = before
    return shown


def leaves(step: Step) -> bool:
    """Whether the step is a move to another zone."""
    return any(action.verb == "move" for action in step.actions)
