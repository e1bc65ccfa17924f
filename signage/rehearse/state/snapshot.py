"""Copies of a changing state, and whether two of them are alike.

What a dataclass holds that is not frozen, and every dict, list and set, is copied; all else is shared. So a
new field of a person, garment or fixture is copied and compared without being named here.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from types import MappingProxyType
from typing import Any

UNCHANGING: Mapping[str, bool] = MappingProxyType({"is_unchanging": True})
"""Metadata of a field whose value is shared by all copies, although its type could change."""

_SIMPLE = frozenset({str, int, bool, float, type(None), tuple, frozenset})


def copy_of(value: Any) -> Any:
    """A copy of a state, of the same type, that can change without the original."""
    kind: Any = type(value)
    if kind in _SIMPLE:
        return value
    if kind is dict:
        return {key: copy_of(each) for key, each in value.items()}
    if kind is set:
        return set(value)
    if kind is list:
        return [copy_of(each) for each in value]
    changing = _changing_fields(kind)
    if changing is None:
        return value
    new = kind.__new__(kind)
    for name, is_shared in changing:
        each = getattr(value, name)
        setattr(new, name, each if is_shared or type(each) in _SIMPLE else copy_of(each))
    return new


def is_alike(one: Any, other: Any) -> bool:
    """Whether two states are equal, and the dicts that they hold, such as what is worn, have one order."""
    if one != other:
        return False
    if type(one) is not dict:
        return True
    return list(one) == list(other) and all(map(_has_same_order, one.values(), other.values()))


def _has_same_order(one: Any, other: Any) -> bool:
    """Whether the dicts in the fields of two equal values have their keys in the same order."""
    for name in _names_of_dicts(one):
        own = getattr(one, name)
        if len(own) > 1 and list(own) != list(getattr(other, name)):
            return False
    return True


def _names_of_dicts(value: Any) -> tuple[str, ...]:
    """The fields of a changing value that hold a dict."""
    kind: Any = type(value)
    return tuple(
        name
        for name, is_shared in _changing_fields(kind) or ()
        if not is_shared and type(getattr(value, name)) is dict
    )


@cache
def _changing_fields(kind: Hashable) -> tuple[tuple[str, bool], ...] | None:
    """The fields of what changes, and whether copies share their value; None for what never changes."""
    parameters = getattr(kind, "__dataclass_params__", None)
    if parameters is None or parameters.frozen or not is_dataclass(kind):
        return None
    return tuple((each.name, bool(each.metadata.get("is_unchanging"))) for each in fields(kind))
