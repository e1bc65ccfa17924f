"""The parts that scenes may name."""

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
from signage.pictograms.kit.registry import Part, parts_of

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
"""The modules whose drawings are parts."""

_PARTS = parts_of(PART_MODULES)


def part_named(name: str) -> Part | None:
    """The part of a name, or None."""
    return _PARTS.get(name)


def part_names() -> tuple[str, ...]:
    """The names of all parts in alphabetical order."""
    return tuple(_PARTS)
