"""How many there are, in words of a message."""

from __future__ import annotations


def counted(number: int, one: str, many: str | None = None) -> str:
    """The number with its noun: ``1 file``, ``2 files``; ``many`` where an s behind ``one`` is not enough."""
    return f"{number} {one if number == 1 else many or one + 's'}"
