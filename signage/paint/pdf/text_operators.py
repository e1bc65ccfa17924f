"""Lines of shaped text to text operators (ISO 32000-1, section 9.4)."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from itertools import pairwise

from signage.drawing.marks import PlacedLine, TextMark
from signage.ground.geometry import rotation, scaling, translation
from signage.ground.glyphs import FontKey, GlyphRun
from signage.paint.pdf import syntax
from signage.paint.pdf.fonts import ClusterCode, EmbeddedFont
from signage.paint.pdf.operators import OperatorList

_SILENT = dict.fromkeys([*range(0x2066, 0x206A), 0x200E, 0x200F, 0x061C, 0x0A, 0x0D])
"""Direction controls and line ends: they steer the layout and are no part of a searchable text."""

_JOINERS = "\u200c\u200d"

_STEERING = frozenset(map(chr, _SILENT)) | set(_JOINERS)
"""What is not found in a text as it stands there (see ``_text_to_find``)."""

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
    if len(line.runs) == 1:
        return [(line.runs[0], line.x)] if line.runs[0].glyphs else []
    placed: list[tuple[GlyphRun, float]] = []
    x = line.x
    for run in line.runs:
        placed.append((run, x))
        x += run.advance * size
    return sorted((item for item in placed if item[0].glyphs), key=lambda item: item[0].start)


def _show_run(run: GlyphRun, text: str, font: EmbeddedFont) -> str:
    """The array of a TJ operator: strings of CIDs, and corrections in thousandths of an em."""
    scale = 1000 / font.face.units_per_em
    words = ["[<"]
    owed = 0
    for cid, before, after in _codes(run, text, font):
        correction = (owed + before) * scale
        if correction:
            words.append(f">{syntax.number(-correction, 1)}<")
        words.append(cid)
        owed = after
    words.append(">]")
    return "".join(words).replace("<>", "")


def _codes(run: GlyphRun, text: str, font: EmbeddedFont) -> list[ClusterCode]:
    """The codes of the clusters, each with the text from its first character to the next cluster."""
    glyphs, is_right_to_left = run.glyphs, run.is_right_to_left
    clusters = [glyph.cluster for glyph in glyphs]
    places = range(run.start, run.end)
    if clusters == list(reversed(places) if is_right_to_left else places):
        letters = text[run.start : run.end]
        if _STEERING.isdisjoint(letters):
            return list(map(font.code_of_one, glyphs, letters[::-1] if is_right_to_left else letters))
    starts = sorted(set(clusters))
    edges = [run.start, *starts[1:], run.end]
    texts = [_text_to_find(text[start:end], is_right_to_left) for start, end in pairwise(edges)]
    if len(starts) == len(glyphs):
        in_order = starts[::-1] if is_right_to_left else starts
        if clusters == in_order:
            return list(map(font.code_of_one, glyphs, reversed(texts) if is_right_to_left else texts))
    text_of = dict(zip(starts, texts, strict=True))
    heads = [i for i, cluster in enumerate(clusters) if i == 0 or cluster != clusters[i - 1]]
    return [font.code(glyphs[i:end], text_of[clusters[i]]) for i, end in pairwise([*heads, len(glyphs)])]


@lru_cache(maxsize=4096)
def _text_to_find(cluster: str, is_right_to_left: bool) -> str:
    """What readers of the file get for a cluster.

    They turn right-to-left text round sign by sign. A joiner that shaping has drawn to the letter after it
    therefore goes behind that letter, to come out before it.
    """
    text = cluster.translate(_SILENT) or _NOTHING
    if is_right_to_left and text[0] in _JOINERS:
        letters = text.lstrip(_JOINERS)
        return letters + text[: len(text) - len(letters)]
    return text
