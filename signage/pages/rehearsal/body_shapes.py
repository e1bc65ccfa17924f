"""The drawn figure of the body maps: one shape for each part of the body, and for kit that hangs or frames.

A standing person seen from the front, arms a little away from the body. Units are those of the figure's
own canvas, y grows downwards; the figure is its own mirror image.
"""

from __future__ import annotations

from collections.abc import Mapping

from signage.ground.geometry import Box, Path, circle, mirroring, rectangle, transform_path

CANVAS = Box(2.0, 0.0, 56.0, 132.0)
"""The view of the figure, with room for kit that makes it stouter."""

_AXIS = 30.0


def _pair(left: Path) -> Path:
    """A shape and its mirror image."""
    return left + transform_path(left, mirroring(_AXIS))


def _ellipse(x: float, y: float, across: float, down: float) -> Path:
    """An ellipse by its centre and half axes."""
    unit = circle(0.0, 0.0, 1.0)
    scaled: list[tuple[str | float, ...]] = []
    for segment in unit:
        numbers = [float(value) for value in segment[1:]]
        moved = [x + across * v if i % 2 == 0 else y + down * v for i, v in enumerate(numbers)]
        scaled.append((segment[0], *moved))
    return tuple(scaled)


HEAD: Path = _ellipse(_AXIS, 15.6, 8.4, 10.6)
"""The face beneath everything; it is no part that the model knows, but carries eyes, nose and mouth."""

_HAIR: Path = (
    ("M", 21.2, 15.6),
    ("C", 20.2, 7.4, 24.0, 3.4, 30.0, 3.4),
    ("C", 36.0, 3.4, 39.8, 7.4, 38.8, 15.6),
    ("C", 37.6, 11.6, 35.2, 9.6, 30.0, 9.6),
    ("C", 24.8, 9.6, 22.4, 11.6, 21.2, 15.6),
    ("Z",),
)
_EYE: Path = (
    ("M", 24.6, 14.9),
    ("C", 25.4, 13.6, 27.6, 13.6, 28.4, 14.9),
    ("C", 27.6, 16.0, 25.4, 16.0, 24.6, 14.9),
    ("Z",),
)
_MOUTH: Path = (
    ("M", 27.0, 21.6),
    ("C", 28.4, 20.9, 31.6, 20.9, 33.0, 21.6),
    ("C", 31.8, 22.9, 28.2, 22.9, 27.0, 21.6),
    ("Z",),
)
_EAR: Path = _ellipse(21.2, 16.4, 1.5, 2.7)
_NECK: Path = (
    ("M", 26.2, 24.0),
    ("L", 33.8, 24.0),
    ("C", 33.8, 29.6, 34.6, 30.6, 39.4, 32.0),
    ("C", 34.0, 34.2, 26.0, 34.2, 20.6, 32.0),
    ("C", 25.4, 30.6, 26.2, 29.6, 26.2, 24.0),
    ("Z",),
)
_TRUNK: Path = (
    ("M", 20.6, 32.0),
    ("C", 26.0, 34.2, 34.0, 34.2, 39.4, 32.0),
    ("C", 42.4, 33.0, 43.2, 35.4, 42.8, 39.6),
    ("L", 41.2, 53.0),
    ("C", 41.0, 58.0, 42.0, 64.0, 42.6, 71.0),
    ("L", 17.4, 71.0),
    ("C", 18.0, 64.0, 19.0, 58.0, 18.8, 53.0),
    ("L", 17.2, 39.6),
    ("C", 16.8, 35.4, 17.6, 33.0, 20.6, 32.0),
    ("Z",),
)
_ARM: Path = (
    ("M", 20.6, 32.0),
    ("C", 16.0, 32.8, 13.8, 35.6, 12.8, 40.4),
    ("L", 7.6, 62.6),
    ("L", 12.8, 64.0),
    ("L", 18.8, 45.6),
    ("Z",),
)
_WRIST: Path = (("M", 7.6, 62.6), ("L", 12.8, 64.0), ("L", 11.6, 68.0), ("L", 6.6, 66.8), ("Z",))
_HAND: Path = (
    ("M", 6.6, 66.8),
    ("L", 11.6, 68.0),
    ("C", 13.2, 69.6, 14.2, 72.0, 14.3, 74.2),
    ("C", 14.3, 75.9, 12.7, 76.0, 12.1, 74.4),
    ("L", 11.2, 72.9),
    ("C", 11.4, 76.2, 10.8, 79.4, 9.6, 81.0),
    ("C", 8.2, 82.8, 5.6, 82.2, 4.8, 79.8),
    ("C", 3.8, 76.4, 4.9, 70.8, 6.6, 66.8),
    ("Z",),
)
_LEG: Path = (
    ("M", 17.4, 71.0),
    ("L", 30.0, 71.0),
    ("L", 29.6, 78.0),
    ("L", 27.6, 117.0),
    ("L", 20.0, 117.0),
    ("L", 17.2, 86.0),
    ("C", 16.8, 80.0, 17.0, 75.0, 17.4, 71.0),
    ("Z",),
)
_FOOT: Path = (
    ("M", 20.0, 117.0),
    ("L", 27.6, 117.0),
    ("C", 27.8, 119.6, 28.4, 121.6, 28.2, 123.4),
    ("C", 28.0, 125.2, 26.0, 125.8, 22.6, 125.8),
    ("C", 18.6, 125.8, 16.2, 125.2, 16.2, 123.4),
    ("C", 16.4, 121.4, 19.6, 120.0, 20.0, 117.0),
    ("Z",),
)

