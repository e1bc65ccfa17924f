"""Valid entries with their nodes become values of the model that know their places."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from signage.ground.place import Place
from signage.load.validation import Entry, places_of
from signage.load.yaml.nodes import Node, Table, child
from signage.model.located import Located

LocatedType = TypeVar("LocatedType", bound=Located)
EntryType = TypeVar("EntryType", bound=Entry)


def build(
    model: Callable[..., LocatedType],
    entry: Entry,
    node: Node,
    *,
    id_field: str = "",
    id_place: Place | None = None,
    places: Mapping[str, Place] | None = None,
    **given: Any,
) -> LocatedType:
    """A value of the model from the fields of an entry; ``given`` replaces or adds fields.

    Where the identifier is the key before the mapping, ``id_field`` names it and ``id_place`` is where
    that key stands; it is then the place of the whole value too. ``places`` adds places.
    """
    mapping = table(node)
    known = places_of(mapping, type(entry))
    if id_place is not None:
        known[id_field] = id_place
    fields = {name.rstrip("_"): value for name, value in entry}
    return model(**{**fields, **given}, place=id_place or mapping.place, places={**known, **(places or {})})


def build_each(
    model: Callable[..., LocatedType],
    entries: Mapping[str, EntryType],
    node: Node | None,
    id_field: str = "id",
    more: Callable[[str, EntryType], dict[str, Any]] = lambda _key, _entry: {},
) -> dict[str, LocatedType]:
    """Values of the model for a mapping of identifier to entry; ``more`` gives further fields."""
    if not entries:
        return {}
    nodes = table(node)
    return {
        key: build(
            model,
            entry,
            nodes.values[key],
            id_field=id_field,
            id_place=nodes.key_place(key),
            **{id_field: key, **more(key, entry)},
        )
        for key, entry in entries.items()
    }


def places_below(node: Node, key: str) -> dict[str, Place]:
    """The places of the values of a mapping, as ``key/their key``."""
    below = child(node, key)
    return (
        {f"{key}/{name}": value.place for name, value in below.values.items()}
        if isinstance(below, Table)
        else {}
    )


def table(node: Node | None) -> Table:
    """The node that a valid schema says is a mapping."""
    assert isinstance(node, Table)
    return node


def field_places(node: Node, schema: type[Entry], **renamed: str) -> dict[str, Place]:
    """The places of the fields of a file; ``renamed`` gives the model's name for a field of the schema."""
    return {renamed.get(name, name): place for name, place in places_of(table(node), schema).items()}
