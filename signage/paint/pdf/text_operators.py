"""Lines of shaped text to text operators (ISO 32000-1, section 9.4)."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import groupby

from signage.drawing.marks import PlacedLine, TextMark
from signage.ground.geometry import rotation, scaling, translation
from signage.ground.glyphs import FontKey, Glyph, GlyphRun
from signage.paint.pdf import syntax
from signage.paint.pdf.composites import ClusterShape, Part
from signage.paint.pdf.fonts import EmbeddedFont
from signage.paint.pdf.operators import OperatorList

_LARGEST_KERN = 0.1
"""Ems. A single glyph whose advance is changed by more becomes a glyph of its own with that advance:
readers of the file would take the correction for a blank between words."""

_SILENT = dict.fromkeys([*range(0x2066, 0x206A), 0x200E, 0x200F, 0x061C, 0x0A, 0x0D])
"""Direction controls and line ends: they steer the layout and are no part of a searchable text."""

_NOTHING = "\u200b"
"""Stands for a cluster without text of its own; a missing entry is read as a control character."""


def show_text(operators: OperatorList, mark: TextMark, font_of: Callable[[FontKey], EmbeddedFont]) -> None:
    """One text object for all lines of a mark, in the order in which they are read."""
    operators.set_fill(mark.colour)
    code = operators.code
    code.append("BT")
    pen: tuple[float, float] | None = None
    for line in mark.lines:
        for run, x in _runs_in_reading_order(line, mark.size):
            if pen is None:
                code.append(f"{_first_position(mark, x, line.baseline)} Tm")
            elif pen != (x, line.baseline):
                code.append(f"{syntax.numbers((x - pen[0], pen[1] - line.baseline))} Td")
            pen = (x, line.baseline)
            font = font_of(run.font)
            operators.set_font(font.resource, mark.size)
            code.append(f"{_show_run(run, mark.text, font)} TJ")
    code.append("ET")


def _first_position(mark: TextMark, x: float, baseline: float) -> str:
    """The text matrix: the page's y grows downwards, that of glyphs upwards."""
    place = translation(x, baseline) @ scaling(1, -1)
    if mark.rotation:
        place = rotation(mark.rotation, *mark.pivot) @ place
    return syntax.matrix(place)


def _runs_in_reading_order(line: PlacedLine, size: float) -> list[tuple[GlyphRun, float]]:
    """Runs with the x of their left end, sorted by the text that they show."""
    placed: list[tuple[GlyphRun, float]] = []
    x = line.x
    for run in line.runs:
        placed.append((run, x))
        x += run.advance * size
    return sorted((item for item in placed if item[0].glyphs), key=lambda item: item[0].start)


def _show_run(run: GlyphRun, text: str, font: EmbeddedFont) -> str:
    """The array of a TJ operator: strings of CIDs, and corrections in thousandths of an em."""
    scale = 1000 / font.face.units_per_em
    words: list[str] = []
    cids: list[str] = []
    owed = 0
    for glyphs, cluster_text in _clusters(run, text):
        shape, before, after = _shape(glyphs, font)
        correction = round((owed + before) * scale, 1)
        if correction:
            if cids:
                words.append(f"<{''.join(cids)}>")
                cids = []
            words.append(syntax.number(-correction, 1))
        cids.append(f"{font.cid(shape, cluster_text):04X}")
        owed = after
    words.append(f"<{''.join(cids)}>")
    return f"[{''.join(words)}]"


def _clusters(run: GlyphRun, text: str) -> Iterator[tuple[list[Glyph], str]]:
    """Glyphs of one cluster each, with the text from its first character to the next cluster."""
    groups = [(start, list(glyphs)) for start, glyphs in groupby(run.glyphs, lambda glyph: glyph.cluster)]
    starts = sorted(start for start, _ in groups)
    ends = dict(zip(starts, [*starts[1:], run.end], strict=True))
    for start, glyphs in groups:
        first = run.start if start == starts[0] else start
        yield glyphs, text[first : ends[start]].translate(_SILENT) or _NOTHING


def _shape(glyphs: list[Glyph], font: EmbeddedFont) -> tuple[ClusterShape, int, int]:
    """The shape of a cluster, and the shifts to make before and after it, in font units."""
    units = font.face.units_per_em
    first = glyphs[0]
    advance = round(first.advance * units)
    if len(glyphs) == 1 and not first.y_offset:
        own_advance = font.advance(first.id)
        if abs(advance - own_advance) <= _LARGEST_KERN * units:
            shift = round(first.x_offset * units)
            return ClusterShape((Part(first.id, 0, 0),), own_advance), shift, advance - own_advance - shift
    pen = 0
    parts: list[Part] = []
    for glyph in glyphs:
        parts.append(Part(glyph.id, pen + round(glyph.x_offset * units), round(glyph.y_offset * units)))
        pen += round(glyph.advance * units)
    own_width = max(pen, 0)
    return ClusterShape(tuple(parts), own_width), 0, pen - own_width
