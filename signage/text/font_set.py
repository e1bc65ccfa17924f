"""The fonts that the texts of a library are set in: those of the manifest, then its own."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from pathlib import Path

import uharfbuzz

from signage.ground.errors import UnreadableInputError
from signage.ground.files import read_ordinary
from signage.ground.glyphs import FontKey, OwnFont
from signage.ground.place import Place
from signage.ground.problem import Reading, read_each, with_problems
from signage.text.faults import UNUSABLE_FONT
from signage.text.fonts import bundled_fallbacks
from signage.text.manifest import FILE_BY_NAME


@dataclass(frozen=True, slots=True)
class FontSet:
    """The bundled fonts and a library's ``own`` ones, which are tried last and in order.

    A value: two libraries with the same files have equal sets, and whatever is remembered under a set holds
    for all of them.
    """

    own: tuple[OwnFont, ...] = ()

    def fallback_fonts(self, weight: int) -> tuple[FontKey, ...]:
        """Fonts to try, in order, for what the font of a script lacks."""
        return (*bundled_fallbacks(weight), *(FontKey(font.file, weight, font) for font in self.own))


BUNDLED_FONTS = FontSet()
"""The fonts that the programme brings, for a library without fonts of its own."""


def open_font_set(folder: Path) -> FontSet:
    """The bundled fonts and the TrueType files of a folder; a folder that does not exist adds nothing.

    Raises UnreadableInputError with one problem for each file that cannot serve.
    """
    files = sorted(folder.glob("*.[tToO][tT][fF]")) if folder.is_dir() else []
    fonts, problems = with_problems(read_each(map(_read, files)))
    if problems:
        raise UnreadableInputError(problems)
    return FontSet(tuple(font for font in fonts if font is not None))


def _read(path: Path) -> Reading[OwnFont | None]:
    """The font of a file; None where it cannot serve."""
    font = _font_of(path)
    if isinstance(font, OwnFont):
        return font
    yield UNUSABLE_FONT.problem(f"{path.name}: {font}", Place(str(path)))
    return None


def _font_of(path: Path) -> OwnFont | str:
    """The font of a file, or why it cannot serve."""
    if path.name in FILE_BY_NAME:
        return "a font of the manifest has the same file name"
    try:
        data = read_ordinary(path)
    except OSError as error:
        return f"it could not be read: {error.strerror or error}"
    if data[:4] not in {b"\x00\x01\x00\x00", b"true", b"OTTO"}:
        return "not an OpenType font file"
    if "glyf" not in uharfbuzz.Face(uharfbuzz.Blob(data)).table_tags:
        return "the outlines are not TrueType (no glyf table), which embedding needs"
    return OwnFont(path.name, hashlib.sha256(data).hexdigest(), path)
