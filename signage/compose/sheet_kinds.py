"""All kinds of sheet, read from the modules of this room: a new file is a new kind, and no list names it."""

from __future__ import annotations

import pkgutil
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from importlib import import_module
from typing import Any

from signage import compose
from signage.compose.sheet_kind import Offer, SheetKind

_ENDINGS = ("sheet_kind", "sheet_kinds")
"""How modules that hold kinds are called, below the room's own two; each names them in ``SHEET_KINDS``."""


@dataclass(frozen=True)
class SheetKinds:
    """Kinds of sheet in the order of their places. Raises ValueError for a name that two of them have."""

    kinds: tuple[SheetKind[Any], ...]

    def __post_init__(self) -> None:
        names = [kind.name for kind in self.kinds]
        twice = sorted({name for name in names if names.count(name) > 1})
        if twice:
            raise ValueError(f"two kinds of sheet are called {', '.join(twice)}")

    def __iter__(self) -> Iterator[SheetKind[Any]]:
        return iter(self.kinds)

    def of(self, name: str) -> SheetKind[Any]:
        """The kind with a name of the contract; raises KeyError for another name."""
        for kind in self.kinds:
            if kind.name == name:
                return kind
        raise KeyError(name)

    @property
    def names(self) -> tuple[str, ...]:
        """What a person may ask for: unasked ones first."""
        return (*self.usual, *(kind.name for kind in self.kinds if kind.offer is Offer.ON_REQUEST))

    @property
    def usual(self) -> tuple[str, ...]:
        """The names of the kinds that are made unasked."""
        return tuple(kind.name for kind in self.kinds if kind.offer is Offer.USUAL)

    @property
    def signs(self) -> frozenset[str]:
        """The pictures that sheets may show besides those of their steps."""
        return frozenset(sign for kind in self.kinds for sign in kind.signs)

    def wanted(self, names: Iterable[str]) -> tuple[SheetKind[Any], ...]:
        """The kinds that were named, or where none was, those that are made unasked."""
        chosen = set(names) or set(self.usual)
        return tuple(kind for kind in self.kinds if kind.name in chosen)

    def with_kinds(self, more: Iterable[SheetKind[Any]]) -> SheetKinds:
        """These and more."""
        return SheetKinds(tuple(sorted((*self.kinds, *more), key=_place)))


def read_sheet_kinds() -> SheetKinds:
    """The kinds that ship with the programme."""
    found: list[SheetKind[Any]] = []
    for module in pkgutil.walk_packages(compose.__path__, f"{compose.__name__}."):
        if (
            module.name.endswith(_ENDINGS)
            and module.name.removeprefix(f"{compose.__name__}.") not in _ENDINGS
        ):
            found += import_module(module.name).SHEET_KINDS
    return SheetKinds(()).with_kinds(found)


def _place(kind: SheetKind[Any]) -> tuple[int, str]:
    return kind.place, kind.name
