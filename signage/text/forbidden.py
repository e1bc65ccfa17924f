"""Characters that texts must not contain: they can make a text read differently from what it stores."""

from __future__ import annotations

import re
from dataclasses import dataclass

_NAMES = {
    "\u202a": "LEFT-TO-RIGHT EMBEDDING",
    "\u202b": "RIGHT-TO-LEFT EMBEDDING",
    "\u202c": "POP DIRECTIONAL FORMATTING",
    "\u202d": "LEFT-TO-RIGHT OVERRIDE",
    "\u202e": "RIGHT-TO-LEFT OVERRIDE",
}
"""Embeddings and overrides (UAX #9 section 2.1, 2.2): Unicode advises isolates instead, and overrides can
show the characters of a code or a dose in another order than the one that is stored (UTS #39, UTR #36)."""

_FORBIDDEN = re.compile(f"[{''.join(_NAMES)}]")


@dataclass(frozen=True, slots=True)
class ForbiddenCharacter:
    """A direction override or embedding in a text, by its index."""

    index: int
    character: str

    @property
    def name(self) -> str:
        """The Unicode name with the code point, such as ``U+202E RIGHT-TO-LEFT OVERRIDE``."""
        return f"U+{ord(self.character):04X} {_NAMES[self.character]}"

    @property
    def message(self) -> str:
        """What was found, where in the text, and what to do."""
        return (
            f"the character {self.name} stands at position {self.index + 1} and would change the order "
            "in which characters are shown; remove it (isolates U+2066 to U+2069 are allowed)"
        )


def find_forbidden(text: str) -> list[ForbiddenCharacter]:
    """Every direction override or embedding of the text, in order; empty for a good text."""
    return [ForbiddenCharacter(found.start(), found.group()) for found in _FORBIDDEN.finditer(text)]
