"""Which pattern says where one stands; on every sheet and page it stands beside the name of the zone."""

from __future__ import annotations

from enum import StrEnum

from signage.model.choices import ZoneClass
from signage.model.library import Zone


class Pattern(StrEnum):
    """A pattern of the design system."""

    SPECKLE = "speckle"
    BARS = "bars"
    BRICKS = "bricks"
    BLANK = "blank"


def pattern_of(zone: Zone) -> Pattern:
    """Room: bricks. Dirty floor elsewhere: speckle. A floor between: bars. Clean: blank."""
    if zone.zone_class is ZoneClass.CONTAMINATED:
        return Pattern.BRICKS
    if zone.floor == "dirty":
        return Pattern.SPECKLE
    return Pattern.BARS if zone.floor == "transition" else Pattern.BLANK
