"""How often Python looks for values that hold each other in a circle."""

from __future__ import annotations

import gc

_NEW_VALUES = 50_000
"""Values made between two looks. Python looks after 700, which takes a third of the time of composing: sheets
are millions of small values, and none of them holds what holds it."""


def collect_rarely() -> None:
    """Look for garbage less often in this process; what nothing holds is let go at once all the same."""
    gc.set_threshold(_NEW_VALUES)
