"""The words of a poster, looked up once, so that many layouts can be tried on them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from signage.compose.arrangement import Kind, NumberedStep
from signage.compose.context import SheetContext
from signage.model.library import Phase


@dataclass(frozen=True)
class StepWords:
    """One step: its headline, its detail where it has one, and its time in short words."""

    numbered: NumberedStep
    headline: str
    detail: str | None
    time: str | None

    @property
    def is_big(self) -> bool:
        """Whether it fills a tile."""
        return self.numbered.kind is Kind.BIG


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
        rubbed_zones=frozenset(numbered.zone for numbered in steps if _is_small_rub(numbered)),
    )


def _step_words(context: SheetContext, numbered: NumberedStep) -> StepWords:
    step, protocol, wording = numbered.step, context.protocol, context.wording
    headline = wording.step_text(protocol, step, "text")
    assert headline is not None
    return StepWords(
        numbered,
        headline,
        wording.step_text(protocol, step, "detail"),
        context.seconds(step.action) if numbered.is_hygiene else None,
    )


def _is_small_rub(numbered: NumberedStep) -> bool:
    return numbered.is_hygiene and numbered.kind is not Kind.BIG


def _every_rub(context: SheetContext, steps: Sequence[NumberedStep]) -> str | None:
    """One sentence for the time of all small hygiene steps; None unless they agree."""
    times = {numbered.step.action.seconds for numbered in steps if _is_small_rub(numbered)}
    if len(times) != 1 or None in times:
        return None
    (seconds,) = times
    assert seconds is not None
    return context.wording.fixed("every-rub", time=context.wording.seconds(seconds))


_SIGNS = {"outer": "sign-outer-glove", "inner": "sign-inner-glove", "skin": "sign-bare-hand"}


def sign_of(context: SheetContext, numbered: NumberedStep) -> str:
    """The picture of a small step: the hand layer that is rubbed, or the picture of the step itself."""
    if not numbered.is_hygiene:
        return numbered.step.picture
    garments = context.library.garments
    layer = garments.get(numbered.step.action.layer or "")
    if layer is None:
        return _SIGNS["skin"]
    covered = any(layer.id in other.over and other.kind == layer.kind for other in garments.values())
    return _SIGNS["inner" if covered else "outer"]
