"""Bins and tubs as small signs with their letter, and the tiles of the zone patterns."""

from __future__ import annotations

from collections.abc import Iterator

from markupsafe import Markup, escape

from signage.drawing.svg_path import path_data
from signage.drawing.themes import INK
from signage.drawing.zone_patterns import PATTERN_PATHS
from signage.ground.geometry import Box, Path, path_box

_BIN = '<path class="body" d="M4 15H42L38.5 50H7.5Z"/><path class="lid" d="M3.5 9 38 1"/>'
_TUB = '<rect class="body" x="4" y="21" width="38" height="29" rx="6"/><path class="lid" d="M1.5 21H44.5"/>'
_LETTER_BASELINE = {"bin": 41.5, "tub": 44.0}

_TILES = {
    "speckle": Box(0, 0, 6.0, 10.32),
    "bars": Box(0, 0, 6.0, 2.4),
    "bricks": Box(0, 0, 4.8, 6.0),
}
"""The part of each pattern that repeats, in millimetres at scale 1."""


def container_sign(kind: str, code: str, words: str) -> Markup:
    """A bin (lid open) or a tub (lid shut) with its letter; without words it is an ornament beside text."""
    shape = _TUB if kind == "tub" else _BIN
    y = _LETTER_BASELINE["tub" if kind == "tub" else "bin"]
    meaning = f'role="img" aria-label="{escape(words)}"' if words else 'aria-hidden="true"'
    return Markup(  # noqa: S704 - shapes of this programme, and escaped texts
        f'<svg class="container" {meaning} viewBox="0 0 46 52">'
        f'{shape}<text x="23" y="{y:g}" text-anchor="middle">{escape(code)}</text></svg>'
    )


def pattern_tile(pattern: str) -> bytes:
    """An SVG that repeats without a seam. The pattern is drawn beyond each edge and cut by the view."""
    tile = _TILES[pattern]
    beyond = Box(-tile.width, -tile.height, 3 * tile.width, 3 * tile.height)
    shapes = _closed_shapes(PATTERN_PATHS[pattern](beyond, 1.0))
    seen = [shape for shape in shapes if min(path_box(shape).overlap(tile)) > 0]
    data = "".join(path_data(shape, decimals=2) for shape in seen)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {tile.width:g} {tile.height:g}" '
        f'width="{tile.width:g}mm" height="{tile.height:g}mm"><path fill="{INK}" d="{data}"/></svg>\n'
    ).encode()


def _closed_shapes(path: Path) -> Iterator[Path]:
    """The shapes of a path, each from its start to its close."""
    start = 0
    for end, segment in enumerate(path, start=1):
        if segment[0] == "Z":
            yield path[start:end]
            start = end


def pattern_names() -> tuple[str, ...]:
    """The patterns that have a tile."""
    return tuple(_TILES)
