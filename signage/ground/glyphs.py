"""Positioned glyphs: the neutral value between the text engine and the painters."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FontKey:
    """A font file of the manifest at one weight, such as ``("NotoSansArabic[wght].ttf", 700)``."""

    file: str
    weight: int


@dataclass(frozen=True, slots=True)
class Glyph:
    """One glyph. Advance and offsets in ems, y upwards; ``cluster`` is the index of its first character."""

    id: int
    advance: float
    x_offset: float
    y_offset: float
    cluster: int


@dataclass(frozen=True, slots=True)
class GlyphRun:
    """Glyphs of one font and one direction, in visual order, for ``text[start:end]`` of the paragraph."""

    font: FontKey
    start: int
    end: int
    is_right_to_left: bool
    glyphs: tuple[Glyph, ...]

    @property
    def advance(self) -> float:
        """Width of the run in ems."""
        return sum(glyph.advance for glyph in self.glyphs)
