"""Fonts from the manifest: found, checked against their SHA-256, opened once, set to a weight."""

from __future__ import annotations

import hashlib
import importlib.util
import unicodedata
from dataclasses import dataclass, field
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

import uharfbuzz

from signage.ground.errors import MissingFromMachineError, WrongUsageError
from signage.ground.files import read_ordinary
from signage.ground.glyphs import FontKey, OwnFont
from signage.text.manifest import (
    FALLBACK_FONTS,
    FILE_BY_NAME,
    FILE_BY_SCRIPT,
    LATIN_FONT,
    WEIGHTS,
    FontFile,
    FontPackage,
)

_SPACE_FALLBACKS = frozenset(
    "\u00a0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u3000"
)
"""Spaces that HarfBuzz sets with the space glyph at their own width where a font has no glyph for them."""

_HARFBUZZ_SUBSTITUTES = {**dict.fromkeys(_SPACE_FALLBACKS, " "), "\u2011": "\u2010"}
"""What HarfBuzz shows instead of a character that the font lacks (its normalizer, hb-ot-shape-normalize)."""


_Opened = tuple[Any, frozenset[int], frozenset[str]]
"""A uharfbuzz Face with the code points that it covers, as numbers and as characters."""


@dataclass(frozen=True, slots=True, eq=False)
class Face:
    """An opened font at one weight. ``font`` is its uharfbuzz Font; extents are in ems, y upwards."""

    key: FontKey
    units_per_em: int
    coverage: frozenset[int]
    font: Any
    _characters: frozenset[str]
    _extents: dict[int, tuple[float, float, float, float] | None] = field(default_factory=dict)

    def covers(self, cluster: str) -> bool:
        """Whether the font can show all characters of a grapheme cluster.

        HarfBuzz composes and decomposes as the font needs it, so either normal form is enough.
        """
        if self._characters.issuperset(cluster):
            return True
        shown = "".join(
            character if character in self._characters else _HARFBUZZ_SUBSTITUTES.get(character, character)
            for character in cluster
        )
        return any(
            self._characters.issuperset(form)
            for form in (shown, unicodedata.normalize("NFC", shown), unicodedata.normalize("NFD", shown))
        )

    def glyph_box(self, glyph: int) -> tuple[float, float, float, float] | None:
        """Left, right, top and bottom of the ink about the glyph's origin in ems; None without ink."""
        if glyph not in self._extents:
            extents = self.font.get_glyph_extents(glyph)
            box = None
            if extents is not None and extents.width and extents.height:
                unit = 1 / self.units_per_em
                box = (
                    extents.x_bearing * unit,
                    (extents.x_bearing + extents.width) * unit,
                    extents.y_bearing * unit,
                    (extents.y_bearing + extents.height) * unit,
                )
            self._extents[glyph] = box
        return self._extents[glyph]


@cache
def font_for(script: str, weight: int) -> FontKey:
    """The font of a script (ISO 15924) at a weight; the Latin font for scripts without one of their own."""
    file = FILE_BY_SCRIPT.get(script)
    return FontKey(LATIN_FONT if file is None else file.name, weight)


@cache
def bundled_fallbacks(weight: int) -> tuple[FontKey, ...]:
    """Fonts of the manifest to try, in order, for what the font of a script lacks."""
    return tuple(FontKey(name, weight) for name in FALLBACK_FONTS)


def font_path(key: FontKey) -> Path:
    """Where a font file lies; one of the manifest has been compared with its SHA-256 once in this process.

    Raises MissingFromMachineError when the package is not installed or the file was changed.
    """
    return _checked_path(key.file) if key.own is None else key.own.path


@lru_cache(maxsize=256)
def face(key: FontKey) -> Face:
    """The opened font; opened once a process. Raises MissingFromMachineError like ``font_path``."""
    if key.weight not in WEIGHTS:
        raise WrongUsageError(
            f"weight {key.weight} is not set; the weights are {', '.join(map(str, WEIGHTS))}"
        )
    opened, coverage, characters = _opened_bundled(key.file) if key.own is None else _opened_own(key.own)
    font = uharfbuzz.Font(opened)
    if any(axis.tag == "wght" for axis in opened.axis_infos):
        font.set_variations({"wght": key.weight})
    return Face(key, opened.upem, coverage, font, characters)


@cache
def _opened_bundled(name: str) -> _Opened:
    return _opened(uharfbuzz.Blob.from_file_path(str(_checked_path(name))))


@lru_cache(maxsize=64)
def _opened_own(font: OwnFont) -> _Opened:
    """The font of a library, from the very bytes that its key names."""
    try:
        data = read_ordinary(font.path)
    except OSError as error:
        raise MissingFromMachineError(
            f"The font {font.path} could not be read: {error.strerror or error}; "
            "put the file back and run the command again"
        ) from error
    if hashlib.sha256(data).hexdigest() != font.sha256:
        raise MissingFromMachineError(
            f"The font {font.path} has changed since its library was opened; run the command again"
        )
    return _opened(uharfbuzz.Blob(data))


def _opened(blob: Any) -> _Opened:
    opened = uharfbuzz.Face(blob)
    coverage = frozenset(opened.unicodes)
    return opened, coverage, frozenset(map(chr, coverage))


@cache
def _checked_path(name: str) -> Path:
    file = FILE_BY_NAME.get(name)
    if file is None:
        raise WrongUsageError(f"{name} is neither a font of the manifest nor one of the folder content/fonts")
    path = _package_folder(file.package) / file.folder / file.name
    _require_unchanged(path, file)
    return path


def _package_folder(package: FontPackage) -> Path:
    specification = importlib.util.find_spec(package.module)
    if specification is None or not specification.submodule_search_locations:
        raise MissingFromMachineError(
            f"The fonts of the package {package.module} are not installed; "
            f"install them with: {package.install}"
        )
    return Path(specification.submodule_search_locations[0])


def _require_unchanged(path: Path, file: FontFile) -> None:
    cure = f"install the pinned version again with: {file.package.install} --force-reinstall"
    if not path.is_file():
        raise MissingFromMachineError(f"The font file {file.name} is not in {path.parent}; {cure}")
    found = hashlib.sha256(path.read_bytes()).hexdigest()
    if found != file.sha256:
        raise MissingFromMachineError(
            f"The font file {path} is not the one that texts were checked with: its SHA-256 begins with "
            f"{found[:12]}, wanted was {file.sha256[:12]}; {cure}"
        )
