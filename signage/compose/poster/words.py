"""The words of a poster, looked up once, so that many layouts can be tried on them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from signage.compose.arrangement import Kind, NumberedStep, ZonePart
from signage.compose.context import SheetContext, container_message
from signage.compose.word_stack import Look, Piece, Size
from signage.drawing.roles import TypeRole
from signage.model.library import Phase


@dataclass(frozen=True)
class StepWords:
    """One step with all that a poster says of it.

    ``time`` is the time of a rub in short words, set at the end of its strip; ``untold_time`` that of any
    other step whose headline and detail do not say it. ``containers`` are the names of bins without a
    letter, by their contexts.
    """

    numbered: NumberedStep
    headline: str
    detail: str | None
    time: str | None
    caution: str | None = None
    condition: str | None = None
    untold_time: str | None = None
    containers: tuple[tuple[str, str], ...] = ()

    @property
    def is_big(self) -> bool:
        """Whether it fills a tile."""
        return self.numbered.kind is Kind.BIG

    def above(self) -> list[Piece]:
        """What stands above the headline: the condition."""
        when = f"interface/{self.numbered.step.when}"
        return (
            [Piece(TypeRole.CONDITION, self.condition, when, 700, lines=2, look=Look.FRAME)]
            if self.condition
            else []
        )

    def below(self, protocol: str, *, has_detail: bool = True) -> list[Piece]:
        """What stands below the headline: where things go, the time, the detail, the caution last."""
        message = f"{protocol}/{self.numbered.step.told_as}"
        pieces = [
            Piece(TypeRole.CONTAINER_NAME, name, context, 600, lines=2) for context, name in self.containers
        ]
        if self.untold_time:
            pieces.append(
                Piece(TypeRole.STEP_TIME, self.untold_time, f"{message}/seconds", 600, lines=1, is_care=True)
            )
        if self.detail and has_detail:
            pieces.append(Piece(TypeRole.DETAIL, self.detail, f"{message}/detail", 400))
        if self.caution:
            pieces.append(Piece(TypeRole.CAUTION, self.caution, f"{message}/caution", 600, look=Look.BAR))
        return pieces

    def all(self, protocol: str) -> list[Piece]:
        """Everything, from the condition to the caution."""
        message = f"{protocol}/{self.numbered.step.told_as}/text"
        headline = Piece(TypeRole.HEADLINE, self.headline, message, 700, Size.HEADLINE, lines=2)
        return [*self.above(), headline, *self.below(protocol)]


@dataclass(frozen=True)
class PosterWords:
    """All words of the steps of a phase, its zones and its notes.

    ``zones`` holds each name twice: under ``zone``, and under ``zone+`` as the head of a continuation.
    ``rubbed_zones`` are those in which strips or gates are rubs.
    """

    protocol: str
    steps: dict[str, StepWords]
    zones: dict[str, str]
    notes: dict[str, str]
    every_rub: str | None
    rubbed_zones: frozenset[str]

    def of(self, numbered: NumberedStep) -> StepWords:
        """The words of a step."""
        return self.steps[numbered.step.id]

    @property
    def big(self) -> list[StepWords]:
        """The steps that fill tiles."""
        return [words for words in self.steps.values() if words.is_big]

    @property
    def small(self) -> list[StepWords]:
        """Strips and gates."""
        return [words for words in self.steps.values() if not words.is_big]

    def repeated(self, parts: Sequence[ZonePart]) -> frozenset[str]:
        """The rubs of a sheet whose words stand on it before: their detail is told once, at the first."""
        told: set[tuple[str, str | None]] = set()
        found: set[str] = set()
        for numbered in (numbered for part in parts for numbered in part.steps):
            words = self.of(numbered)
            if not is_small_rub(numbered) or words.condition:
                continue
            if (words.headline, words.detail) in told:
                found.add(numbered.step.id)
            told.add((words.headline, words.detail))
        return frozenset(found)

    def note(self, zone: str, *, is_continued: bool, with_times: bool, with_notes: bool) -> str | None:
        """The note in the head of a zone: the time of every rub, where strips do not carry it, goes first."""
        texts = []
        if not with_times and self.every_rub and zone in self.rubbed_zones:
            texts.append(self.every_rub)
        if with_notes and zone in self.notes and not is_continued:
            texts.append(self.notes[zone])
        return " ".join(texts) or None


def words_of(context: SheetContext, phase: Phase, steps: Sequence[NumberedStep]) -> PosterWords:
    """Look up every text that the steps of a phase put on a poster."""
    wording, protocol = context.wording, context.protocol
    zones = {numbered.zone: context.zone_name(numbered.zone) for numbered in steps}
    continued = {f"{zone}+": wording.fixed("continued", zone=name) for zone, name in zones.items()}
    return PosterWords(
        protocol=protocol.id,
        steps={numbered.step.id: _step_words(context, numbered) for numbered in steps},
        zones=zones | continued,
        notes={
            zone: wording.content(f"{protocol.id}/phase/{phase.id}/note/{zone}")
            for zone in phase.notes
            if zone in zones
        },
        every_rub=_every_rub(context, steps),
        rubbed_zones=frozenset(numbered.zone for numbered in steps if is_small_rub(numbered)),
    )


def _step_words(context: SheetContext, numbered: NumberedStep) -> StepWords:
    step, protocol, wording = numbered.step, context.protocol, context.wording
    headline = wording.step_text(protocol, step, "text")
    assert headline is not None
    is_rub = is_small_rub(numbered)
    return StepWords(
        numbered,
        headline,
        wording.step_text(protocol, step, "detail"),
        context.seconds(step.action) if is_rub else None,
        wording.step_text(protocol, step, "caution"),
        context.condition_words(step),
        None if is_rub else context.untold_time(step),
        tuple(
            (container_message(context.ward, fixture), context.container_name(fixture) or "")
            for fixture in context.containers(step)
            if not fixture.code and fixture.name
        ),
    )


def is_small_rub(numbered: NumberedStep) -> bool:
    """Whether the step is a rub on a strip or a gate."""
    return numbered.is_hygiene and numbered.kind is not Kind.BIG


def _every_rub(context: SheetContext, steps: Sequence[NumberedStep]) -> str | None:
    """One sentence for the time of all small hygiene steps; None unless they agree."""
    times = {numbered.step.action.seconds for numbered in steps if is_small_rub(numbered)}
    if len(times) != 1 or None in times:
        return None
    (seconds,) = times
    assert seconds is not None
    return context.wording.fixed("every-rub", time=context.wording.seconds(seconds))
