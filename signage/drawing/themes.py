"""Colours and themes of the design system, for sheets and pages alike.

Themes differ in form first (filled, open or tinted band); colour repeats what form has said.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Band(StrEnum):
    """The form of a title band: the shape tells the theme apart without colour."""

    FILLED = "filled"
    OPEN = "open"
    TINTED = "tinted"


INK = "#14202C"
INK_2 = "#3B4957"
LINE = "#8A97A3"
TONE = "#CBD8E4"
PAPER = "#FFFFFF"
BAD = "#C2182B"
GOOD = "#177A3C"
BLACK = "#000000"


@dataclass(frozen=True)
class Theme:
    """One theme: the deep colour of its band, the accent of the item of a step, a pale tint."""

    name: str
    band: Band
    deep: str
    accent: str
    tint: str


DON = Theme("don", Band.FILLED, "#0A4A7E", "#0F86D2", "#E9F1F8")
DOFF = Theme("doff", Band.OPEN, "#8F3B00", "#EC7A10", "#FBF1E6")
CARE = Theme("hands", Band.TINTED, "#0A5C63", "#0B8790", "#E1F0F0")
PLAIN = Theme("plain", Band.OPEN, INK, "#5B6B7A", "#EEF3F5")
THEMES = {theme.name: theme for theme in (DON, DOFF, CARE, PLAIN)}
