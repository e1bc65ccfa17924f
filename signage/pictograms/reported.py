"""What the schema library found wrong, in the words of this project."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from signage.pictograms.kit.bounds import BeyondBoundsError

_BOUND_KINDS = frozenset({"greater_than_equal", "less_than_equal", "too_long", "finite_number"})

_FORM = re.compile(r"\[|^float$")
"""The name that pydantic gives to a form of a value, beside the keys of the file."""


@dataclass(frozen=True, slots=True)
class Reported:
    """One finding: where, in words, and whether something is too far, too many or without end."""

    location: tuple[str | int, ...]
    message: str
    is_beyond_bounds: bool


def reported(errors: Sequence[Mapping[str, Any]]) -> list[Reported]:
    """The findings of a pydantic error, in order.

    Where a value may have one of two forms, it is told under both; a number out of bounds is told alone.
    """
    found = [_reported(error) for error in errors]
    beyond = [fault.location for fault in found if fault.is_beyond_bounds]
    return [
        fault
        for fault in found
        if fault.is_beyond_bounds or not any(_is_same_value(fault.location, other) for other in beyond)
    ]


def _is_same_value(first: tuple[str | int, ...], second: tuple[str | int, ...]) -> bool:
    """Whether two locations differ only by the form that was tried last."""
    return len(first) > 1 and first[:-1] == second[: len(first) - 1]


def _reported(error: Mapping[str, Any]) -> Reported:
    location = tuple(error["loc"])
    where = ".".join(word for word in map(str, location) if not _FORM.search(word)) or "scene"
    context = error.get("ctx", {})
    is_beyond = error["type"] in _BOUND_KINDS or isinstance(context.get("error"), BeyondBoundsError)
    return Reported(location, f"{where}: {_message(error, context)}", is_beyond)


def _message(error: Mapping[str, Any], context: Mapping[str, Any]) -> str:
    match error["type"]:
        case "less_than_equal":
            return f"{error['input']} was found; at most {context['le']:g} was wanted"
        case "greater_than_equal":
            return f"{error['input']} was found; at least {context['ge']:g} was wanted"
        case "too_long":
            return f"{context['actual_length']} were found; at most {context['max_length']} were wanted"
        case "finite_number":
            return f"{error['input']} was found; a finite number was wanted"
        case "value_error":
            return str(context["error"])
        case _:
            return str(error["msg"])
