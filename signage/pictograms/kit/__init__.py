"""The construction kit: primitives, nodes, landmarks and the parts that scenes name.

Importing it registers every part.
"""

from signage.pictograms.kit import (
    biohazard,
    busts,
    face_covers,
    face_kit,
    figures,
    figures_side,
    furniture,
    garments,
    gowns,
    hands,
    marks,
    objects,
    sickroom,
    small_hands,
    spills,
    waste_bags,
)
from signage.pictograms.kit.registry import Part, part, part_named, part_names

PART_MODULES = (
    biohazard,
    busts,
    face_covers,
    face_kit,
    figures,
    figures_side,
    furniture,
    garments,
    gowns,
    hands,
    marks,
    objects,
    sickroom,
    small_hands,
    spills,
    waste_bags,
)
"""The modules whose drawings register themselves."""

__all__ = ["PART_MODULES", "Part", "part", "part_named", "part_names"]