SITE_SHAPES: Mapping[str, Path] = {
    "trunk": _TRUNK,
    "legs": _pair(_LEG),
    "feet": _pair(_FOOT),
    "arms": _pair(_ARM),
    "wrists": _pair(_WRIST),
    "hands": _pair(_HAND),
    "neck": _NECK,
    "ears": _pair(_EAR),
    "hair": _HAIR,
    "eyes": _pair(_EYE),
    "mouth-nose": _MOUTH,
}
"""The bare parts of the body, in the order in which they are painted."""

_GOGGLES: Path = (
    ("M", 23.0, 12.0),
    ("C", 26.0, 11.2, 34.0, 11.2, 37.0, 12.0),
    ("C", 38.4, 13.2, 38.4, 16.0, 37.0, 17.2),
    ("C", 34.6, 18.2, 31.8, 17.8, 30.0, 16.6),
    ("C", 28.2, 17.8, 25.4, 18.2, 23.0, 17.2),
    ("C", 21.6, 16.0, 21.6, 13.2, 23.0, 12.0),
    ("Z",),
)
_CUP: Path = (
    ("M", 30.0, 17.2),
    ("C", 32.4, 17.4, 35.6, 19.0, 36.4, 20.4),
    ("C", 36.2, 24.0, 33.4, 26.9, 30.0, 26.9),
    ("C", 26.6, 26.9, 23.8, 24.0, 23.6, 20.4),
    ("C", 24.4, 19.0, 27.6, 17.4, 30.0, 17.2),
    ("Z",),
)
_OPENING = _ellipse(_AXIS, 17.0, 7.4, 8.6)
_HOOD: Path = (
    ("M", 18.6, 16.0),
    ("C", 18.0, 6.6, 23.2, 2.2, 30.0, 2.2),
    ("C", 36.8, 2.2, 42.0, 6.6, 41.4, 16.0),
    ("C", 41.0, 21.4, 38.6, 25.4, 35.4, 28.6),
    ("L", 24.6, 28.6),
    ("C", 21.4, 25.4, 19.0, 21.4, 18.6, 16.0),
    ("Z",),
)
_SHIELD: Path = (
    ("M", 20.4, 9.4),
    ("C", 24.0, 8.2, 36.0, 8.2, 39.6, 9.4),
    ("L", 39.2, 25.6),
    ("C", 36.6, 28.6, 23.4, 28.6, 20.8, 25.6),
    ("Z",),
)
_PANEL: Path = (
    ("M", 24.4, 36.6),
    ("C", 27.6, 38.0, 32.4, 38.0, 35.6, 36.6),
    ("C", 35.8, 42.0, 37.4, 46.6, 42.0, 49.4),
    ("L", 44.0, 96.0),
    ("C", 36.0, 98.6, 24.0, 98.6, 16.0, 96.0),
    ("L", 18.0, 49.4),
    ("C", 22.6, 46.6, 24.2, 42.0, 24.4, 36.6),
    ("Z",),
)

WORN_SHAPES: Mapping[str, Path] = {
    "goggles": _GOGGLES,
    "cup": _CUP,
    "hood": _HOOD + _OPENING,
    "shield": _SHIELD,
    "panel": _PANEL,
}
"""Kit whose form differs from that of the part it covers; the hood has an opening (rule even-odd)."""

OPEN_FRONT: Path = (
    ("M", 30.0, 33.0),
    ("C", 33.0, 46.0, 32.6, 62.0, 30.0, 77.0),
    ("C", 27.4, 62.0, 27.0, 46.0, 30.0, 33.0),
    ("Z",),
)
"""Where a garment stands open: a slit down its front."""

SOLES: Path = _pair(rectangle(Box(15.8, 127.6, 12.8, 3.2), 0.8))
"""The undersides of the feet, drawn beneath them."""

ANCHORS: Mapping[str, tuple[float, float]] = {
    "hair": (30.0, 6.4),
    "eyes": (30.0, 14.6),
    "mouth-nose": (30.0, 22.0),
    "ears": (20.6, 16.6),
    "neck": (30.0, 29.4),
    "trunk": (30.0, 52.0),
    "arms": (13.2, 48.0),
    "wrists": (9.6, 65.4),
    "hands": (8.6, 75.2),
    "legs": (23.6, 92.0),
    "feet": (22.4, 121.8),
}
"""Where the mark of an exposure stands on each part."""
