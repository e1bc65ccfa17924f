"""The Unicode Bidirectional Algorithm, UAX #9: levels of characters and their order on a line.

The clause stands beside the lines that obey it. Character classes come from Python's Unicode data.
``bidi_runs`` holds the rules that work on one isolating run sequence.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import TypeVar

from signage.text.bidi_runs import ISOLATE_INITIATORS, REMOVED_BY_X9, RunSequence, resolve_sequence

MAX_DEPTH = 125
"""The deepest explicit level (BD2)."""

_EMBEDDINGS = frozenset({"LRE", "RLE", "LRO", "RLO"})
_NEEDS_ALGORITHM = frozenset({"R", "AL", "AN", "FSI", "LRI", "RLI"}) | _EMBEDDINGS

Piece = TypeVar("Piece")


@cache
def bidi_class(character: str) -> str:
    """Bidi_Class of a character; left-to-right where it is not assigned."""
    return unicodedata.bidirectional(character) or "L"


def first_strong_level(text: str) -> int | None:
    """The level by the first strong character outside isolates (P2, P3): 0, 1, or None without one."""
    return _first_strong([bidi_class(character) for character in text])


def levels(text: str, base_level: int | None = None) -> list[int]:
    """The embedding level of every character, L1 applied within paragraphs and at their ends.

    ``base_level`` 0 or 1 is the level of every paragraph; None takes it from the first strong character
    of each, with 0 where there is none (P2, P3).
    """
    classes = [bidi_class(character) for character in text]
    result: list[int] = []
    start = 0
    while start < len(classes):  # P1: each paragraph for itself, with its separator
        end = next((i + 1 for i in range(start, len(classes)) if classes[i] == "B"), len(classes))
        result += _paragraph_levels(text[start:end], classes[start:end], base_level)
        start = end
    return result


def in_visual_order(pieces: Sequence[Piece], piece_levels: Sequence[int]) -> list[Piece]:
    """Pieces of one line, given in logical order with the level of each, from left to right (L2)."""
    numbered = list(zip(piece_levels, pieces, strict=True))
    odd_levels = [level for level in piece_levels if level % 2]
    if odd_levels:
        for level in range(max(piece_levels), min(odd_levels) - 1, -1):
            _reverse_stretches(numbered, level)
    return [piece for _, piece in numbered]


def _reverse_stretches(numbered: list[tuple[int, Piece]], level: int) -> None:
    i = 0
    while i < len(numbered):
        j = i
        while j < len(numbered) and numbered[j][0] >= level:
            j += 1
        numbered[i:j] = numbered[i:j][::-1]
        i = max(j, i + 1)


def _first_strong(classes: Sequence[str], start: int = 0, *, inside_isolate: bool = False) -> int | None:
    """P2 and P3, from ``start``; with ``inside_isolate`` only up to the matching PDI (X5c)."""
    depth = 0
    for i in range(start, len(classes)):
        kind = classes[i]
        if kind in ISOLATE_INITIATORS:
            depth += 1
        elif kind == "PDI":
            if depth == 0 and inside_isolate:
                return None
            depth = max(0, depth - 1)
        elif depth == 0 and kind in {"L", "R", "AL"}:
            return 0 if kind == "L" else 1
    return None


def _paragraph_levels(text: str, original: list[str], base_level: int | None) -> list[int]:
    base = (_first_strong(original) or 0) if base_level is None else base_level
    if base == 0 and _NEEDS_ALGORITHM.isdisjoint(original):
        return [0] * len(text)
    matching = _matching_isolates(original)
    result, classes = _explicit_levels(original, base, matching)
    for sequence in _isolating_run_sequences(original, result, base, matching):
        resolve_sequence(text, original, classes, result, sequence)
    _give_removed_characters_levels(original, result, base)
    _reset_separators(original, result, base)
    return result


def _matching_isolates(classes: Sequence[str]) -> dict[int, int]:
    """Index of the matching PDI of each isolate initiator that has one (BD9)."""
    matching: dict[int, int] = {}
    open_isolates: list[int] = []
    for i, kind in enumerate(classes):
        if kind in ISOLATE_INITIATORS:
            open_isolates.append(i)
        elif kind == "PDI" and open_isolates:
            matching[open_isolates.pop()] = i
    return matching


@dataclass(slots=True)
class _DirectionalStatus:
    """An entry of the directional status stack (X1)."""

    level: int
    override: str | None
    is_isolate: bool


class _ExplicitState:
    """The stack and the three counters of X1."""

    def __init__(self, base: int) -> None:
        self.stack = [_DirectionalStatus(base, None, is_isolate=False)]
        self.overflow_isolates = 0
        self.overflow_embeddings = 0
        self.valid_isolates = 0

    @property
    def last(self) -> _DirectionalStatus:
        return self.stack[-1]

    def _next_level(self, is_right_to_left: bool) -> int | None:
        """The next greater odd or even level, or None on overflow (X2 to X5b)."""
        level = (self.last.level + 1) | 1 if is_right_to_left else (self.last.level + 2) & ~1
        fits = level <= MAX_DEPTH and not self.overflow_isolates and not self.overflow_embeddings
        return level if fits else None

    def embed(self, kind: str) -> None:
        """X2 to X5: embeddings and overrides."""
        level = self._next_level(kind[0] == "R")
        if level is not None:
            override = kind[0] if kind[2] == "O" else None
            self.stack.append(_DirectionalStatus(level, override, is_isolate=False))
        elif not self.overflow_isolates:
            self.overflow_embeddings += 1

    def isolate(self, is_right_to_left: bool) -> None:
        """X5a and X5b: isolate initiators."""
        level = self._next_level(is_right_to_left)
        if level is None:
            self.overflow_isolates += 1
        else:
            self.valid_isolates += 1
            self.stack.append(_DirectionalStatus(level, None, is_isolate=True))

    def end_isolate(self) -> None:
        """X6a: PDI."""
        if self.overflow_isolates:
            self.overflow_isolates -= 1
        elif self.valid_isolates:
            self.overflow_embeddings = 0
            while not self.last.is_isolate:
                self.stack.pop()
            self.stack.pop()
            self.valid_isolates -= 1

    def end_embedding(self) -> None:
        """X7: PDF."""
        if self.overflow_isolates:
            return
        if self.overflow_embeddings:
            self.overflow_embeddings -= 1
        elif not self.last.is_isolate and len(self.stack) > 1:
            self.stack.pop()


def _explicit_levels(
    original: Sequence[str], base: int, matching: dict[int, int]
) -> tuple[list[int], list[str]]:
    """X1 to X8: explicit levels, and the classes after overrides."""
    state = _ExplicitState(base)
    result = [base] * len(original)
    classes = list(original)
    for i, kind in enumerate(original):
        if kind == "B":  # X8: a paragraph separator ends everything
            continue
        if kind == "PDI":
            state.end_isolate()
        result[i] = state.last.level
        if kind in _EMBEDDINGS:
            state.embed(kind)
        elif kind == "PDF":
            state.end_embedding()
        elif kind != "BN":  # X5a, X5b, X6, X6a: an override also holds for isolate characters
            classes[i] = state.last.override or kind
            if kind in ISOLATE_INITIATORS:
                state.isolate(_is_right_to_left_isolate(original, i, matching))
    return result, classes


def _is_right_to_left_isolate(original: Sequence[str], index: int, matching: dict[int, int]) -> bool:
    if original[index] != "FSI":
        return original[index] == "RLI"
    content = original[: matching.get(index, len(original))]  # X5c: as P2 and P3 on what it isolates
    return _first_strong(content, index + 1, inside_isolate=True) == 1


def _isolating_run_sequences(
    original: Sequence[str], explicit: Sequence[int], base: int, matching: dict[int, int]
) -> list[RunSequence]:
    """X9 and X10 (BD7, BD13): level runs without removed characters, joined across isolates."""
    runs: list[list[int]] = []
    for i, kind in enumerate(original):
        if kind in REMOVED_BY_X9:
            continue
        if runs and explicit[i] == explicit[runs[-1][-1]]:
            runs[-1].append(i)
        else:
            runs.append([i])
    run_at = {run[0]: run for run in runs}
    continued = set(matching.values())
    sequences: list[RunSequence] = []
    for run in runs:
        if run[0] in continued:
            continue
        indices = list(run)
        while indices[-1] in matching:
            indices += run_at[matching[indices[-1]]]
        sequences.append(_with_boundaries(indices, original, explicit, base, matching))
    return sequences


def _with_boundaries(
    indices: list[int],
    original: Sequence[str],
    explicit: Sequence[int],
    base: int,
    matching: dict[int, int],
) -> RunSequence:
    """X10: start-of-sequence and end-of-sequence, from the higher of the two adjoining levels."""
    level = explicit[indices[0]]
    before = indices[0] - 1
    while before >= 0 and original[before] in REMOVED_BY_X9:
        before -= 1
    after = indices[-1] + 1
    while after < len(original) and original[after] in REMOVED_BY_X9:
        after += 1
    is_open = original[indices[-1]] in ISOLATE_INITIATORS and indices[-1] not in matching
    level_before = explicit[before] if before >= 0 else base
    level_after = base if is_open or after >= len(original) else explicit[after]
    return RunSequence(
        indices,
        level,
        "R" if max(level, level_before) % 2 else "L",
        "R" if max(level, level_after) % 2 else "L",
    )


def _give_removed_characters_levels(original: Sequence[str], result: list[int], base: int) -> None:
    """Section 5.2: characters that X9 would remove take the level of the character before them."""
    for i, kind in enumerate(original):
        if kind in REMOVED_BY_X9:
            result[i] = result[i - 1] if i else base


def _reset_separators(original: Sequence[str], result: list[int], base: int) -> None:
    """L1: separators, and white space before them or at the end, take the level of the paragraph."""
    resets = True
    for i in range(len(original) - 1, -1, -1):
        kind = original[i]
        if kind in {"B", "S"}:
            resets = True
            result[i] = base
        elif kind in {"WS", "PDI"} or kind in ISOLATE_INITIATORS or kind in REMOVED_BY_X9:
            if resets:
                result[i] = base
        else:
            resets = False
