"""Ways of taking something off, and which surface each lets the hands and the layer beneath meet."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType


class Surface(StrEnum):
    """The four parts of a worn garment that have a level of their own."""

    OUTSIDE = "outside"
    INSIDE = "inside"
    BACK = "back"
    STRAPS = "straps"


@dataclass(frozen=True, slots=True)
class Technique:
    """What the hands hold, and what brushes over the layer beneath; None where nothing is met.

    What ``needs_standing`` cannot be done on a chair.
    """

    hands: Surface | None
    beneath: Surface | None
    needs_standing: bool = False


UNSPECIFIED = "unspecified"

TECHNIQUES: Mapping[str, Technique] = MappingProxyType(
    {
        "glove-in-glove": Technique(None, Surface.INSIDE),
        "peel-inside-out": Technique(Surface.INSIDE, Surface.INSIDE),
        "straps-back": Technique(Surface.STRAPS, None),
        "lift-back": Technique(Surface.BACK, None),
        "tear-front": Technique(Surface.OUTSIDE, None),
        "pull-down": Technique(Surface.OUTSIDE, None),
        "roll-down": Technique(Surface.INSIDE, Surface.INSIDE, needs_standing=True),
        "front-grab": Technique(Surface.OUTSIDE, Surface.OUTSIDE),
        UNSPECIFIED: Technique(Surface.OUTSIDE, Surface.OUTSIDE),
    }
)
"""What is not specified is taken for the worst case."""
