"""Colour tokens and themes, resolved for colour printers, photocopiers and strong contrast.

Themes differ in form first (filled, open or tinted band); colour repeats what form has said.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from signage.drawing.marks import Fill
from signage.pictograms.palette import MONO, Palette


class Tone(StrEnum):
    """How a sheet is going to be printed."""

    COLOUR = "colour"
    MONO = "mono"
    CONTRAST = "contrast"


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


@dataclass(frozen=True)
class Style:
    """Every colour a sheet may use, resolved for its theme and tone."""

    theme: Theme
    tone: Tone
    ink: str
    ink_2: str
    line: str
    paper: str
    deep: str
    accent: Fill
    tint: str
    care_deep: str
    care_tint: str
    dirty_tint: str
    clean_tint: str
    palette: Palette
    care_palette: Palette

    def line_width(self, width: float) -> float:
        """Hairlines turn black on a photocopy, so they stay thin there."""
        return min(width, 0.25) if self.tone is not Tone.COLOUR else width


def _palette(theme: Theme, tone: Tone) -> Palette:
    if tone is Tone.MONO:
        return MONO
    ink = BLACK if tone is Tone.CONTRAST else INK
    accent = theme.deep if tone is Tone.CONTRAST else theme.accent
    return Palette(
        name=f"{theme.name}-{tone.value}",
        ink=ink,
        accent=accent,
        tone=TONE,
        paper=PAPER,
        mark=accent,
        bad=BAD,
        good=GOOD,
    )


def style_of(theme_name: str, tone: Tone = Tone.COLOUR) -> Style:
    """The colours for a theme at a tone."""
    theme = THEMES[theme_name]
    is_colour = tone is Tone.COLOUR
    ink = INK if is_colour else BLACK
    palette = _palette(theme, tone)
    return Style(
        theme=theme,
        tone=tone,
        ink=ink,
        ink_2=INK_2 if is_colour else BLACK,
        line=LINE if is_colour else BLACK,
        paper=PAPER,
        deep=BLACK if tone is Tone.MONO else theme.deep,
        accent=palette.accent,
        tint=theme.tint if is_colour else PAPER,
        care_deep=CARE.deep if is_colour else BLACK,
        care_tint=CARE.tint if is_colour else PAPER,
        dirty_tint="#F3EDE6" if is_colour else PAPER,
        clean_tint="#EEF3F5" if is_colour else PAPER,
        palette=palette,
        care_palette=_palette(CARE, tone),
    )
