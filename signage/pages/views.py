"""What the templates show of phases, zones and steps: finished words, signs and addresses."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from markupsafe import Markup

from signage.model.choices import ActionVerb, RuleKind, StepCondition
from signage.model.library import Fixture, Phase, Step
from signage.model.walk import zones_of_steps
from signage.model.zone_pattern import pattern_of
from signage.pages import address
from signage.pages.container_sign import container_sign
from signage.pages.picture import PictureKey
from signage.pages.publication import PageContext

TECHNIQUE = "hand-technique"
"""The layout of phases whose steps share one time."""


@dataclass(frozen=True)
class ZoneView:
    """Where a step happens: its name and the pattern that stands beside it."""

    id: str
    name: str
    pattern: str

    @property
    def tint(self) -> str:
        """The ground of its panel: decoration only."""
        return {"speckle": "dirty", "bricks": "room"}.get(self.pattern, "clean")


@dataclass(frozen=True)
class ContainerView:
    """The bin or tub that takes what a step removes; ``word`` is its name where no letter tells it."""

    sign: Markup
    word: str


@dataclass(frozen=True)
class StepView:
    """A step with all its words in one language.

    ``condition`` says when a conditional step is done. ``seconds`` is 0 where the step has no time of its
    own. ``branch`` is the address and the name of the protocol that the step leads to.
    """

    step: Step
    number: str
    condition: str | None
    headline: str
    detail: str | None
    why: str | None
    caution: str | None
    zone: ZoneView
    containers: tuple[ContainerView, ...]
    picture: PictureKey
    picture_words: str
    seconds: int
    time: str | None
    address: str
    branch: tuple[str, str] | None = None

    @property
    def untold_time(self) -> str | None:
        """The time of the step, where neither its headline nor its detail says it."""
        told = self.time is not None and any(
            self.time in (text or "") for text in (self.headline, self.detail)
        )
        return None if told else self.time

    @property
    def is_critical(self) -> bool:
        """Whether a mistake here can hurt."""
        return self.step.critical

    @property
    def is_hygiene(self) -> bool:
        """Whether hands are cleaned."""
        return self.step.action.verb is ActionVerb.HYGIENE


@dataclass(frozen=True)
class ZonePartView:
    """The steps of one stay in one zone, with the note for it."""

    zone: ZoneView
    note: str | None
    steps: tuple[StepView, ...]


@dataclass(frozen=True)
class PhaseView:
    """A phase with its steps. ``seconds`` is the time that the movements of a hand technique share."""

    phase: Phase
    title: str
    rule: str | None
    rule_word: str
    seconds: int
    time: str | None
    parts: tuple[ZonePartView, ...]

    @property
    def steps(self) -> tuple[StepView, ...]:
        """All steps in order."""
        return tuple(step for part in self.parts for step in part.steps)


def phase_views(context: PageContext) -> tuple[PhaseView, ...]:
    """All phases of the protocol in order."""
    return tuple(phase_view(context, phase) for phase in context.protocol.phases)


def phase_view(context: PageContext, phase: Phase) -> PhaseView:
    """One phase with its steps by stay in a zone."""
    words, base = context.words, f"{context.protocol.id}/phase/{phase.id}"
    seconds = phase.seconds if phase.layout == TECHNIQUE and phase.seconds else 0
    return PhaseView(
        phase=phase,
        title=words.content(f"{base}/title"),
        rule=words.phase_rule(context.protocol, phase),
        rule_word=words.fixed("stop" if phase.rule_kind is RuleKind.STOP else "caution"),
        seconds=seconds,
        time=words.seconds(seconds) if seconds else None,
        parts=tuple(_zone_parts(context, phase)),
    )


def _zone_parts(context: PageContext, phase: Phase) -> Iterator[ZonePartView]:
    views = step_views(context, phase)
    told: set[str] = set()
    for zone, steps in groupby(views, lambda view: view.zone):
        note = None
        if zone.id in phase.notes and zone.id not in told:
            note = context.words.content(f"{context.protocol.id}/phase/{phase.id}/note/{zone.id}")
            told.add(zone.id)
        yield ZonePartView(zone, note, tuple(steps))


def step_views(context: PageContext, phase: Phase) -> tuple[StepView, ...]:
    """The steps of a phase, numbered from 1 as on its sheets."""
    zones = zones_of_steps(context.protocol)
    return tuple(
        _step_view(context, phase, step, number, zones[step.id])
        for number, step in enumerate(phase.steps, start=1)
    )


def _step_view(context: PageContext, phase: Phase, step: Step, number: int, zone_id: str) -> StepView:
    words, protocol = context.words, context.protocol
    seconds = next((action.seconds for action in step.actions if action.seconds is not None), 0)
    return StepView(
        step=step,
        number=words.number(number),
        condition=None if step.when is StepCondition.ALWAYS else words.fixed(step.when),
        headline=context.step_headline(step),
        detail=words.step_text(protocol, step, "detail"),
        why=words.step_text(protocol, step, "why"),
        caution=words.step_text(protocol, step, "caution"),
        zone=zone_view(context, zone_id),
        containers=container_views(context, step),
        picture=context.publication.pictures.key(step, phase, words.is_right_to_left),
        picture_words=context.picture_words(step),
        seconds=seconds,
        time=words.seconds(seconds) if seconds else None,
        address=address.step_page(context.tag, protocol, step),
        branch=_branch(context, step),
    )


def _branch(context: PageContext, step: Step) -> tuple[str, str] | None:
    """The page of the protocol that the step leads to, or whose hand technique it follows, if it has one."""
    goals = {action.to for action in step.actions if action.verb is ActionVerb.BRANCH}
    goals |= {action.technique_of.partition("/")[0] for action in step.actions if action.technique_of}
    goal = next((each for each in context.publication.protocols(context.tag) if each.id in goals), None)
    if goal is None:
        return None
    title = context.words.content(f"{goal.id}/title")
    return address.protocol_page(context.tag, goal), f"{context.words.code(goal.code)} {title}"


def zone_view(context: PageContext, zone_id: str) -> ZoneView:
    """A zone by its id."""
    name = context.words.content(f"ward/{context.ward.id}/zone/{zone_id}")
    return ZoneView(zone_id, name, pattern_of(context.ward.zones[zone_id]).value)


def container_views(context: PageContext, step: Step) -> tuple[ContainerView, ...]:
    """The containers that take what the step removes, each once."""
    named = dict.fromkeys(action.bin for action in step.actions if action.bin)
    return tuple(
        container_view(context, context.ward.fixtures[name])
        for name in named
        if name in context.ward.fixtures
    )


def container_view(context: PageContext, fixture: Fixture) -> ContainerView:
    """A container with its letter, or else its name, or else the plain word for its kind."""
    kind = "tub" if fixture.kind == "tub" else "bin"
    word, code = context.words.fixed(kind), fixture.code or ""
    if not code and fixture.name is not None:
        word = context.words.content(f"ward/{context.ward.id}/fixture/{fixture.id}")
    return ContainerView(container_sign(kind, code, f"{word} {code}".strip()), word)
