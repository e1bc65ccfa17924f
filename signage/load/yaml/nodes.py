"""What a content file holds, before it means anything: texts, lists and mappings, each with its place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from signage.ground.place import Place


@dataclass(frozen=True, slots=True)
class Text:
    """A scalar as it was written. ``is_plain`` says that it stood without quotes and not in a block."""

    text: str
    place: Place
    is_plain: bool = True

    @property
    def is_absent(self) -> bool:
        """Whether nothing was written after the key."""
        return self.is_plain and not self.text


@dataclass(frozen=True, slots=True)
class Sequence:
    """A list."""

    items: tuple[Node, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class Table:
    """Keys with values in the order of the file. Each key knows its own place.

    ``is_in_braces`` says that it was written as ``{key: value}`` and not in lines.
    """

    values: Mapping[str, Node]
    place: Place
    key_places: Mapping[str, Place] = field(default_factory=dict)
    is_in_braces: bool = False

    def key_place(self, key: str) -> Place:
        """Where the key itself stands; the place of the mapping where there is no such key."""
        return self.key_places.get(key, self.place)


@dataclass(frozen=True, slots=True)
class Refused:
    """A value that was already reported as a problem; later stages are silent about it."""

    place: Place


Node = Text | Sequence | Table | Refused


def child(node: Node | None, key: str) -> Node | None:
    """The value under a key, or None where the node is no mapping or lacks the key."""
    return node.values.get(key) if isinstance(node, Table) else None


def text_of(node: Node | None, key: str) -> Text | None:
    """The text under a key, or None where it is absent or no text."""
    value = child(node, key)
    return value if isinstance(value, Text) and not value.is_absent else None


def texts_of(node: Node | None, key: str) -> tuple[Text, ...]:
    """The texts of the list under a key; entries of other kinds are left out."""
    return tuple(item for item in items_of(node, key) if isinstance(item, Text))


def items_of(node: Node | None, key: str) -> tuple[Node, ...]:
    """The entries of the list under a key."""
    value = child(node, key)
    return value.items if isinstance(value, Sequence) else ()


def entries_of(node: Node | None, key: str) -> Mapping[str, Node]:
    """The keys and values of the mapping under a key."""
    value = child(node, key)
    return value.values if isinstance(value, Table) else {}


def node_at(node: Node, steps: tuple[int | str, ...]) -> Iterator[Node]:
    """The nodes met on the way down keys and indices, the start included; ends where the way ends."""
    yield node
    for step in steps:
        if isinstance(node, Table) and isinstance(step, str) and step in node.values:
            node = node.values[step]
        elif isinstance(node, Sequence) and isinstance(step, int) and step < len(node.items):
            node = node.items[step]
        else:
            return
        yield node
