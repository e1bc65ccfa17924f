"""protocols/*.yaml: people, phases and steps of a protocol."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Annotated, Any

from pydantic import BeforeValidator, Field

from signage.load import faults
from signage.load.building import build, build_each, field_places, places_below
from signage.load.kinds import (
    IDENTIFIER,
    NOT_EMPTY,
    WHOLE_NUMBER,
    CountingNumber,
    Identifier,
    IsoDate,
    ProtocolCode,
    ReadableText,
    YesNo,
    fault_error,
    one_of,
    wanted_text,
)
from signage.load.kit_file import Technique
from signage.load.nodes import Node, child, items_of
from signage.load.policy_file import AGENTS
from signage.load.step_grammar import VERBS
from signage.load.suggestion import shorten
from signage.load.validation import NONE, Entry
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


Seconds = Annotated[str, BeforeValidator(_read_seconds)]
"""A whole number, or the identifier of a policy value that is one."""


class ActorEntry(Entry):
    """Somebody in the protocol."""

    role: Annotated[str, one_of("wearer", "assistant", "observer")]
    starts_in: Identifier
    wears: tuple[Identifier, ...] = ()


class SourceEntry(Entry):
    """A publication."""

    title: ReadableText
    publisher: ReadableText
    year: CountingNumber


class ActionEntry(Entry):
    """One movement; which keys go with which verb is judged by the step grammar."""

    verb: Annotated[str, one_of(*VERBS)] = Field(alias="do")
    by: Identifier | None = None
    on: Identifier | None = None
    item: Identifier | None = None
    technique: Technique | None = None
    together: Identifier | None = None
    bin: Identifier | None = None
    layer: Identifier | None = None
    agent: Annotated[str, one_of(*AGENTS)] | None = None
    seconds: Seconds | None = None
    part: Identifier | None = None
    check: Identifier | None = None
    to: Identifier | None = None
    chair: Identifier | None = None
    need: Identifier | None = None
    fixture: Identifier | None = None
    amount: ReadableText | None = None
    target: Identifier | None = None
    fresh: YesNo = False


class StepEntry(Entry):
    """One step in normal form: ``do`` is a list."""

    id: Identifier = Field(alias="step")
    text: ReadableText
    picture: Identifier
    actions: Annotated[tuple[ActionEntry, ...], NOT_EMPTY] = Field(alias="do")
    detail: ReadableText | None = None
    why: ReadableText | None = None
    caution: ReadableText | None = None
    when: Annotated[str, one_of("always", "if-soiled", "if-torn")] = "always"
    critical: Annotated[str, one_of("auto", "yes")] = "auto"
    negation: YesNo = False
    rationale: ReadableText | None = None


class PhaseEntry(Entry):
    """A part of the protocol."""

    id: Identifier = Field(alias="phase")
    title: ReadableText
    theme: Annotated[str, one_of("don", "doff", "hands", "plain")]
    steps: Annotated[tuple[StepEntry, ...], NOT_EMPTY]
    layout: Annotated[str, one_of("steps", "hand-technique")] = "steps"
    seconds: Seconds | None = None
    rule: ReadableText | None = None
    rule_kind: Annotated[str, one_of("stop", "caution")] = "caution"
    notes: dict[Identifier, ReadableText] = NONE


class ProtocolEntry(Entry):
    """All of a protocol's file."""

    protocol: Identifier
    code: ProtocolCode
    title: ReadableText
    revision: CountingNumber
    owner: ReadableText
    review_by: IsoDate
    ward: Identifier
    people: Annotated[dict[Identifier, ActorEntry], NOT_EMPTY]
    ends_in: Identifier
    phases: Annotated[tuple[PhaseEntry, ...], NOT_EMPTY]
    sources: tuple[SourceEntry, ...] = ()


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
