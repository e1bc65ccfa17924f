"""Outlines of glyphs as SVG path data, in font units with y upwards."""

from __future__ import annotations

from functools import lru_cache

from signage.ground.glyphs import FontKey
from signage.text.fonts import face


class _PathDataPen:
    """Collects the segments that HarfBuzz draws."""

    def __init__(self) -> None:
        self.words: list[str] = []

    def moveTo(self, point: tuple[float, float]) -> None:  # noqa: N802  the pen protocol's name
        self._add("M", point)

    def lineTo(self, point: tuple[float, float]) -> None:  # noqa: N802  the pen protocol's name
        self._add("L", point)

    def qCurveTo(self, *points: tuple[float, float]) -> None:  # noqa: N802  the pen protocol's name
        self._add("Q", *points)

    def curveTo(self, *points: tuple[float, float]) -> None:  # noqa: N802  the pen protocol's name
        self._add("C", *points)

    def closePath(self) -> None:  # noqa: N802  the pen protocol's name
        self.words.append("Z")

    def endPath(self) -> None:  # noqa: N802  the pen protocol's name
        """An open contour needs no operator."""

    def _add(self, command: str, *points: tuple[float, float]) -> None:
        self.words.append(command + " ".join(f"{round(x)} {round(y)}" for x, y in points))


@lru_cache(maxsize=8192)
def glyph_outline(key: FontKey, glyph: int) -> str:
    """The path data of a glyph at the weight of the font; empty for a blank."""
    pen = _PathDataPen()
    face(key).font.draw_glyph_with_pen(glyph, pen)
    return "".join(pen.words)
