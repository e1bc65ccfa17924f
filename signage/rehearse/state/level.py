"""How contaminated a surface is held to be."""

from enum import IntEnum


class Level(IntEnum):
    """Three levels; when two surfaces meet, each takes the higher level of the two (``max``).

    ``REDUCED`` is a surface that was cleaned while worn, or an edge or strap near an exposed surface. It
    is never taken for clean where eyes, nose, mouth or clean kit are concerned.
    """

    CLEAN = 0
    REDUCED = 1
    CONTAMINATED = 2

    @property
    def word(self) -> str:
        """The level as a word of reports, such as ``reduced``."""
        return self.name.lower()
