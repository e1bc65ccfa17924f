"""A scene that is ready to draw: what is known of it, and its nodes when they are asked for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING, Literal

from signage.ground.place import Place
from signage.pictograms.kit.nodes import flatten

if TYPE_CHECKING:
    from signage.pictograms.kit.nodes import Node, Operation

Theme = Literal["don", "doff", "hands"]
MirrorRule = Literal["never", "with-layout"]


@dataclass(frozen=True, slots=True)
class Gloss:
    """Who does what to what, and where: what a trial of the picture asks readers for."""

    who: str
    does: str
    what: str
    where: str = ""


@dataclass(frozen=True)
class Scene:
    """A scene that is ready to draw.

    ``draw`` gives its nodes: sheets of a picture that has been compiled before never ask for them. It may
    raise UnreadableInputError where a shipped file was changed after it was looked at.
    """

    name: str
    theme: Theme
    focus: str
    handed: bool
    mirror: MirrorRule
    gloss: Gloss
    alternative: str
    cropped: frozenset[str]
    place: Place
    draw: Callable[[], tuple[Node, ...]] = field(compare=False, repr=False)
    alike: frozenset[str] = frozenset()

    @cached_property
    def nodes(self) -> tuple[Node, ...]:
        """What is drawn, in painting order."""
        return self.draw()

    @property
    def operations(self) -> tuple[Operation, ...]:
        """The painting passes in order."""
        return tuple(flatten(self.nodes))
