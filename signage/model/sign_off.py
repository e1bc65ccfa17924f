"""Who has signed what a sheet shows, as the sheet tells it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True)
class SignOff:
    """A role by its id, and the day. ``is_verified``: a valid signature with its key; else by its word."""

    role: str
    on: date
    is_verified: bool = False


@dataclass(frozen=True)
class SignedBy:
    """Who signed the steps, and who the words in the language of the sheet."""

    steps: SignOff
    words: SignOff

    @property
    def is_one(self) -> bool:
        """Whether one role has signed both on one day."""
        return (self.steps.role, self.steps.on) == (self.words.role, self.words.on)

    @property
    def is_verified(self) -> bool:
        """Whether both signatures are valid."""
        return self.steps.is_verified and self.words.is_verified
