"""The texts of a library that readers see, as messages to translate."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from signage.ground.place import Place
from signage.model.library import Hazard, Library, Phase, Protocol, Step

PLACEHOLDERS = frozenset({"time", "item", "bin", "zone", "amount"})
"""The names that a text of content may insert, filled by the locale."""


class MessageRole(StrEnum):
    """What a message is on a sheet; decides its length budget. A picture's is read aloud, not set."""

    TITLE = "title"
    HEADLINE = "headline"
    DETAIL = "detail"
    WHY = "why"
    CAUTION = "caution"
    RULE = "rule"
    NOTE = "note"
    NAME = "name"
    PICTURE = "picture"


LENGTH_BUDGET = {
    MessageRole.TITLE: 18,
    MessageRole.HEADLINE: 26,
    MessageRole.DETAIL: 58,
    MessageRole.WHY: 44,
    MessageRole.CAUTION: 44,
    MessageRole.RULE: 100,
    MessageRole.NOTE: 56,
    MessageRole.NAME: 18,
    MessageRole.PICTURE: 90,
}
"""Characters a role has room for at its full size; told to authors and translators."""


@dataclass(frozen=True, slots=True)
class Message:
    """A text of content. ``context`` is its stable path, such as ``layered-protection/apron-off/text``."""

    context: str
    source: str
    role: MessageRole
    place: Place
    protocol: str | None = None
    step: str | None = None
    picture: str | None = None


def step_context(protocol: Protocol, step: Step, field: str) -> str:
    """Where a text of a step stands; what repeats another step shows the texts of that one."""
    return f"{protocol.id}/{step.told_as}/{field}"


def rule_contexts(protocol: Protocol, phase: Phase) -> tuple[str, ...]:
    """Where the sentences stand that hold for a whole phase, in the order in which they are shown."""
    base = f"{protocol.id}/phase/{phase.id}"
    first = (f"{base}/rule",) if phase.rule is not None else ()
    return (*first, *(f"{base}/rules/{number}" for number in range(1, len(phase.rules) + 1)))


def pointer_context(protocol: Protocol, hazard: Hazard) -> str:
    """Where the line stands that points to a local document."""
    return f"{protocol.id}/hazard/{hazard.id}"


def step_messages(protocol: Protocol, step: Step) -> Iterator[Message]:
    """The texts of one step: headline, detail, posture, pace, why, caution, where they exist.

    A step that repeats another one has none of its own: they are translated once.
    """
    if step.again is not None:
        return
    fields = (
        ("text", step.text, MessageRole.HEADLINE),
        ("detail", step.detail, MessageRole.DETAIL),
        ("posture", step.posture, MessageRole.DETAIL),
        ("pace", step.pace, MessageRole.DETAIL),
        ("why", step.why, MessageRole.WHY),
        ("caution", step.caution, MessageRole.CAUTION),
    )
    for name, text, role in fields:
        if text is not None:
            context = step_context(protocol, step, name)
            yield Message(context, text, role, step.at(name), protocol.id, step.id, step.picture)


def protocol_messages(protocol: Protocol) -> Iterator[Message]:
    """The texts of one protocol in reading order."""
    yield Message(
        f"{protocol.id}/title", protocol.title, MessageRole.TITLE, protocol.at("title"), protocol.id
    )
    yield Message(f"{protocol.id}/owner", protocol.owner, MessageRole.NAME, protocol.at("owner"), protocol.id)
    for phase in protocol.phases:
        base = f"{protocol.id}/phase/{phase.id}"
        yield Message(f"{base}/title", phase.title, MessageRole.TITLE, phase.at("title"), protocol.id)
        if phase.rule is not None:
            yield Message(f"{base}/rule", phase.rule, MessageRole.RULE, phase.at("rule"), protocol.id)
        for index, rule in enumerate(phase.rules):
            place = phase.at(f"rules/{index}")
            yield Message(f"{base}/rules/{index + 1}", rule, MessageRole.RULE, place, protocol.id)
        for zone, note in phase.notes.items():
            yield Message(
                f"{base}/note/{zone}", note, MessageRole.NOTE, phase.at(f"notes/{zone}"), protocol.id
            )
        for step in phase.steps:
            yield from step_messages(protocol, step)
    for hazard in protocol.pointers:
        context = pointer_context(protocol, hazard)
        place = hazard.at("local_policy")
        yield Message(context, hazard.local_policy or "", MessageRole.NOTE, place, protocol.id)


def contexts_of_protocol(protocol: Protocol, messages: Iterable[Message]) -> frozenset[str]:
    """The contexts of all texts that sheets and pages of a protocol may show.

    Its own, its ward's, the kit's and the names of its pictures; those of other protocols and wards are not
    among them.
    """
    pictures = {step.picture for step in protocol.steps}
    ward = f"ward/{protocol.ward}/"
    return frozenset(
        message.context
        for message in messages
        if message.protocol in {None, protocol.id}
        and (message.role is not MessageRole.PICTURE or message.picture in pictures)
        and (not message.context.startswith("ward/") or message.context.startswith(ward))
    )


def library_messages(library: Library) -> tuple[Message, ...]:
    """Every text of the library, in a stable order: names first, then protocols by file order."""
    messages = [Message("library/name", library.name, MessageRole.NAME, library.at("name"))]
    messages.extend(
        Message(f"kit/{garment.id}/name", garment.name, MessageRole.NAME, garment.at("name"))
        for garment in library.garments.values()
    )
    for ward in library.wards.values():
        messages.append(Message(f"ward/{ward.id}/name", ward.name, MessageRole.NAME, ward.at("name")))
        messages.extend(
            Message(f"ward/{ward.id}/zone/{zone.id}", zone.name, MessageRole.NAME, zone.at("name"))
            for zone in ward.zones.values()
        )
        messages.extend(
            Message(
                f"ward/{ward.id}/fixture/{fixture.id}", fixture.name, MessageRole.NAME, fixture.at("name")
            )
            for fixture in ward.fixtures.values()
            if fixture.name is not None
        )
    for protocol in library.protocols.values():
        messages.extend(protocol_messages(protocol))
    return tuple(messages)
