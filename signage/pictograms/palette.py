"""The fills of the pigments, one set for each theme."""

from __future__ import annotations

from dataclasses import dataclass

from signage.drawing.marks import Dots, Fill
from signage.pictograms.kit.nodes import Pigment

INK = "#14202C"
TONE = "#CBD8E4"
PAPER = "#FFFFFF"
BAD = "#C2182B"
GOOD = "#177A3C"
BLACK = "#000000"

DENSE_DOTS = Dots(radius=1.05, pitch_x=3.6, pitch_y=3.1, colour=BLACK, paper=PAPER)
"""The item of a step on a copier without colours, in the units of a pictogram."""

SPARSE_DOTS = Dots(radius=0.95, pitch_x=7.2, pitch_y=6.2, colour=BLACK, paper=PAPER)
"""Inner gloves and furniture on a copier without colours."""


@dataclass(frozen=True, slots=True)
class Palette:
    """What each pigment is painted with.

    ``ink`` is the person and every outline, ``accent`` the item of the step, ``tone`` inner gloves
    and furniture, ``paper`` protective clothing that is already on, ``mark`` arrows and stripes of a
    lining, ``bad`` and ``good`` the prohibition and the tick.
    """

    name: str
    ink: str
    accent: Fill
    tone: Fill
    paper: str
    mark: str
    bad: str
    good: str

    def fill(self, pigment: Pigment) -> Fill:
        """The fill of a pigment. Raises ValueError for ``ground``, which is never painted."""
        if pigment == "ground":
            raise ValueError("ground is a hole and has no fill")
        fills: dict[str, Fill] = {
            "ink": self.ink,
            "accent": self.accent,
            "tone": self.tone,
            "paper": self.paper,
            "mark": self.mark,
            "bad": self.bad,
            "good": self.good,
        }
        return fills[pigment]


def _coloured(name: str, accent: str) -> Palette:
    return Palette(name, INK, accent, TONE, PAPER, accent, BAD, GOOD)


DON = _coloured("don", "#0F86D2")
DOFF = _coloured("doff", "#EC7A10")
HANDS = _coloured("hands", "#0B8790")
MONO = Palette("mono", BLACK, DENSE_DOTS, SPARSE_DOTS, PAPER, BLACK, BLACK, BLACK)

PALETTES = {palette.name: palette for palette in (DON, DOFF, HANDS, MONO)}
"""The palettes by name; a scene names the one of its theme."""
