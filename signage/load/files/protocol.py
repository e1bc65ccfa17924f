"""protocols/*.yaml: people, phases and steps of a protocol."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Annotated

from pydantic import Field

from signage.ground.place import Place
from signage.load.building import build, build_each, field_places, places_below, table
from signage.load.files.action import ActionEntry, Seconds
from signage.load.kinds import (
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
from signage.load.validation import NONE, Entry, places_of
from signage.load.yaml.nodes import Node, child, items_of
from signage.model.choices import PersonRole, PhaseTheme, RuleKind, StepCondition
from signage.model.library import Action, Actor, Hazard, Phase, Protocol, Source, Step, Thing

NO_TECHNIQUES: Mapping[str, int | None] = MappingProxyType({})


class ActorEntry(Entry):
    """Somebody in the protocol."""

    role: Annotated[PersonRole, one_of(*PersonRole)]
    """What the person does."""

    starts_in: Identifier
    """The zone where the person begins."""

    wears: tuple[Identifier, ...] = ()
    """What the person wears at the start, from the inside outwards."""

    comes_from: Identifier | None = None
    """The zone that the person comes from, which says what kit, soles and hands carry at the start."""

    carries: tuple[Identifier, ...] = ()
    """The things of this protocol that the person carries at the start."""


class ThingEntry(Entry):
    """Something that people carry and never wear."""

    surface: Annotated[str, one_of("hard", "soft")]
    """Whether it can be disinfected by wiping: hard, or soft."""

    stays_in: Identifier | None = None
    """The zone that it does not leave; without it, it goes where it is carried."""


class HazardEntry(Entry):
    """Something unforeseen; it needs one of the two keys."""

    branch: ReadableText | None = None
    """What is then done: a protocol, 'protocol/phase', or a phase of this protocol."""

    local_policy: ReadableText | None = None
    """The event and the local document that says what is then done, in words for readers."""


class SourceEntry(Entry):
    """A publication."""

    title: Name
    """The title of the publication."""

    publisher: Name
    """Who published it."""

    year: Annotated[int, number_between(1800, 2199, "year")]
    """The year of the edition."""


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

    posture: ReadableText | None = None
    """How one stands or sits while doing it; printed behind the detail."""

    pace: ReadableText | None = None
    """How fast it is done; printed behind the detail."""

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

    again: Identifier | None = None
    """The step of this protocol that is repeated, instead of text, picture, movements and their like."""


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

    rules: tuple[ReadableText, ...] = ()
    """Sentences that hold for the whole phase; the key box shows them behind its own."""

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

    things: dict[Identifier, ThingEntry] = NONE
    """Things that people carry, such as phone or pen, by identifier."""

    hazards: dict[Identifier, HazardEntry] = NONE
    """What may happen unforeseen, such as bin-full, by identifier."""


def seconds_of(written: str | None, policy_seconds: Mapping[str, int]) -> int | None:
    """The number of seconds that was written or that the named policy value holds."""
    if written is None:
        return None
    return int(written) if WHOLE_NUMBER.fullmatch(written) else policy_seconds[written]


def usual_actor(people: Iterable[str]) -> str:
    """Who acts where ``by`` is not written: the wearer, or the first person where there is no wearer."""
    names = tuple(people)
    return "wearer" if "wearer" in names else names[0]


def technique_seconds(
    entries: Iterable[ProtocolEntry], policy_seconds: Mapping[str, int]
) -> dict[str, int | None]:
    """The time of each hand technique by ``protocol/phase``; None where it has none of its own."""
    return {
        f"{entry.protocol}/{phase.id}": seconds_of(phase.seconds, policy_seconds)
        for entry in entries
        for phase in entry.phases
        if phase.layout == "hand-technique"
    }


@dataclass(frozen=True, slots=True)
class _Known:
    """What steps are built with: times by name, who acts unsaid, and the steps that others repeat."""

    policy_seconds: Mapping[str, int]
    technique_seconds: Mapping[str, int | None]
    actor: str
    written_out: Mapping[str, tuple[StepEntry, Node]]


def build_protocol(
    entry: ProtocolEntry,
    node: Node,
    policy_seconds: Mapping[str, int],
    techniques: Mapping[str, int | None] = NO_TECHNIQUES,
) -> Protocol:
    """The protocol of a valid file in normal form.

    ``policy_seconds`` are the whole-number policy values by identifier, ``techniques`` the times of hand
    techniques by ``protocol/phase``. ``notes/<zone>`` and ``rules/<number>``, counted from 0, are places of
    a phase beside its field names.
    """
    written = child(node, "protocol")
    assert written is not None
    sources = zip(entry.sources, items_of(node, "sources"), strict=True)
    phases = tuple(zip(entry.phases, items_of(node, "phases"), strict=True))
    written_out = {
        step.id: (step, below)
        for phase, phase_node in phases
        for step, below in zip(phase.steps, items_of(phase_node, "steps"), strict=True)
    }
    known = _Known(policy_seconds, techniques, usual_actor(entry.people), written_out)
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
        phases=tuple(_phase(phase, below, known) for phase, below in phases),
        sources=tuple(build(Source, source, below) for source, below in sources),
        things=build_each(Thing, entry.things, child(node, "things")),
        hazards=build_each(Hazard, entry.hazards, child(node, "hazards")),
        place=written.place,
        places=field_places(node, ProtocolEntry, protocol="id"),
    )


def _phase(entry: PhaseEntry, node: Node, known: _Known) -> Phase:
    """A phase with its steps; the first of its sentences is its rule, wherever that one is written."""
    steps = zip(entry.steps, items_of(node, "steps"), strict=True)
    rules, rule_places = list(entry.rules), [rule.place for rule in items_of(node, "rules")]
    own_rule: dict[str, Place] = {}
    if entry.rule is None and rules:
        own_rule["rule"] = rule_places.pop(0)
    rule = entry.rule if entry.rule is not None or not rules else rules.pop(0)
    numbered = {f"rules/{index}": place for index, place in enumerate(rule_places)}
    return build(
        Phase,
        entry,
        node,
        places={**places_below(node, "notes"), **own_rule, **numbered},
        rule=rule,
        rules=tuple(rules),
        steps=tuple(_step(step, below, known) for step, below in steps),
        seconds=seconds_of(entry.seconds, known.policy_seconds),
    )


def _step(entry: StepEntry, node: Node, known: _Known) -> Step:
    """A step with its actions; one that repeats another keeps its own name, condition and reasons."""
    told, told_node = known.written_out[entry.again] if entry.again is not None else (entry, node)
    actions = zip(told.actions, items_of(told_node, "do"), strict=True)
    step = build(
        Step,
        told,
        told_node,
        id=entry.id,
        when=entry.when,
        critical=entry.critical == "yes" or told.critical == "yes",
        rationale=entry.rationale or told.rationale,
        again=entry.again,
        actions=tuple(_action(action, below, known) for action, below in actions),
    )
    if entry.again is None:
        return step
    own = places_of(table(node), StepEntry)
    own = {name: place for name, place in own.items() if name not in {"text", "picture", "actions"}}
    return replace(step, place=node.place, places={**step.places, **own})


def _action(entry: ActionEntry, node: Node, known: _Known) -> Action:
    """A movement; without a time of its own it takes that of the hand technique that it follows."""
    seconds = seconds_of(entry.seconds, known.policy_seconds)
    if seconds is None and entry.technique_of is not None:
        seconds = known.technique_seconds[entry.technique_of]
    return build(Action, entry, node, by=entry.by or known.actor, seconds=seconds)
