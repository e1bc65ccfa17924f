"""Positioned glyphs: the neutral value between the text engine and the painters."""

from dataclasses import dataclass, field
from pathlib import Path


@dataclass(frozen=True, slots=True)
class OwnFont:
    """A font file that a library brings: its name, the SHA-256 of its bytes, and where it lies.

    The bytes alone say which font it is: the same ones in two places are one font.
    """

    file: str
    sha256: str
    path: Path = field(compare=False)


@dataclass(frozen=True, slots=True)
class FontKey:
    """A font file at one weight, such as ``("NotoSansArabic[wght].ttf", 700)``.

    ``own`` is None for a file of the manifest, which is known by its name. With it, a key says everything
    that opens the font, so a painter needs to know of no library.
    """

    file: str
    weight: int
    own: OwnFont | None = None


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
