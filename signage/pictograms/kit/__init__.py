"""The construction kit: primitives, nodes, landmarks and the parts that scenes name.

Importing it registers every part.
"""

from signage.pictograms.kit import (
    biohazard,
    busts,
    figures,
    figures_side,
    furniture,
    garments,
    hands,
    marks,
    objects,
    small_hands,
)
from signage.pictograms.kit.registry import Part, part, part_named, part_names

PART_MODULES = (
    biohazard,
    busts,
    figures,
    figures_side,
    furniture,
    garments,
    hands,
    marks,
    objects,
    small_hands,
)
"""The modules whose drawings register themselves."""

__all__ = ["PART_MODULES", "Part", "part", "part_named", "part_names"]
