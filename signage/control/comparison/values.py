"""Fields of content that differ, as a reviewer reads them: by their path, with the value before and after."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from signage.model.revision import plain

_KEYS = {"actions": "movement", "verb": "do", "zone_class": "class", "start": "from", "end": "to"}
"""Fields that content calls otherwise than the model."""


@dataclass(frozen=True, slots=True)
class ValueChange:
    """A field with its values; None where there is none. ``path`` such as ``movement 1 seconds``."""

    path: str
    old: str | None
    new: str | None

    def as_json(self) -> dict[str, str | None]:
        """The fields."""
        return {"field": self.path, "old": self.old, "new": self.new}


def value_changes(old: Any, new: Any, without: Collection[str] = ()) -> tuple[ValueChange, ...]:
    """What differs between two values of the model, field by field; fields named in ``without`` are not."""
    before, after = _leaves(old, without), _leaves(new, without)
    return tuple(
        ValueChange(path, before.get(path), after.get(path))
        for path in dict.fromkeys((*before, *after))
        if before.get(path) != after.get(path)
    )


def _leaves(value: Any, without: Collection[str]) -> dict[str, str]:
    if value is None:
        return {}
    told = plain(value)
    if isinstance(told, Mapping):
        told = {key: each for key, each in told.items() if key not in without}
    return {path.strip(): text for path, text in _flat(told, "")}


def _flat(value: Any, path: str) -> Iterator[tuple[str, str]]:
    """The scalars of a plain value by their paths; a list of scalars is one of them."""
    if isinstance(value, Mapping):
        for key, each in value.items():
            yield from _flat(each, f"{path} {_key(str(key))}")
    elif isinstance(value, list) and any(isinstance(each, (Mapping, list)) for each in value):
        for number, each in enumerate(value, start=1):
            name = each.get("id") if isinstance(each, Mapping) else None
            inner = {k: v for k, v in each.items() if k != "id"} if isinstance(each, Mapping) else each
            yield from _flat(inner, f"{path} {name or number}")
    elif isinstance(value, list):
        if value:
            yield path, ", ".join(map(_scalar, value))
    elif value is not None:
        yield path, _scalar(value)


def _key(name: str) -> str:
    return _KEYS.get(name, name.replace("_", "-"))


def _scalar(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    return str(value)
