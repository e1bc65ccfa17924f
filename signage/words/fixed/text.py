"""What a fixed word is: a text that belongs to the programme, not to the content."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FixedText:
    """A text that sheets or pages may carry. ``note`` is for translators, ``budget`` in characters."""

    id: str
    source: str
    note: str = ""
    budget: int = 40
