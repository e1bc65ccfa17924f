"""Letters for scripts that a phone or a plain computer may lack, cut down to what the pages use."""

from __future__ import annotations

import base64
import io
from collections.abc import Iterable, Iterator
from itertools import pairwise

import uharfbuzz
from fontTools.ttLib import TTFont

from signage.pages import address
from signage.text.fonts import font_for, font_path

RARE_ON_PHONES = frozenset({"Ethi", "Khmr", "Laoo", "Mymr", "Orya", "Sinh"})
"""Scripts (ISO 15924) that phones of the last ten years did not all ship (common practice, no source)."""

ON_EVERY_DEVICE = frozenset({"Latn", "Grek", "Cyrl", "Arab", "Hebr", "Hans", "Hant", "Hani", "Jpan", "Kore"})
"""Scripts that come with every phone and every common desktop (common practice, no source)."""

_BASIC = frozenset(map(chr, range(0x20, 0x7F)))
"""Latin letters and digits come from the phone."""


def own_letters(script: str) -> bool:
    """Whether the site brings letters for the script."""
    return script not in ON_EVERY_DEVICE


def letter_family(script: str) -> str:
    """The name by which the stylesheet asks for the letters."""
    return f"signage-{script.lower()}"


def letter_style(script: str, *, is_whole: bool = True) -> str:
    """The stylesheet that carries the letters of a script, or only those of the names of languages."""
    return f"{address.ASSETS}{'letters' if is_whole else 'names'}-{script.lower()}.css"


def letter_files(script: str, texts: Iterable[str], names: Iterable[str]) -> Iterator[tuple[str, bytes]]:
    """The files with the letters of a script that the texts use, and those of the names alone.

    Where phones may lack the script, the font stands inside its stylesheet, since a browser may not read a
    font file beside a page that was opened from a memory stick. Else it is a file of its own, which is
    asked for only by a device that has none of its usual fonts for the script.
    """
    if script in RARE_ON_PHONES:
        yield letter_style(script), font_style(script, texts)
        yield letter_style(script, is_whole=False), font_style(script, names)
        return
    letters = _letters(script, texts)
    name = f"letters-{script.lower()}.woff2"
    yield f"{address.ASSETS}{name}", _woff2(_subset(script, letters))
    own = f"url({name}) format('woff2')"
    yield (
        letter_style(script),
        _face(script, letters, "400 500", f"{_local(script, '')},{own}")
        + _face(script, letters, "600 700", f"{_local(script, ' Bold')},{own}"),
    )


def font_style(script: str, texts: Iterable[str]) -> bytes:
    """A stylesheet with the letters of a script that the texts use, in every weight, as WOFF 2.0 inside it.

    It serves these letters only: all others, such as Latin ones and digits, stay with the fonts of the phone.
    """
    letters = _letters(script, texts)
    data = base64.b64encode(_woff2(_subset(script, letters))).decode()
    return _face(script, letters, "400 700", f"url(data:font/woff2;base64,{data}) format('woff2')")


def _face(script: str, letters: list[int], weights: str, source: str) -> bytes:
    return (
        f'@font-face{{font-family:"{letter_family(script)}";font-weight:{weights};font-display:swap;'
        f"unicode-range:{','.join(_ranges(letters))};src:{source}}}\n"
    ).encode()


def _local(script: str, weight: str) -> str:
    """The usual fonts of the device: Noto where phones and Linux have it, and the Indic one of Windows."""
    with TTFont(str(font_path(font_for(script, 400))), lazy=True) as font:
        noto = font["name"].getBestFamilyName()
    return ",".join(f'local("{family}{weight}")' for family in (noto, "Nirmala UI"))


def _ranges(letters: list[int]) -> Iterator[str]:
    """Sorted code points as ranges of a stylesheet: ``U+1200-1206``."""
    starts = [letters[0], *(later for earlier, later in pairwise(letters) if later != earlier + 1)]
    ends = [*(earlier for earlier, later in pairwise(letters) if later != earlier + 1), letters[-1]]
    for start, end in zip(starts, ends, strict=True):
        yield f"U+{start:X}" if start == end else f"U+{start:X}-{end:X}"


def _letters(script: str, texts: Iterable[str]) -> list[int]:
    """The code points of the texts that the font of the script serves."""
    wanted = {character for text in texts for character in text} - _BASIC
    face = uharfbuzz.Face(uharfbuzz.Blob.from_file_path(str(font_path(font_for(script, 400)))))
    return sorted({ord(character) for character in wanted} & set(face.unicodes))


def _subset(script: str, letters: list[int]) -> bytes:
    """A font with these letters in every weight, without hints, which phones do not use."""
    face = uharfbuzz.Face(uharfbuzz.Blob.from_file_path(str(font_path(font_for(script, 400)))))
    wanted = uharfbuzz.SubsetInput()
    wanted.sets(uharfbuzz.SubsetInputSets.UNICODE).update(letters)
    wanted.flags = uharfbuzz.SubsetFlags.NO_HINTING
    return bytes(uharfbuzz.subset(face, wanted).blob.data)


def _woff2(font: bytes) -> bytes:
    """The font as WOFF 2.0, packed by Brotli: on these letters a fifth smaller than WOFF 1.0."""
    packed = TTFont(io.BytesIO(font), recalcTimestamp=False, recalcBBoxes=False)
    packed.flavor = "woff2"
    target = io.BytesIO()
    packed.save(target, reorderTables=None)
    return target.getvalue()
