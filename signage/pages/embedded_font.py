"""Letters for scripts that older phones may lack, cut down to what the pages use."""

from __future__ import annotations

import base64
import io
from collections.abc import Iterable

import uharfbuzz
from fontTools.ttLib import TTFont

from signage.text.fonts import font_for, font_path

RARE_ON_PHONES = ("Ethi", "Khmr", "Laoo", "Mymr", "Orya", "Sinh")
"""Scripts (ISO 15924) that phones of the last ten years did not all ship (common practice, no source)."""

_BASIC = frozenset(map(chr, range(0x20, 0x7F)))
"""Latin letters and digits come from the phone."""


def embedded_family(script: str) -> str:
    """The name by which the stylesheet asks for the letters."""
    return f"signage-{script.lower()}"


def font_style(script: str, texts: Iterable[str]) -> bytes:
    """A stylesheet with the letters of a script that the texts use, in every weight.

    The font is inside as WOFF (zlib, no further library needed), since a browser may not read a font
    file beside a page that was opened from a memory stick. It serves these letters only: all others, such
    as Latin ones and digits, stay with the fonts of the phone.
    """
    wanted = {character for text in texts for character in text} - _BASIC
    face = uharfbuzz.Face(uharfbuzz.Blob.from_file_path(str(font_path(font_for(script, 400)))))
    letters = sorted({ord(character) for character in wanted} & set(face.unicodes))
    data = base64.b64encode(_woff(_subset(face, letters))).decode()
    served = ",".join(f"U+{letter:X}" for letter in letters)
    return (
        f'@font-face{{font-family:"{embedded_family(script)}";font-weight:400 700;font-display:swap;'
        f"unicode-range:{served};src:url(data:font/woff;base64,{data}) format('woff')}}\n"
    ).encode()


def _subset(face: uharfbuzz.Face, letters: list[int]) -> bytes:
    """A font with these letters in every weight, without hints, which phones do not use."""
    wanted = uharfbuzz.SubsetInput()
    wanted.sets(uharfbuzz.SubsetInputSets.UNICODE).update(letters)
    wanted.flags = uharfbuzz.SubsetFlags.NO_HINTING
    return bytes(uharfbuzz.subset(face, wanted).blob.data)


def _woff(font: bytes) -> bytes:
    """The font as WOFF 1.0: each of its tables compressed."""
    packed = TTFont(io.BytesIO(font), recalcTimestamp=False, recalcBBoxes=False)
    packed.flavor = "woff"
    target = io.BytesIO()
    packed.save(target, reorderTables=None)
    return target.getvalue()
