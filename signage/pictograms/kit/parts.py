"""The parts that scenes may name."""

from importlib import import_module

from signage.pictograms import kit
from signage.pictograms.kit.registry import Part, parts_of

PART_MODULES = tuple(
    import_module(f"{kit.__name__}.{name}")
    for name in (
        "biohazard",
        "busts",
        "face_covers",
        "face_kit",
        "figures",
        "figures_side",
        "furniture",
        "garments",
        "gowns",
        "hands",
        "marks",
        "objects",
        "sickroom",
        "small_hands",
        "spills",
        "waste_bags",
    )
)
"""The modules whose drawings are parts."""

_PARTS = parts_of(PART_MODULES)


def part_named(name: str) -> Part | None:
    """The part of a name, or None."""
    return _PARTS.get(name)


def part_names() -> tuple[str, ...]:
    """The names of all parts in alphabetical order."""
    return tuple(_PARTS)
