"""A way into a contaminated zone without a word on fire alarm, full bin or missing observer."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule
from signage.model.choices import ActionVerb, ZoneClass
from signage.model.library import Library, Protocol

UNDECIDED_EVENT = Rule(
    code="CN-14",
    name="undecided-event",
    severity=S2,
    what=(
        "The 'hazards' of protocols in which somebody goes into a contaminated zone: 'fire-alarm', "
        "'bin-full' where a bin or tub is used, and 'observer-missing' where there is an observer. That each "
        "has a branch or names a local document is judged where the file is read (LD-16, LD-18)."
    ),
    why=(
        "Whoever is inside when the alarm sounds, the bin is full or nobody watches has no time to ask: kit "
        "worn on the way out, or pressed into a full bin, contaminates others. It needs a decision before "
        "anybody signs, and one line can give it; the order itself is not made wrong by it, so drafts print."
    ),
    example="P1 enters the room and has no 'fire-alarm' among its hazards.",
    cure=(
        "Add the event to 'hazards': 'branch:' with the phase that tells what is done, or 'local-policy:' "
        "with the event and the document, such as 'Fire alarm: fire plan'."
    ),
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each protocol, with all events that it leaves open."""
    for protocol in subject.library.protocols.values():
        if not _enters_contaminated(subject.library, protocol):
            continue
        missing = [event for event in _expected(protocol) if event not in protocol.hazards]
        if missing:
            named = ", ".join(f"'{event}'" for event in missing)
            yield subject.problem(
                UNDECIDED_EVENT,
                f"{protocol.code} leads into a contaminated zone and says nothing of {named}.",
                protocol.at("hazards") if protocol.hazards else protocol.at("code"),
                protocol=protocol.id,
            )


def _enters_contaminated(library: Library, protocol: Protocol) -> bool:
    zones = library.wards[protocol.ward].zones
    goals = {action.to for step in protocol.steps for action in step.actions if action.to in zones}
    return any(zones[goal].zone_class is ZoneClass.CONTAMINATED for goal in goals if goal is not None)


def _expected(protocol: Protocol) -> Iterator[str]:
    """The events that somebody inside cannot ask about when they happen."""
    yield "fire-alarm"
    movements = [action for step in protocol.steps for action in step.actions]
    if any(action.bin is not None or action.verb is ActionVerb.DISCARD for action in movements):
        yield "bin-full"
    if any(person.role == "observer" for person in protocol.people):
        yield "observer-missing"


RULE = ContentRule(UNDECIDED_EVENT, find)
