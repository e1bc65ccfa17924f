"""Text in boxes: measuring, and the part of the fit ladder that one text can climb alone.

The ladder: balance the lines, drop soft ties, then smaller in half points down to the floor of the
role. What does not fit then is recorded as an overflow, never cut off and never shrunk unseen.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache, partial

from signage.ground.length import MM_PER_POINT
from signage.text.font_set import FontSet
from signage.text.line import Line
from signage.text.metrics import ScriptMetrics, metrics_of
from signage.text.paragraph import Paragraph, texts_in
from signage.text.setting import Setting
from signage.words.ties import soften
from signage.words.wording import Wording

POINT_STEP = 0.5


@dataclass(frozen=True)
class Face:
    """How a text is set: its language, script and fonts, its weight, and whether it is set for reading on."""

    language: str
    script: str
    fonts: FontSet
    weight: int = 400
    is_body: bool = False
    leading: float | None = None
    is_balanced: bool = True

    @staticmethod
    def of(
        wording: Wording,
        weight: int = 400,
        *,
        is_body: bool = False,
        leading: float | None = None,
        is_balanced: bool = True,
    ) -> Face:
        """The face of a text in the language and the fonts of a wording."""
        return _face(wording.tag, wording.script, wording.fonts, weight, is_body, leading, is_balanced)

    @cached_property
    def metrics(self) -> ScriptMetrics:
        """The vertical measures of its script in its fonts."""
        return metrics_of(self.script, self.fonts)

    def paragraph(self, text: str) -> Paragraph:
        """A text shaped in this face."""
        return texts_in(self.language, self.fonts).paragraph(text, self.weight)


_face = lru_cache(maxsize=128)(Face)
"""Few faces are asked for again and again; equal ones are one."""


@dataclass(frozen=True, slots=True, eq=False)
class Measured:
    """A text set in lines, in millimetres; ``height`` runs from the first ascent to the last descent."""

    setting: Setting
    em: float
    leading: float
    height: float

    @property
    def lines(self) -> tuple[Line, ...]:
        """Its lines with their glyphs."""
        return self.setting.lines

    @property
    def count(self) -> int:
        """How many lines there are."""
        return self.setting.count

    @property
    def width(self) -> float:
        """The widest line."""
        return max((line.width for line in self.lines), default=0.0) * self.em

    @property
    def ink_height(self) -> float:
        """From the highest ink of the first line to the lowest of the last."""
        ink = self.lines[0].ink_top - self.lines[-1].ink_bottom
        return ink * self.em + (self.count - 1) * self.leading


def measure(text: str, face: Face, points: float, width: float) -> Measured:
    """The text in lines of at most ``width`` mm at a nominal size in points."""
    metrics = face.metrics
    em = points * metrics.size_factor * MM_PER_POINT
    setting = face.paragraph(text).setting(width / em, balanced=face.is_balanced)
    factor = face.leading or (metrics.body_leading if face.is_body else metrics.headline_leading)
    height = (metrics.ascent + metrics.descent) * em + (setting.count - 1) * factor * em
    return Measured(setting, em, factor * em, height)


def line_width(text: str, face: Face, points: float) -> float:
    """Millimetres of the text on one line."""
    return face.paragraph(text).width * points * face.metrics.size_factor * MM_PER_POINT


@dataclass(frozen=True)
class Room:
    """The space a text may fill. Lengths in millimetres."""

    width: float
    height: float | None = None
    lines: int | None = None

    def excess(self, measured: Measured) -> float:
        """By how many millimetres the text is too large; 0 when it fits."""
        excess = measured.setting.widest * measured.em - self.width - 0.02
        if self.height is not None:
            excess = max(excess, measured.height - self.height - 0.02)
        if self.lines is not None and measured.count > self.lines:
            excess = max(excess, (measured.count - self.lines) * measured.leading)
        if measured.setting.breaks_word:
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
    """The sizes from the wanted one down in half points; the last is the floor itself."""
    sizes = [points]
    while sizes[-1] - POINT_STEP >= floor - 1e-9:
        sizes.append(sizes[-1] - POINT_STEP)
    if sizes[-1] - floor > 0.01:
        sizes.append(floor)
    return sizes


UNEVEN = 0.45
"""A line shorter than this share of the longest looks like a mistake; a soft tie yields to avoid it."""


def fit(text: str, face: Face, points: float, floor: float, room: Room) -> Fitted:
    """Climb the ladder for one text: the largest size that fits, or the floor with what is left over."""
    if floor >= points:
        return _fit_at(points, text, face, room)
    return largest_fitting(sizes_down(points, floor), partial(_fit_at, text=text, face=face, room=room))


def _fit_at(points: float, text: str, face: Face, room: Room) -> Fitted:
    """The text at one size, its soft ties loosened where it does not fit with them or looks uneven."""
    tied = _set(text, face, points, room, is_softened=False)
    loose = soften(text, face.language)
    if loose == text or not (tied.excess or tied.measured.setting.evenness < UNEVEN):
        return tied
    softened = _set(loose, face, points, room, is_softened=True)
    is_evener = not softened.excess and softened.measured.setting.evenness > tied.measured.setting.evenness
    return softened if tied.excess or is_evener else tied


def largest_fitting(sizes: Sequence[float], at: Callable[[float], Fitted]) -> Fitted:
    """The first of falling sizes without excess, else the last; what fits at a size fits at smaller ones."""
    first = at(sizes[0])
    if not first.excess or len(sizes) == 1:
        return first
    best = at(sizes[-1])
    if best.excess:
        return best
    too_large, fits = 0, len(sizes) - 1
    while fits - too_large > 1:
        middle = (too_large + fits) // 2
        tried = at(sizes[middle])
        if tried.excess:
            too_large = middle
        else:
            fits, best = middle, tried
    return best


def _set(text: str, face: Face, points: float, room: Room, *, is_softened: bool) -> Fitted:
    measured = measure(text, face, points, room.width)
    return Fitted(text, points, measured, room.excess(measured), is_softened)


def fit_ink(
    text: str, face: Face, points: float, floor: float, width: float, height: float | None = None
) -> Fitted:
    """One line, smaller until its ink is no wider and no higher than it may be."""

    def at(size: float) -> Fitted:
        measured = measure(text, face, size, 1e6)
        line = measured.lines[0]
        ink = (line.ink_top - line.ink_bottom) * measured.em
        excess = max(measured.width - width - 0.02, ink - height if height else 0.0, 0.0)
        return Fitted(text, size, measured, excess, is_softened=False)

    return largest_fitting(sizes_down(points, floor), at)


def common_size(texts: Sequence[str], face: Face, points: float, floor: float, room: Room) -> float:
    """One size for all texts of a role: the largest at which each fits, ties loosened where they must be."""
    size = points
    for text in texts:
        size = min(size, fit(text, face, size, floor, room).points)
    return size


def tallest(texts: Sequence[str], face: Face, points: float, width: float) -> float:
    """The height of the tallest of the texts at a size."""
    return max((measure(text, face, points, width).height for text in texts), default=0.0)


def shift_into(measured: Measured, face: Face, top: float, middle: float, height: float | None) -> float:
    """How far down a text must move so that its ink, with marks and descenders, keeps to a height."""
    if height is None:
        return 0.0
    ink_top = top + (face.metrics.ascent - measured.lines[0].ink_top) * measured.em
    above = middle - height / 2 - ink_top
    below = ink_top + measured.ink_height - middle - height / 2
    if above > 0 and below > 0:
        return (above - below) / 2
    return above if above > 0 else -below if below > 0 else 0.0
