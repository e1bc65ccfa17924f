"""Strips and gates: a line with number, sign and headline, and all else that the step says above or below it.

They grow with their words, so that a step without a picture of its own loses neither detail nor caution.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cached_property

from signage.compose.arrangement import Kind
from signage.compose.poster.measures import Measures
from signage.compose.poster.words import StepWords
from signage.compose.word_stack import Piece, StackSizes, WordStack
from signage.words.wording import Wording

TEXT_PAD = 3.2
"""From the edge of a card to its words, at k = 1."""

READ_IN_ACTION = 9.0
"""No text that is read in action is smaller, in points, on any sheet."""

_DETAIL = 10.5
_ABOVE, _BETWEEN, _FOOT = 1.8, 0.7, 2.4
_BELOW_BLOCK = 1.6
"""Under the block of a critical number, which accents of capitals must not touch."""


def compact_sizes(scale: float) -> StackSizes:
    """The sizes of the words below the line, which do not shrink: the card grows instead."""
    points = max(_DETAIL * scale, READ_IN_ACTION)
    return StackSizes(points, points)


@dataclass(frozen=True)
class CompactCard:
    """What one strip or gate holds. Lengths in millimetres; ``line`` is the height of its line."""

    above: WordStack
    below: WordStack
    line: float
    sizes: StackSizes
    scale: float
    is_critical: bool = False

    @property
    def line_top(self) -> float:
        """Where the line begins, from the top of the card."""
        if not self.above.pieces:
            return 0.0
        return _ABOVE * self.scale + self.above.height(self.sizes) + _BETWEEN * self.scale

    @property
    def below_top(self) -> float:
        """Where the words below the line begin."""
        gap = _BELOW_BLOCK if self.is_critical else _BETWEEN
        return self.line_top + self.line + gap * self.scale

    @property
    def above_top(self) -> float:
        """Where the words above the line begin."""
        return _ABOVE * self.scale

    @cached_property
    def height(self) -> float:
        """The whole height that the card needs."""
        if not self.below.pieces:
            return self.line_top + self.line
        return self.below_top + self.below.height(self.sizes) + _FOOT * self.scale


def compact_card(
    words: StepWords,
    protocol: str,
    measures: Measures,
    width: float,
    wording: Wording,
    *,
    has_detail: bool,
) -> CompactCard:
    """The strip or gate of a step on a card of a width."""
    k = measures.scale
    inner = width - 2 * TEXT_PAD * k
    below = words.below(protocol, has_detail=has_detail)
    line = measures.strip if words.numbered.kind is Kind.SMALL else measures.band
    return CompactCard(
        WordStack.of(_small(words.above()), inner, k, wording),
        WordStack.of(_small(below), inner, k, wording),
        line,
        compact_sizes(k),
        k,
        words.numbered.step.critical,
    )


def _small(pieces: Iterable[Piece]) -> list[Piece]:
    """The texts in type roles of their own: tiles set theirs in another size."""
    return [replace(piece, role=piece.role.on_strip) for piece in pieces]
