"""Nodes against a schema: every fault becomes a problem at its place, in our own words."""

from __future__ import annotations

from types import UnionType
from typing import Annotated, Any, TypeVar, Union, get_args, get_origin

from pydantic import BaseModel, ConfigDict, Field, ValidationError
from pydantic_core import ErrorDetails

from signage.ground.place import Place
from signage.ground.problem import Problem
from signage.load import faults
from signage.load.kinds import kind_of
from signage.load.nodes import Node, Refused, Sequence, Table, Text, node_at
from signage.load.suggestion import shorten, suggest

Path = tuple[int | str, ...]


def kebab(name: str) -> str:
    """The key in the file for a field of the schema; a trailing ``_`` only avoids a clash of names."""
    return name.rstrip("_").replace("_", "-")


NONE: dict[str, Any] = Field(default_factory=dict)
"""The default of a mapping that may be left out."""


class Entry(BaseModel):
    """A mapping whose keys are known: kebab-case in the file, no other key beside them."""

    model_config = ConfigDict(
        extra="forbid", strict=True, frozen=True, alias_generator=kebab, arbitrary_types_allowed=True
    )

    @classmethod
    def keys(cls) -> tuple[str, ...]:
        """The keys that may stand in the file."""
        return tuple(info.alias or name for name, info in cls.model_fields.items())


EntryType = TypeVar("EntryType", bound=Entry)


def validate(node: Node, schema: type[EntryType], problems: list[Problem]) -> EntryType | None:
    """The node as an entry of the schema; None where it has faults, all of which are reported."""
    try:
        return schema.model_validate(plain(node))
    except ValidationError as error:
        for details in error.errors(include_url=False):
            problem = _problem(details, node, schema)
            if problem is not None:
                problems.append(problem)
        return None


def plain(node: Node) -> Any:
    """The node as texts, tuples and dictionaries; a refused value stays as it is."""
    if isinstance(node, Text):
        return node.text
    if isinstance(node, Sequence):
        return tuple(plain(item) for item in node.items)
    if isinstance(node, Table):
        return {key: plain(value) for key, value in node.values.items()}
    return node


def places_of(node: Table, schema: type[Entry]) -> dict[str, Place]:
    """The place of the value of every field that is written in the file, by the name of the model's field."""
    found = {}
    for name, info in schema.model_fields.items():
        value = node.values.get(info.alias or name)
        if value is not None:
            found[name.rstrip("_")] = value.place
    return found


def _problem(details: ErrorDetails, root: Node, schema: type[Entry]) -> Problem | None:
    """The problem for one error of pydantic; None for what was reported before."""
    is_key = details["loc"][-1:] == ("[key]",)
    path = details["loc"][:-1] if is_key else details["loc"]
    met = tuple(node_at(root, path))
    if any(isinstance(node, Refused) for node in met):
        return None
    last = met[-1]
    holder = met[-2] if len(met) > 1 else last
    place = last.place
    if (is_key or details["type"] == "extra_forbidden") and isinstance(holder, Table):
        place = holder.key_place(str(path[-1]))
    if details["type"] == "missing":
        return _missing(path, place)
    if details["type"] == "extra_forbidden":
        return _unknown_key(path, place, schema)
    if isinstance(last, Text) and last.is_absent and not is_key:
        return faults.WRONG_KIND.at(
            place, f"{_where(path)} has no value.", "Write the value, or leave the key out."
        )
    context = details.get("ctx", {})
    if "fault" in context:
        message = f"{_where(path)}: {context['message']}" if path else str(context["message"])
        return context["fault"].at(place, message, context["hint"])  # type: ignore[no-any-return]
    return _wrong_container(details, path, place, plain(last))


def _missing(path: Path, place: Place) -> Problem:
    """A key that is needed is absent."""
    return faults.MISSING_KEY.at(
        place,
        f"The key '{path[-1]}' is missing{_within(path[:-1])}.",
        f"Add a line that begins with '{path[-1]}:'.",
    )


def _unknown_key(path: Path, place: Place, schema: type[Entry]) -> Problem:
    """A key that the schema does not know."""
    entry = _entry_at(schema, path[:-1])
    known = entry.keys() if entry is not None else ()
    key = str(path[-1])
    return faults.UNKNOWN_KEY.at(
        place,
        f"The key '{shorten(key)}' is not known{_within(path[:-1])}.",
        suggest(key, known, "Known keys"),
    )


_CONTAINERS = {
    "dict_type": ("a mapping", "Write 'key: value' lines below it."),
    "model_type": ("a mapping", "Write 'key: value' lines below it."),
    "tuple_type": ("a list", "Write the entries in brackets, such as [one, two]."),
    "too_short": ("at least one entry", "Add an entry."),
}


def _wrong_container(details: ErrorDetails, path: Path, place: Place, value: object) -> Problem:
    """A text where a list was wanted, and the like."""
    wanted, hint = _CONTAINERS.get(details["type"], ("another value", ""))
    found = "an empty list" if details["type"] == "too_short" else kind_of(value)
    return faults.WRONG_KIND.at(place, f"{_where(path)} is {found}; {wanted} was wanted.", hint)


def _where(path: Path) -> str:
    """The way to a value, such as ``zones/room/air``; list entries are counted from 1."""
    parts = [str(part + 1) if isinstance(part, int) else shorten(part, 40) for part in path]
    return f"'{'/'.join(parts)}'" if parts else "The file"


def _within(path: Path) -> str:
    """The way as the end of a sentence."""
    return f" in {_where(path)}" if path else ""


def _entry_at(schema: type[Entry], path: Path) -> type[Entry] | None:
    """The schema of the mapping at the end of a way."""
    current: Any = schema
    for part in path:
        current = _inner(current)
        if isinstance(current, type) and issubclass(current, Entry):
            names = {info.alias or name: name for name, info in current.model_fields.items()}
            if part not in names:
                return None
            current = current.model_fields[names[str(part)]].annotation
        elif get_origin(current) is dict:
            current = get_args(current)[1]
        elif get_origin(current) is tuple:
            current = get_args(current)[0]
        else:
            return None
    current = _inner(current)
    return current if isinstance(current, type) and issubclass(current, Entry) else None


def _inner(annotation: Any) -> Any:
    """The type without ``Annotated`` and without ``| None``."""
    while get_origin(annotation) in {Annotated, Union, UnionType}:
        choices = [choice for choice in get_args(annotation) if choice is not type(None)]
        annotation = choices[0]
    return annotation
