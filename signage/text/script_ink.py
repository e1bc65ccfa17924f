"""What is measured of a script before it is set beside others."""

from __future__ import annotations

from dataclasses import dataclass

TALLEST_COUNTED = 0.62
"""Letters taller than this share of the em count as this tall for reading distance.

Their height comes with more strokes (Han, Ethiopic), so it does not make them readable from farther away
in proportion. Common practice, no source.
"""


@dataclass(frozen=True, slots=True)
class ScriptInk:
    """Ink of a script in ems.

    ``letter_height`` is the median ink height above the baseline of plain letters (weight 400), ``top`` and
    ``depth`` the farthest ink of ordinary words above and below the baseline, ``mean_depth`` how far a word
    reaches below it on average (weight 700).
    """

    letter_height: float
    top: float
    depth: float
    mean_depth: float

    @property
    def reference_height(self) -> float:
        """The height that counts for reading distance."""
        return min(self.letter_height, TALLEST_COUNTED)
