"""An item of kit and the physical facts about it, as frozen values."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from signage.model.located import LATER, Located


@dataclass(frozen=True, kw_only=True)
class GarmentPart(Located):
    """A part that is raised and lowered, and leaves with its garment: a hood, a shield, a flap.

    ``raised`` and ``lowered`` are the sites that it covers in each position, ``starts`` is the position in
    which the garment is put on: ``raised`` or ``lowered``. ``over`` are garments that it lies over while it
    covers anything.
    """

    id: str
    raised: tuple[str, ...] = ()
    lowered: tuple[str, ...] = ()
    starts: str = "lowered"
    over: tuple[str, ...] = ()

    def covers(self, position: str) -> tuple[str, ...]:
        """The sites that it covers in a position."""
        return self.raised if position == "raised" else self.lowered


@dataclass(frozen=True, kw_only=True)
class GarmentModel(Located):
    """A make of a garment; ``features`` are what sets it apart, such as ``thumb-loops``."""

    id: str
    name: str
    features: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Garment(Located):
    """An item of kit and the physical facts about it (sites, what it lies over, how it comes off).

    ``fastener_sites`` are the sites of a fastener where the file names them; ``fasteners_under`` are the
    fasteners that lie over another one, such as a flap over a zip. ``techniques`` are the ways in which it
    may come off, empty where the file does not say. ``model`` is the one of ``models`` that is in use.
    ``state`` says whether a glove is sterile.
    """

    id: str
    name: str
    kind: str
    covers: tuple[str, ...] = ()
    over: tuple[str, ...] = ()
    needs_under: tuple[str, ...] = ()
    fasteners: tuple[str, ...] = ()
    open_when_donned: bool = False
    technique: str | None = None
    checks: tuple[str, ...] = ()
    inspect: bool = False
    face: bool = False
    needs_seat: bool = False
    strap_under: bool = False
    barrier: bool = True
    reusable: bool = False
    protects: tuple[str, ...] = ()
    parallel: bool = False
    pictures: Mapping[str, str] = field(default_factory=dict, hash=False)
    fastener_sites: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False, metadata=LATER)
    fasteners_under: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False, metadata=LATER)
    adjusters: tuple[str, ...] = field(default=(), metadata=LATER)
    parts: Mapping[str, GarmentPart] = field(default_factory=dict, hash=False, metadata=LATER)
    techniques: tuple[str, ...] = field(default=(), metadata=LATER)
    models: Mapping[str, GarmentModel] = field(default_factory=dict, hash=False, metadata=LATER)
    model: str | None = field(default=None, metadata=LATER)
    state: str | None = field(default=None, metadata=LATER)

    def sites_of_fastener(self, fastener: str) -> tuple[str, ...]:
        """Where a fastener is: at its own sites, or, where the file names none, anywhere on the garment."""
        return self.fastener_sites.get(fastener) or self.covers
