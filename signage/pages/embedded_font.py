"""Letters for scripts that older phones may lack, cut down to what the pages use."""

from __future__ import annotations

import base64
import io
from collections.abc import Iterable

from fontTools import subset
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
    file beside a page that was opened from a memory stick.
    """
    characters = {character for text in texts for character in text} - _BASIC
    data = base64.b64encode(_subset(script, characters)).decode()
    return (
        f'@font-face{{font-family:"{embedded_family(script)}";font-weight:100 900;font-display:swap;'
        f"src:url(data:font/woff;base64,{data}) format('woff')}}\n"
    ).encode()


def _subset(script: str, characters: set[str]) -> bytes:
    options = subset.Options()
    options.flavor = "woff"
    options.layout_features = ["*"]
    options.hinting = False
    options.recalc_timestamp = False
    options.drop_tables += ["DSIG", "STAT", "MVAR"]
    font = TTFont(str(font_path(font_for(script, 400))), recalcTimestamp=False)
    known = font.getBestCmap()
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=sorted(ord(character) for character in characters if ord(character) in known))
    cutter.subset(font)
    font.flavor = "woff"
    target = io.BytesIO()
    font.save(target, reorderTables=True)
    return target.getvalue()
