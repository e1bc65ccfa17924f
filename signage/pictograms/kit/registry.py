"""The parts that a scene may name, each with its typed arguments."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from types import MappingProxyType, ModuleType
from typing import Annotated, Any, TypeVar, get_type_hints

from pydantic import AfterValidator, BaseModel, ConfigDict, create_model

from signage.pictograms.kit.bounds import bounded, countable
from signage.pictograms.kit.nodes import Node

Drawing = TypeVar("Drawing", bound=Callable[..., Node])


_ARGUMENTS = ConfigDict(extra="forbid", allow_inf_nan=False)
_MARK = "part"
"""The attribute by which a drawing function says that it is a part."""


@dataclass(frozen=True)
class Part:
    """A drawing that scenes use by name."""

    name: str
    draw: Callable[..., Node]

    @cached_property
    def arguments(self) -> type[BaseModel]:
        """The schema of the keyword arguments; made when a scene first names the part."""
        hints = get_type_hints(self.draw, include_extras=True)
        fields: dict[str, Any] = {
            parameter.name: (
                _within_bounds(hints[parameter.name]),
                ... if parameter.default is inspect.Parameter.empty else parameter.default,
            )
            for parameter in inspect.signature(self.draw).parameters.values()
        }
        return create_model(f"{self.name}-arguments", __config__=_ARGUMENTS, **fields)

    @property
    def summary(self) -> str:
        """What it shows."""
        return (inspect.getdoc(self.draw) or "").partition("\n")[0]

    @property
    def takes_style(self) -> bool:
        """Whether the part can be the item of a step."""
        return "style" in self.arguments.model_fields


def part(name: str) -> Callable[[Drawing], Drawing]:
    """Make a drawing function a part under the name that scenes use.

    The function takes keyword arguments with types that pydantic checks, and defaults for all of them.
    """

    def mark(draw: Drawing) -> Drawing:
        draw.__dict__[_MARK] = Part(name, draw)
        return draw

    return mark


def parts_of(modules: Iterable[ModuleType]) -> Mapping[str, Part]:
    """The parts of modules by name, in alphabetical order. Raises ValueError where two share a name."""
    found: dict[str, Part] = {}
    for module in modules:
        for drawing in vars(module).values():
            each = getattr(drawing, _MARK, None)
            if isinstance(each, Part) and found.setdefault(each.name, each) is not each:
                raise ValueError(f"two parts are named {each.name!r}")
    return MappingProxyType(dict(sorted(found.items())))


def _within_bounds(hint: Any) -> Any:
    """The type of an argument with the bounds that hold for every part."""
    return Annotated[hint, AfterValidator(countable if hint is int else bounded)]
