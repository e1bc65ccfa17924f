"""Colours and themes, resolved for colour printers, photocopiers and strong contrast."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from signage.drawing.marks import Fill
from signage.drawing.themes import (
    BAD,
    BLACK,
    CARE,
    DOFF,
    DON,
    GOOD,
    INK,
    INK_2,
    LINE,
    PAPER,
    PLAIN,
    THEMES,
    TONE,
    Band,
    Theme,
)
from signage.model.choices import PhaseTheme
from signage.pictograms.palette import MONO, Palette

__all__ = [
    "CARE",
    "DOFF",
    "DON",
    "INK",
    "INK_2",
    "PAPER",
    "PLAIN",
    "THEMES",
    "Band",
    "Style",
    "Theme",
    "Tone",
    "style_of",
]


class Tone(StrEnum):
    """How a sheet is going to be printed."""

    COLOUR = "colour"
    MONO = "mono"
    CONTRAST = "contrast"


@dataclass(frozen=True)
class Style:
    """Every colour a sheet may use, resolved for its theme and tone.

    ``care_tint`` marks one hygiene step; ``care_ground`` is paler, for a ground that carries cards.
    """

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
    care_ground: str
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


def style_of(phase_theme: PhaseTheme, tone: Tone = Tone.COLOUR) -> Style:
    """The colours for a theme at a tone."""
    theme = THEMES[phase_theme]
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
        care_ground="#EDF6F6" if is_colour else PAPER,
        dirty_tint="#F3EDE6" if is_colour else PAPER,
        clean_tint="#EEF3F5" if is_colour else PAPER,
        palette=palette,
        care_palette=_palette(CARE, tone),
    )
