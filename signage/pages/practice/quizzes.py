"""Quizzes made from the content: what a picture says, and which bin or tub takes a thing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from signage.model.library import Fixture, Phase, Protocol, Step, Ward
from signage.pages.practice.orders import shuffled

QUESTIONS = 6
"""Questions on one page."""

CHOICES = 3
"""Answers to choose from; more do not fit a phone beside the picture."""


@dataclass(frozen=True)
class MeaningQuestion:
    """A picture and the steps whose headlines are to choose from; the first of ``right`` is meant."""

    step: Step
    choices: tuple[Step, ...]


@dataclass(frozen=True)
class ContainerQuestion:
    """A step that puts something into a container, and the containers to choose from."""

    step: Step
    right: str
    choices: tuple[Fixture, ...]


@dataclass(frozen=True)
class MeaningQuiz:
    """Pictures of one phase."""

    phase: Phase
    questions: tuple[MeaningQuestion, ...]

    @property
    def name(self) -> str:
        """The last part of its address."""
        return f"meaning-{self.phase.id}"


@dataclass(frozen=True)
class ContainerQuiz:
    """Things of one phase that leave the wearer."""

    phase: Phase
    questions: tuple[ContainerQuestion, ...]

    @property
    def name(self) -> str:
        """The last part of its address."""
        return f"container-{self.phase.id}"


def meaning_quiz(protocol: Protocol, phase: Phase) -> MeaningQuiz | None:
    """A quiz about the pictures of a phase; None where too few pictures differ."""
    distinct = _distinct(phase.steps)
    if len(distinct) < CHOICES:
        return None
    asked = shuffled(distinct, f"{protocol.id}/{phase.id}/meaning")[:QUESTIONS]
    questions = []
    for step in asked:
        others = [other for other in distinct if other is not step]
        near = shuffled(others, f"{protocol.id}/{step.id}/others")[: CHOICES - 1]
        choices = shuffled((step, *near), f"{protocol.id}/{step.id}/choices")
        questions.append(MeaningQuestion(step, choices))
    return MeaningQuiz(phase, tuple(questions))


def container_quiz(protocol: Protocol, phase: Phase, ward: Ward) -> ContainerQuiz | None:
    """A quiz about bins and tubs; None where the protocol uses fewer than two."""
    names = dict.fromkeys(step.action.bin for step in protocol.steps if step.action.bin)
    containers = [ward.fixtures[name] for name in names if name in ward.fixtures]
    containers = sorted((each for each in containers if each.code or each.name), key=_label)
    known = {container.id for container in containers}
    steps = [step for step in phase.steps if step.action.bin in known]
    if len(containers) < 2 or not steps:
        return None
    asked = shuffled(steps, f"{protocol.id}/{phase.id}/container")[:QUESTIONS]
    return ContainerQuiz(
        phase,
        tuple(ContainerQuestion(step, step.action.bin or "", tuple(containers)) for step in asked),
    )


def _label(container: Fixture) -> tuple[bool, str]:
    """By letter; those that have a name only come last."""
    return container.code is None, container.code or container.name or ""


def _distinct(steps: Sequence[Step]) -> list[Step]:
    """Steps whose pictures and whose headlines all differ."""
    chosen: list[Step] = []
    for step in steps:
        if all(step.picture != other.picture and step.text != other.text for other in chosen):
            chosen.append(step)
    return chosen
