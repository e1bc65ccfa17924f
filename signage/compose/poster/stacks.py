"""The words of a poster below each other: measured once for each width, however many layouts try it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from signage.compose.arrangement import NumberedStep, ZonePart
from signage.compose.furniture.grid import Grid
from signage.compose.poster.compact_card import CompactCard, compact_card
from signage.compose.poster.layout import CompactHeights
from signage.compose.poster.measures import Measures
from signage.compose.poster.words import PosterWords, StepWords
from signage.compose.word_stack import WordStack
from signage.words.wording import Wording


class PosterStacks:
    """The stacks of tiles, strips and gates of a poster on one paper; they live as long as it is composed."""

    def __init__(self, words: PosterWords, wording: Wording) -> None:
        self.words, self.wording = words, wording
        self._tiles: dict[tuple[str, float, float], WordStack] = {}
        self._cards: dict[tuple[str, float, float, bool], CompactCard] = {}

    def tile(self, words: StepWords, width: float, scale: float) -> WordStack:
        """All words of a big step in a column of a width, at the scale of a sheet."""
        key = words.numbered.step.id, width, scale
        if key not in self._tiles:
            pieces = words.all(self.words.protocol)
            self._tiles[key] = WordStack.of(pieces, width, scale, self.wording)
        return self._tiles[key]

    def cards(self, parts: Sequence[ZonePart], measures: Measures, grid: Grid) -> dict[str, CompactCard]:
        """The strips and gates of a sheet by step."""
        repeated = self.words.repeated(parts)
        return {
            numbered.step.id: self._card(
                numbered, measures, grid.width, has_detail=numbered.step.id not in repeated
            )
            for part in parts
            for numbered in _compact(part)
        }

    def _card(
        self, numbered: NumberedStep, measures: Measures, width: float, *, has_detail: bool
    ) -> CompactCard:
        key = numbered.step.id, width, measures.scale, has_detail
        if key not in self._cards:
            words, protocol = self.words.of(numbered), self.words.protocol
            self._cards[key] = compact_card(
                words, protocol, measures, width, self.wording, has_detail=has_detail
            )
        return self._cards[key]

    def heights(self, measures: Measures) -> CompactHeights:
        """How high the strips and gates of a sheet are."""

        def heights_of(parts: Sequence[ZonePart], grid: Grid) -> Mapping[str, float]:
            cards = self.cards(parts, measures, grid)
            return {step: card.height for step, card in cards.items()}

        return heights_of


def _compact(part: ZonePart) -> tuple[NumberedStep, ...]:
    return (*part.gates, *(step for module in part.modules for step in module.hanging))
