"""protocols/*.yaml: people, phases and steps of a protocol."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Annotated, Any

from pydantic import Field

from signage.load import faults
from signage.load.building import build, build_each, field_places, places_below
from signage.load.files.kit import Technique
from signage.load.files.policy import AGENTS
from signage.load.kind import Kind, fault_error, wanted_text
from signage.load.kinds import (
    IDENTIFIER,
    NOT_EMPTY,
    WHOLE_NUMBER,
    CountingNumber,
    Identifier,
    IsoDate,
    Name,
    ProtocolCode,
    ReadableText,
    YesNo,
    number_between,
    one_of,
)
from signage.load.suggestion import shorten
from signage.load.validation import NONE, Entry
from signage.load.yaml.nodes import Node, child, items_of
from signage.model.choices import ActionVerb, PersonRole, PhaseTheme, RuleKind, StepCondition
from signage.model.library import Action, Actor, Phase, Protocol, Source, Step


def _read_seconds(value: Any) -> str:
    text = wanted_text(value, "a number of seconds")
    if WHOLE_NUMBER.fullmatch(text) or IDENTIFIER.fullmatch(text):
        return text
    raise fault_error(
        faults.WRONG_KIND,
        f"'{shorten(text)}' is neither a number of seconds nor the name of a policy value.",
        "Write digits only, such as 20, or a policy value, such as min-rub.",
    )


Seconds = Annotated[
    str,
    Kind(
        _read_seconds,
        "seconds",
        "a whole number, or the name of a value of policy.yaml that is one",
        {
            "anyOf": [
                {"type": "integer", "minimum": 0},
                {"type": "string", "pattern": f"^({IDENTIFIER.pattern})$"},
            ]
        },
    ),
]
"""A whole number, or the identifier of a policy value that is one."""


class ActorEntry(Entry):
    """Somebody in the protocol."""

    role: Annotated[PersonRole, one_of(*PersonRole)]
    """What the person does."""

    starts_in: Identifier
    """The zone where the person begins."""

    wears: tuple[Identifier, ...] = ()
    """What the person wears at the start."""


class SourceEntry(Entry):
    """A publication."""

    title: Name
    """The title of the publication."""

    publisher: Name
    """Who published it."""

    year: Annotated[int, number_between(1800, 2199, "year")]
    """The year of the edition."""


class ActionEntry(Entry):
    """One movement; which keys go with which verb is judged by the step grammar."""

    verb: Annotated[ActionVerb, one_of(*ActionVerb)] = Field(alias="do")
    """What is done; the table of verbs below says which other keys go with it."""

    by: Identifier | None = None
    """Who does it: a person of this protocol; without it, the wearer."""

    on: Identifier | None = None
    """Whom it is done to: a person of this protocol; without it, who does it."""

    item: Identifier | None = None
    """The garment or item that it is done with."""

    technique: Technique | None = None
    """How the garment comes off, where that differs from kit.yaml."""

    together: Identifier | None = None
    """A second garment that comes off in the same movement."""

    bin: Identifier | None = None
    """The bin or tub that it goes into."""

    layer: Identifier | None = None
    """The hand layer that is cleaned: skin, or a garment that covers the hands."""

    agent: Annotated[str, one_of(*AGENTS)] | None = None
    """What hands or surfaces are cleaned with."""

    seconds: Seconds | None = None
    """How long it takes at least; texts show it as {time}."""

    part: Identifier | None = None
    """The fastener, or the movement of hand hygiene."""

    check: Identifier | None = None
    """The check of the item, as kit.yaml names it."""

    to: Identifier | None = None
    """The zone that somebody goes to, or the step or protocol that a branch leads to."""

    chair: Identifier | None = None
    """The chair that somebody sits on."""

    need: Identifier | None = None
    """What is seen to, as the 'needs' of a zone name it, such as bare-wrists."""

    fixture: Identifier | None = None
    """The fixture that is used, cleaned or replaced."""

    amount: ReadableText | None = None
    """How much agent is taken, in words; texts show it as {amount}."""

    target: Identifier | None = None
    """What is touched: a part of the body, a garment or a fixture."""

    fresh: YesNo = False
    """Whether what is put on comes straight out of a closed pack."""


class StepEntry(Entry):
    """One step in normal form: ``do`` is a list."""

    id: Identifier = Field(alias="step")
    """The identifier of the step; never changed once it is translated."""

    text: ReadableText
    """The headline: one action, at most 12 words."""

    picture: Identifier
    """The picture of the step; 'signage explain LD-20' lists all."""

    actions: Annotated[tuple[ActionEntry, ...], NOT_EMPTY] = Field(alias="do")
    """What is done: a verb with its keys beside it, or a list of such movements."""

    detail: ReadableText | None = None
    """How it is done, under the headline."""

    why: ReadableText | None = None
    """Why it is done; trainer's notes and training pages show it."""

    caution: ReadableText | None = None
    """What to beware of."""

    when: Annotated[StepCondition, one_of(*StepCondition)] = StepCondition.ALWAYS
    """The condition under which the step is done."""

    critical: Annotated[str, one_of("auto", "yes")] = "auto"
    """yes marks the step as critical beside those that the rehearsal finds."""

    negation: YesNo = False
    """Whether the headline says what not to do."""

    rationale: ReadableText | None = None
    """Why the step is there where the rehearsal sees no effect of it."""


