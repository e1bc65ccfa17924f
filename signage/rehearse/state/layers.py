"""Which garment lies over which, as the kit declares it."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from typing import TYPE_CHECKING

from signage.model.garment import Garment

if TYPE_CHECKING:
    from signage.rehearse.state.people import Worn

    Wearing = Mapping[str, Worn] | Collection[str]


class Layers:
    """The relations of all garments of a kit; made once, asked often.

    ``over`` of the kit is direct: what it does not name is not inferred, except that on one and the same
    part of the body what lies over the layer between lies over the layer beneath as well.

    What is worn is given as the worn garments by identifier, whose parts may be raised or lowered; as
    identifiers alone, every part counts where it may be. ``sites`` holds the latter.
    """

    def __init__(self, garments: Mapping[str, Garment]) -> None:
        self.sites = {key: _reach_of(garment) for key, garment in garments.items()}
        self._parallel = {key for key, garment in garments.items() if garment.parallel}
        self._directly_below = {
            key: frozenset(below for below in _lies_over(garment) if below in garments)
            for key, garment in garments.items()
        }
        self._below = {key: self._reach(key) for key in garments}
        self.coverers: dict[str, tuple[str, ...]] = {
            inner: tuple(sorted(outer for outer in garments if self.lies_over(outer, inner)))
            for inner in garments
        }

    def _reach(self, start: str) -> frozenset[str]:
        """Everything that can be reached downwards; ``start`` itself only where it lies on a circle."""
        found: set[str] = set()
        waiting = list(self._directly_below[start])
        while waiting:
            below = waiting.pop()
            if below not in found:
                found.add(below)
                waiting.extend(self._directly_below[below])
        return frozenset(found)

    def lies_over(self, outer: str, inner: str) -> bool:
        """Whether ``outer`` is declared over ``inner``, or lies over it on a part that both cover."""
        if inner in self._directly_below[outer]:
            return True
        return inner in self._below[outer] and bool(self.sites[outer] & self.sites[inner])

    def covering(self, inner: str, worn: Wearing) -> tuple[str, ...]:
        """What is worn over a garment."""
        over = self.coverers[inner]
        if isinstance(worn, dict):
            return tuple(outer for outer in over if outer in worn and worn[outer].reaches_over(inner))
        return tuple(outer for outer in over if outer in worn)

    def is_exposed(self, garment: str, worn: Wearing) -> bool:
        """Whether some part that the garment covers has nothing worn over it.

        Something hides only what it is declared over, itself or through layers that are worn between: an
        apron that is declared over the coverall is not known to hide clothes where there is no coverall.
        """
        hidden: set[str] = set()
        for outer in self.covering(garment, worn):
            if self._hides(outer, garment, worn):
                hidden |= self.sites_of(outer, worn)
        return not self.sites_of(garment, worn) <= hidden

    def _hides(self, outer: str, inner: str, worn: Wearing) -> bool:
        if inner in self._directly_below[outer]:
            return True
        return any(between in worn and inner in self._below[between] for between in self._below[outer])

    def met_beneath(self, leaving: Worn, staying: Mapping[str, Worn]) -> set[str]:
        """What a garment that comes off brushes over: where nothing that stays on lies between.

        That is what lies outermost on each part of the body that it covers, and, of what it is declared
        over and shares no part with, what is not hidden everywhere by something else.
        """
        met = {item for site in leaving.sites for item in self.outermost_at(site, staying)}
        met.update(
            item
            for item, worn in staying.items()
            if not leaving.sites & worn.sites
            and self.lies_over(leaving.id, item)
            and leaving.reaches_over(item)
            and self.is_exposed(item, staying)
        )
        return met

    def sites_of(self, garment: str, worn: Wearing) -> frozenset[str]:
        """What a garment covers, with its parts where they are."""
        return worn[garment].sites if isinstance(worn, dict) else self.sites[garment]

    def outermost_at(self, site: str, worn: Wearing) -> tuple[str, ...]:
        """What lies outermost on one part of the body; several where no order is declared."""
        there = [garment for garment in worn if site in self.sites_of(garment, worn)]
        return tuple(g for g in there if not any(outer in there for outer in self.coverers[g] if outer != g))

    def is_order_unknown(self, one: str, other: str) -> bool:
        """Whether two garments share a part of the body and nothing says which lies outside."""
        if one in self._parallel or other in self._parallel or not self.sites[one] & self.sites[other]:
            return False
        return other not in self._below[one] and one not in self._below[other]

    def circles(self, start: Iterable[str]) -> list[tuple[str, ...]]:
        """Garments that lie over one another in a circle, among those in ``start`` and beneath them."""
        seen = set(start)
        for garment in tuple(seen):
            seen |= self._below[garment]
        on_circle = sorted(garment for garment in seen if garment in self._below[garment])
        found: dict[frozenset[str], tuple[str, ...]] = {}
        for garment in on_circle:
            members = frozenset(g for g in self._below[garment] if garment in self._below[g])
            found.setdefault(members, tuple(sorted(members)))
        return list(found.values())


def _reach_of(garment: Garment) -> frozenset[str]:
    """Every site that a garment covers, with each of its parts wherever it may be."""
    parts = (site for part in garment.parts.values() for site in (*part.raised, *part.lowered))
    return frozenset((*garment.covers, *parts))


def _lies_over(garment: Garment) -> tuple[str, ...]:
    """What a garment or any of its parts lies over."""
    return (*garment.over, *(below for part in garment.parts.values() for below in part.over))
