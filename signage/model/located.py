"""A value of the content that knows where it stands in its file."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from signage.ground.place import NOWHERE, Place

LATER = MappingProxyType({"later": True})
"""Metadata of a field that content written before it cannot hold: while it says nothing, it is in no
fingerprint, so that a new field alone makes no printed sheet doubtful."""


@dataclass(frozen=True, kw_only=True)
class Located:
    """A value with the place of its start and of each of its fields."""

    place: Place = field(default=NOWHERE, compare=False, repr=False)
    places: Mapping[str, Place] = field(
        default_factory=lambda: MappingProxyType({}), compare=False, repr=False, hash=False
    )

    def at(self, name: str) -> Place:
        """The place of a field, or of the value itself where the field is absent."""
        return self.places.get(name, self.place)
