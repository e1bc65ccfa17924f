"""The parts that a scene may name, each with its typed arguments."""

from __future__ import annotations

import inspect
from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated, Any, TypeVar, get_type_hints

from pydantic import AfterValidator, BaseModel, ConfigDict, create_model

from signage.pictograms.kit.bounds import bounded, countable
from signage.pictograms.kit.nodes import Node

Drawing = TypeVar("Drawing", bound=Callable[..., Node])


@dataclass(frozen=True, slots=True)
class Part:
    """A drawing that scenes use by name; ``arguments`` is the schema of its keyword arguments."""

    name: str
    draw: Callable[..., Node]
    arguments: type[BaseModel]
    summary: str

    @property
    def takes_style(self) -> bool:
        """Whether the part can be the item of a step."""
        return "style" in self.arguments.model_fields


_PARTS: dict[str, Part] = {}
_ARGUMENTS = ConfigDict(extra="forbid", allow_inf_nan=False)


def part(name: str) -> Callable[[Drawing], Drawing]:
    """Register a drawing function under the name that scenes use.

    The function takes keyword arguments with types that pydantic checks, and defaults for all of
    them. Raises ValueError if the name is taken.
    """

    def register(draw: Drawing) -> Drawing:
        if name in _PARTS:
            raise ValueError(f"two parts are named {name!r}")
        hints = get_type_hints(draw, include_extras=True)
        fields: dict[str, Any] = {
            parameter.name: (
                _within_bounds(hints[parameter.name]),
                ... if parameter.default is inspect.Parameter.empty else parameter.default,
            )
            for parameter in inspect.signature(draw).parameters.values()
        }
        arguments = create_model(f"{name}-arguments", __config__=_ARGUMENTS, **fields)
        summary = (inspect.getdoc(draw) or "").partition("\n")[0]
        _PARTS[name] = Part(name, draw, arguments, summary)
        return draw

    return register


def _within_bounds(hint: Any) -> Any:
    """The type of an argument with the bounds that hold for every part."""
    return Annotated[hint, AfterValidator(countable if hint is int else bounded)]


def part_named(name: str) -> Part | None:
    """The part of a name, or None."""
    return _PARTS.get(name)


def part_names() -> tuple[str, ...]:
    """The names of all parts in alphabetical order."""
    return tuple(sorted(_PARTS))
