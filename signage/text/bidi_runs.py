"""UAX #9 on one isolating run sequence: weak types, bracket pairs, neutral types, implicit levels."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from signage.text.brackets import CLOSING, CLOSING_OF, canonical_bracket

ISOLATE_INITIATORS = frozenset({"LRI", "RLI", "FSI"})
REMOVED_BY_X9 = frozenset({"LRE", "RLE", "LRO", "RLO", "PDF", "BN"})

_NEUTRAL_OR_ISOLATE = frozenset({"B", "S", "WS", "ON", "PDI"}) | ISOLATE_INITIATORS
_BRACKET_STACK = 63
"""Capacity of the stack for bracket pairs (BD16)."""

_STRONG_FOR_NEUTRALS = {"L": "L", "R": "R", "EN": "R", "AN": "R"}
"""Numbers count as right-to-left for N0, N1 and N2."""


@dataclass(frozen=True, slots=True)
class RunSequence:
    """An isolating run sequence (BD13): indices of its characters, its level, sos and eos (X10)."""

    indices: list[int]
    level: int
    start_of_sequence: str
    end_of_sequence: str


def resolve_sequence(
    text: str, original: Sequence[str], classes: Sequence[str], levels: list[int], sequence: RunSequence
) -> None:
    """Rules W1 to W7, N0 to N2, I1 and I2; writes the resolved levels of the sequence into ``levels``."""
    kinds = [classes[i] for i in sequence.indices]
    _resolve_marks(kinds, sequence.start_of_sequence)
    _resolve_numbers(kinds, sequence.start_of_sequence)
    _resolve_separators(kinds)
    _resolve_terminators(kinds)
    _resolve_left_over_weak(kinds, sequence.start_of_sequence)
    characters = [text[i] for i in sequence.indices]
    was_mark = [original[i] == "NSM" for i in sequence.indices]
    _resolve_brackets(kinds, characters, was_mark, sequence)
    _resolve_neutrals(kinds, sequence)
    for kind, i in zip(kinds, sequence.indices, strict=True):
        levels[i] = _implicit_level(kind, sequence.level)


def _resolve_marks(kinds: list[str], previous: str) -> None:
    for i, kind in enumerate(kinds):  # W1: a mark takes the type of what it stands on
        if kind == "NSM":
            kinds[i] = "ON" if previous in ISOLATE_INITIATORS or previous == "PDI" else previous
        previous = kinds[i]


def _resolve_numbers(kinds: list[str], last_strong: str) -> None:
    for i, kind in enumerate(kinds):  # W2: European numbers after an Arabic letter
        if kind in {"L", "R", "AL"}:
            last_strong = kind
        elif kind == "EN" and last_strong == "AL":
            kinds[i] = "AN"
    for i, kind in enumerate(kinds):  # W3
        if kind == "AL":
            kinds[i] = "R"


def _resolve_separators(kinds: list[str]) -> None:
    for i in range(1, len(kinds) - 1):  # W4: one separator between two numbers of a kind
        before, kind, after = kinds[i - 1 : i + 2]
        if before == after and (
            (kind == "ES" and before == "EN") or (kind == "CS" and before in {"EN", "AN"})
        ):
            kinds[i] = before


def _resolve_terminators(kinds: list[str]) -> None:
    i = 0
    while i < len(kinds):  # W5: terminators beside European numbers
        if kinds[i] != "ET":
            i += 1
            continue
        end = i
        while end < len(kinds) and kinds[end] == "ET":
            end += 1
        if (i and kinds[i - 1] == "EN") or (end < len(kinds) and kinds[end] == "EN"):
            kinds[i:end] = ["EN"] * (end - i)
        i = end


def _resolve_left_over_weak(kinds: list[str], last_strong: str) -> None:
    for i, kind in enumerate(kinds):
        if kind in {"ES", "ET", "CS"}:  # W6
            kinds[i] = "ON"
        elif kind in {"L", "R"}:
            last_strong = kind
        elif kind == "EN" and last_strong == "L":  # W7
            kinds[i] = "L"


def _bracket_pairs(kinds: Sequence[str], characters: Sequence[str]) -> list[tuple[int, int]]:
    """BD16: the pairs in the order of their opening brackets; a full stack ends the search."""
    stack: list[tuple[str, int]] = []
    pairs: list[tuple[int, int]] = []
    for i, character in enumerate(characters):
        if kinds[i] != "ON":
            continue
        if character in CLOSING_OF:
            if len(stack) == _BRACKET_STACK:
                break
            stack.append((canonical_bracket(CLOSING_OF[character]), i))
        elif character in CLOSING:
            wanted = canonical_bracket(character)
            for depth in range(len(stack) - 1, -1, -1):
                if stack[depth][0] == wanted:
                    pairs.append((stack[depth][1], i))
                    del stack[depth:]
                    break
    return sorted(pairs)


def _resolve_brackets(
    kinds: list[str], characters: Sequence[str], was_mark: Sequence[bool], sequence: RunSequence
) -> None:
    """N0: brackets take the direction of what they hold, or of what stands before them."""
    embedding = "R" if sequence.level % 2 else "L"
    for opening, closing in _bracket_pairs(kinds, characters):
        inside = {_STRONG_FOR_NEUTRALS.get(kind) for kind in kinds[opening + 1 : closing]} - {None}
        if not inside:  # N0 d
            continue
        direction = embedding  # N0 b
        if embedding not in inside:  # N0 c: only the opposite direction stands inside
            opposite = "L" if embedding == "R" else "R"
            before = (_STRONG_FOR_NEUTRALS.get(kind) for kind in reversed(kinds[:opening]))
            context = next((strong for strong in before if strong), sequence.start_of_sequence)
            direction = opposite if context == opposite else embedding
        for bracket in (opening, closing):
            kinds[bracket] = direction
            mark = bracket + 1
            while mark < len(kinds) and was_mark[mark]:  # marks on a bracket follow it
                kinds[mark] = direction
                mark += 1


def _resolve_neutrals(kinds: list[str], sequence: RunSequence) -> None:
    embedding = "R" if sequence.level % 2 else "L"
    i = 0
    while i < len(kinds):
        if kinds[i] not in _NEUTRAL_OR_ISOLATE:
            i += 1
            continue
        end = i
        while end < len(kinds) and kinds[end] in _NEUTRAL_OR_ISOLATE:
            end += 1
        before = _STRONG_FOR_NEUTRALS[kinds[i - 1]] if i else sequence.start_of_sequence
        after = _STRONG_FOR_NEUTRALS[kinds[end]] if end < len(kinds) else sequence.end_of_sequence
        direction = before if before == after else embedding  # N1, else N2
        kinds[i:end] = [direction] * (end - i)
        i = end


def _implicit_level(kind: str, level: int) -> int:
    if level % 2:  # I2
        return level + (kind in {"L", "EN", "AN"})
    return level + {"R": 1, "AN": 2, "EN": 2}.get(kind, 0)  # I1
