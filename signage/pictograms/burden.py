"""How much a scene paints once its groups, mirror images and parts are written out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from signage.ground.geometry import Path
from signage.pictograms.kit.bounds import DEEPEST_GROUP, MOST_LAYERS
from signage.pictograms.kit.nodes import CANVAS, Node, Operation, flatten
from signage.pictograms.schema import Layer

FARTHEST_PAINTED = 100 * CANVAS
"""Units; what is moved and scaled may lie farther out than what is written, before it is cropped."""

MOST_PASSES = 300
"""Passes of paint; the fullest picture that ships has 127."""

MOST_SEGMENTS = 5000
"""Pieces of outline that are painted or that cut paint, as often as they do; 1,436 in the fullest."""

MOST_CHORDS = 2000
"""Straight pieces that stand for all outlines, each counted once; 678 in the fullest picture."""

MOST_CROSSINGS = 1500
"""Places where outlines cross, themselves or each other; 442 in the fullest picture."""

Location = tuple[str | int, ...]
_Chord = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Excess:
    """The layer with which a scene becomes too much to draw, and why."""

    location: Location
    message: str


@dataclass(slots=True)
class _Count:
    passes: int = 0
    farthest: float = 0.0
    thinnest: float = 1.0
    segments: int = 0
    chords: list[_Chord] = field(default_factory=list)
    seen: set[Path] = field(default_factory=set)

    def add(self, operation: Operation) -> None:
        members = [member.path for group in operation.within for member in group]
        self.passes += 1
        self.segments += len(operation.path) + sum(map(len, members))
        for path in (operation.path, *members):
            if path not in self.seen:
                self.seen.add(path)
                self.chords += _chords(path)
        numbers = (value for segment in operation.path for value in segment[1:])
        if operation.width < 0 or not operation.is_filled:
            self.thinnest = min(self.thinnest, operation.width)
        self.farthest = max(self.farthest, operation.width, *(abs(float(value)) for value in numbers))

    def excess(self) -> str:
        """What is too much, as a sentence; empty where all is within bounds."""
        if self.thinnest <= 0:
            return f"a line {self.thinnest:g} units wide was found; a width above 0 was wanted"
        if self.farthest > FARTHEST_PAINTED:
            return f"paint reaches beyond {FARTHEST_PAINTED:g} units from the canvas; nearer was wanted"
        if self.passes > MOST_PASSES:
            return _too_many(MOST_PASSES, "passes of paint")
        if len(self.chords) > MOST_CHORDS:
            return _too_many(MOST_CHORDS, "pieces of outline")
        if self.segments > MOST_SEGMENTS:
            return _too_many(MOST_SEGMENTS, "pieces of outline, counted as often as they paint or cut,")
        return ""


def _too_many(bound: int, things: str) -> str:
    return f"more than {bound} {things} were found up to this layer; at most that many were wanted in a scene"


def crowding(layers: Sequence[Layer]) -> Excess | None:
    """Whether there are too many layers, or groups too deep within each other."""
    found = 0
    waiting: list[tuple[Location, Layer]] = []
    waiting += [(("layers", index), layer) for index, layer in reversed(list(enumerate(layers)))]
    while waiting:
        location, layer = waiting.pop()
        found += 1
        depth = location.count("group")
        if found > MOST_LAYERS:
            return Excess(location, f"this is layer {found}; at most {MOST_LAYERS} were wanted in a scene")
        if depth > DEEPEST_GROUP:
            return Excess(
                location, f"this is group {depth} within another; at most {DEEPEST_GROUP} were wanted"
            )
        children = list(enumerate(layer.group or ()))
        waiting += [((*location, "group", index), child) for index, child in reversed(children)]
    return None


def overload(nodes: Sequence[Node]) -> Excess | None:
    """Whether the layers are too much to draw; nothing is written out further than to the first excess."""
    count = _Count()
    ends: list[int] = []
    for index, node in enumerate(nodes):
        for operation in flatten(node):
            count.add(operation)
            excess = count.excess()
            if excess:
                return Excess(("layers", index), excess)
        ends.append(len(count.chords))
    if crossings(count.chords) <= MOST_CROSSINGS:
        return None
    first = next(index for index, end in enumerate(ends) if crossings(count.chords[:end]) > MOST_CROSSINGS)
    return Excess(("layers", first), _too_many(MOST_CROSSINGS, "places where outlines cross"))


def crossings(chords: Sequence[_Chord]) -> int:
    """How often chords cross each other, counted up to just beyond ``MOST_CROSSINGS``.

    A sweep from left to right: only chords whose spans overlap are compared.
    """
    found = 0
    open_chords: list[_Chord] = []
    for chord in sorted(min((c, (c[2], c[3], c[0], c[1]))) for c in chords):
        open_chords = [other for other in open_chords if other[2] >= chord[0]]
        low, high = sorted((chord[1], chord[3]))
        for other in open_chords:
            if max(other[1], other[3]) > low and min(other[1], other[3]) < high and _cross(chord, other):
                found += 1
        if found > MOST_CROSSINGS:
            break
        open_chords.append(chord)
    return found


def _cross(first: _Chord, second: _Chord) -> bool:
    """Whether two chords cross between their ends; chords that only meet do not."""
    return (
        _side(first, second[0], second[1]) * _side(first, second[2], second[3]) < 0
        and _side(second, first[0], first[1]) * _side(second, first[2], first[3]) < 0
    )


def _side(chord: _Chord, x: float, y: float) -> float:
    return (chord[2] - chord[0]) * (y - chord[1]) - (chord[3] - chord[1]) * (x - chord[0])


def _chords(path: Path) -> Iterator[_Chord]:
    """The straight pieces that stand for an outline: two for a curve, through its middle."""
    start = position = (0.0, 0.0)
    for segment in path:
        numbers = [float(value) for value in segment[1:]]
        if segment[0] == "M":
            start = position = (numbers[0], numbers[1])
            continue
        end = start if segment[0] == "Z" else (numbers[-2], numbers[-1])
        if segment[0] == "C":
            middle = (
                (position[0] + 3 * numbers[0] + 3 * numbers[2] + end[0]) / 8,
                (position[1] + 3 * numbers[1] + 3 * numbers[3] + end[1]) / 8,
            )
            yield (*position, *middle)
            yield (*middle, *end)
        else:
            yield (*position, *end)
        position = end