class PhaseEntry(Entry):
    """A part of the protocol."""

    id: Identifier = Field(alias="phase")
    """The identifier of the phase."""

    title: Name
    """What its poster is called."""

    theme: Annotated[PhaseTheme, one_of(*PhaseTheme)]
    """How its sheets look."""

    steps: Annotated[tuple[StepEntry, ...], NOT_EMPTY]
    """The steps in order."""

    layout: Annotated[str, one_of("steps", "hand-technique")] = "steps"
    """hand-technique prints the movements of hand hygiene one by one."""

    seconds: Seconds | None = None
    """The time that the movements of a hand technique take together."""

    rule: ReadableText | None = None
    """The sentence of the key box."""

    rule_kind: Annotated[RuleKind, one_of(*RuleKind)] = RuleKind.CAUTION
    """Whether the key box says stop or caution."""

    notes: dict[Identifier, ReadableText] = NONE
    """A note for each zone, beside its steps."""


class ProtocolEntry(Entry):
    """All of a protocol's file."""

    protocol: Identifier
    """The identifier of the protocol."""

    code: ProtocolCode
    """The short code on every sheet; each once in a library."""

    title: Name
    """What sheets call it."""

    revision: CountingNumber
    """The number of the revision, counted up by its author."""

    owner: Name
    """The role that answers for it."""

    review_by: IsoDate
    """The last day before it has to be looked at again."""

    ward: Identifier
    """The ward that it is for."""

    people: Annotated[dict[Identifier, ActorEntry], NOT_EMPTY]
    """Who takes part, by identifier."""

    ends_in: Identifier
    """The zone where it ends."""

    phases: Annotated[tuple[PhaseEntry, ...], NOT_EMPTY]
    """Its parts in order; each is printed as a poster."""

    sources: tuple[SourceEntry, ...] = ()
    """The publications that it rests on."""


def seconds_of(written: str | None, policy_seconds: dict[str, int]) -> int | None:
    """The number of seconds that was written or that the named policy value holds."""
    if written is None:
        return None
    return int(written) if WHOLE_NUMBER.fullmatch(written) else policy_seconds[written]


def usual_actor(people: Iterable[str]) -> str:
    """Who acts where ``by`` is not written: the wearer, or the first person where there is no wearer."""
    names = tuple(people)
    return "wearer" if "wearer" in names else names[0]


def build_protocol(entry: ProtocolEntry, node: Node, policy_seconds: dict[str, int]) -> Protocol:
    """The protocol of a valid file in normal form.

    ``policy_seconds`` are the whole-number policy values by identifier. ``notes/<zone>`` are places of a
    phase beside its field names.
    """
    written = child(node, "protocol")
    assert written is not None
    sources = zip(entry.sources, items_of(node, "sources"), strict=True)
    phases = zip(entry.phases, items_of(node, "phases"), strict=True)
    actor = usual_actor(entry.people)
    return Protocol(
        id=entry.protocol,
        code=entry.code,
        title=entry.title,
        revision=entry.revision,
        owner=entry.owner,
        review_by=entry.review_by,
        ward=entry.ward,
        people=tuple(build_each(Actor, entry.people, child(node, "people")).values()),
        ends_in=entry.ends_in,
        phases=tuple(_phase(phase, below, policy_seconds, actor) for phase, below in phases),
        sources=tuple(build(Source, source, below) for source, below in sources),
        place=written.place,
        places=field_places(node, ProtocolEntry, protocol="id"),
    )


def _phase(entry: PhaseEntry, node: Node, policy_seconds: dict[str, int], actor: str) -> Phase:
    """A phase with its steps."""
    steps = zip(entry.steps, items_of(node, "steps"), strict=True)
    return build(
        Phase,
        entry,
        node,
        places=places_below(node, "notes"),
        steps=tuple(_step(step, below, policy_seconds, actor) for step, below in steps),
        seconds=seconds_of(entry.seconds, policy_seconds),
    )


def _step(entry: StepEntry, node: Node, policy_seconds: dict[str, int], actor: str) -> Step:
    """A step with its actions."""
    actions = zip(entry.actions, items_of(node, "do"), strict=True)
    return build(
        Step,
        entry,
        node,
        critical=entry.critical == "yes",
        actions=tuple(
            build(
                Action,
                action,
                below,
                by=action.by or actor,
                seconds=seconds_of(action.seconds, policy_seconds),
            )
            for action, below in actions
        ),
    )
