"""Text in boxes: measuring, and the part of the fit ladder that one text can climb alone.

The ladder: balance the lines, drop soft ties, then smaller in half points down to the floor of the
role. What does not fit then is recorded as an overflow, never cut off and never shrunk unseen.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from signage.ground.length import MM_PER_POINT
from signage.text.metrics import ScriptMetrics, metrics_of
from signage.text.line import Line
from signage.text.paragraph import Paragraph, shape_paragraph
from signage.words.ties import soften

POINT_STEP = 0.5


@dataclass(frozen=True)
class Face:
    """How a text is set: its language and script, its weight, and whether lines are set for reading on."""

    language: str
    script: str
    weight: int = 400
    is_body: bool = False
    leading: float | None = None
    is_balanced: bool = True

    @property
    def metrics(self) -> ScriptMetrics:
        """The vertical measures of its script."""
        return metrics_of(self.script)


@dataclass(frozen=True)
class Measured:
    """A text set in lines, in millimetres; ``height`` runs from the first ascent to the last descent."""

    paragraph: Paragraph
    lines: tuple[Line, ...]
    em: float
    leading: float
    height: float

    @property
    def width(self) -> float:
        """The widest line."""
        return max((line.width for line in self.lines), default=0.0) * self.em

    @property
    def breaks_word(self) -> bool:
        """Whether a word had to be broken."""
        return any(line.breaks_word for line in self.lines)

    @property
    def evenness(self) -> float:
        """The shortest line as a share of the longest."""
        widths = [line.width for line in self.lines]
        return min(widths) / max(widths) if widths and max(widths) else 1.0


@lru_cache(maxsize=65536)
def measure(text: str, face: Face, points: float, width: float) -> Measured:
    """The text in lines of at most ``width`` mm at a nominal size in points."""
    metrics = face.metrics
    em = points * metrics.size_factor * MM_PER_POINT
    paragraph = shape_paragraph(text, face.language, face.weight)
    lines = paragraph.lines(width / em, balanced=face.is_balanced)
    factor = face.leading or (metrics.body_leading if face.is_body else metrics.headline_leading)
    height = (metrics.ascent + metrics.descent) * em + (len(lines) - 1) * factor * em
    return Measured(paragraph, lines, em, factor * em, height)


def line_width(text: str, face: Face, points: float) -> float:
    """Millimetres of the text on one line."""
    return (
        shape_paragraph(text, face.language, face.weight).width
        * points
        * face.metrics.size_factor
        * MM_PER_POINT
    )


@dataclass(frozen=True)
class Room:
    """The space a text may fill. Lengths in millimetres."""

    width: float
    height: float | None = None
    lines: int | None = None

    def excess(self, measured: Measured) -> float:
        """By how many millimetres the text is too large; 0 when it fits."""
        excess = measured.width - self.width - 0.02
        if self.height is not None:
            excess = max(excess, measured.height - self.height - 0.02)
        if self.lines is not None and len(measured.lines) > self.lines:
            excess = max(excess, (len(measured.lines) - self.lines) * measured.leading)
        if measured.breaks_word:
            excess = max(excess, 0.1)
        return max(0.0, excess)


@dataclass(frozen=True)
class Fitted:
    """The end of a climb: the text as set (ties may be gone), its size, and what is left over."""

    text: str
    points: float
    measured: Measured
    excess: float
    is_softened: bool


def sizes_down(points: float, floor: float) -> list[float]:
    """The sizes from the wanted one down to the floor in half points."""
    sizes = [points]
    while sizes[-1] - POINT_STEP >= floor - 1e-9:
        sizes.append(sizes[-1] - POINT_STEP)
    return sizes


UNEVEN = 0.45
"""A line shorter than this share of the longest looks like a mistake; a soft tie yields to avoid it."""


def fit(text: str, face: Face, points: float, floor: float, room: Room) -> Fitted:
    """Climb the ladder for one text."""
    loose = soften(text, face.language)
    last: Fitted | None = None
    for size in sizes_down(points, floor):
        last = _set(text, face, size, room, is_softened=False)
        if loose != text and (last.excess or last.measured.evenness < UNEVEN):
            softened = _set(loose, face, size, room, is_softened=True)
            if last.excess or (not softened.excess and softened.measured.evenness > last.measured.evenness):
                last = softened
        if not last.excess:
            return last
    assert last is not None
    return last


def _set(text: str, face: Face, points: float, room: Room, *, is_softened: bool) -> Fitted:
    measured = measure(text, face, points, room.width)
    return Fitted(text, points, measured, room.excess(measured), is_softened)


def fit_ink(
    text: str, face: Face, points: float, floor: float, width: float, height: float | None = None
) -> Fitted:
    """One line, smaller until its ink is no wider and no higher than it may be."""
    measured, excess, size = None, 0.0, points
    for size in sizes_down(points, floor):
        measured = measure(text, face, size, 1e6)
        line = measured.lines[0]
        ink = (line.ink_top - line.ink_bottom) * measured.em
        excess = max(measured.width - width - 0.02, ink - height if height else 0.0, 0.0)
        if not excess:
            break
    assert measured is not None
    return Fitted(text, size, measured, excess, is_softened=False)


def common_size(texts: Sequence[str], face: Face, points: float, floor: float, room: Room) -> float:
    """One size for all texts of a role: the largest at which each fits, ties loosened where they must be."""
    size = points
    for text in texts:
        size = min(size, fit(text, face, size, floor, room).points)
    return size


def tallest(texts: Sequence[str], face: Face, points: float, width: float) -> float:
    """The height of the tallest of the texts at a size."""
    return max((measure(text, face, points, width).height for text in texts), default=0.0)
