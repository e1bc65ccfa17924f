"""Nodes against a schema: every fault becomes a problem at its place, in our own words."""

from __future__ import annotations

from types import UnionType
from typing import Annotated, Any, TypeVar, Union, get_args, get_origin

from pydantic import BaseModel, ConfigDict, Field, ValidationError
from pydantic_core import ErrorDetails

from signage.ground.place import Place
from signage.ground.problem import Problem, Reading
from signage.load import faults
from signage.load.kind import kind_of
from signage.load.suggestion import shorten, suggest
from signage.load.yaml.nodes import Node, Refused, Sequence, Table, Text, node_at, text_of

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


def validate(node: Node, schema: type[EntryType]) -> Reading[EntryType | None]:
    """The node as an entry of the schema; None where it has faults."""
    try:
        return schema.model_validate(plain(node))
    except ValidationError as error:
        for details in error.errors(include_url=False):
            problem = _problem(details, node, schema)
            if problem is not None:
                yield problem
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
        return _missing(root, path, place, is_in_braces=isinstance(last, Table) and last.is_in_braces)
    if details["type"] == "extra_forbidden":
        return _unknown_key(root, path, place, schema)
    if isinstance(last, Text) and last.is_absent and not is_key:
        return faults.WRONG_KIND.problem(
            f"{_where(root, path)} has no value.", place, hint="Write the value, or leave the key out."
        )
    context = details.get("ctx", {})
    if "fault" in context:
        message = f"{_where(root, path)}: {context['message']}" if path else str(context["message"])
        return context["fault"].problem(message, place, hint=context["hint"])  # type: ignore[no-any-return]
    return _wrong_container(details, root, path, last)


def _missing(root: Node, path: Path, place: Place, *, is_in_braces: bool) -> Problem:
    """A key that is needed is absent."""
    where = "Add '{}: …' inside the braces." if is_in_braces else "Add a line that begins with '{}:'."
    return faults.MISSING_KEY.problem(
        f"The key '{path[-1]}' is missing{_within(root, path[:-1])}.", place, hint=where.format(path[-1])
    )


def _unknown_key(root: Node, path: Path, place: Place, schema: type[Entry]) -> Problem:
    """A key that the schema does not know."""
    entry = _entry_at(schema, path[:-1])
    known = entry.keys() if entry is not None else ()
    key = str(path[-1])
    return faults.UNKNOWN_KEY.problem(
        f"The key '{shorten(key)}' is not known{_within(root, path[:-1])}.",
        place,
        hint=suggest(key, known, "Known keys"),
    )


_CONTAINERS = {
    "dict_type": ("a mapping", "Write 'key: value' lines below it."),
    "model_type": ("a mapping", "Write 'key: value' lines below it."),
    "tuple_type": ("a list", "Write the entries in brackets, such as [one, two]."),
}


def _wrong_container(details: ErrorDetails, root: Node, path: Path, value: Node) -> Problem:
    """A text where a list was wanted, and the like."""
    wanted, hint = _CONTAINERS.get(details["type"], ("another value", ""))
    message = f"{_where(root, path)} is {kind_of(plain(value))}; {wanted} was wanted."
    return faults.WRONG_KIND.problem(message, value.place, hint=hint)


def _where(root: Node, path: Path) -> str:
    """A value as messages call it, such as ``'floor' in 'hall'`` or ``'agent' in step 'rub'``."""
    if not path:
        return "The file"
    if isinstance(path[-1], int):
        return f"Entry {path[-1] + 1} of '{path[-2]}'{_within(root, path[:-2])}"
    return f"'{shorten(path[-1], 40)}'{_within(root, path[:-1])}"


def _within(root: Node, path: Path) -> str:
    """The step, phase, named entry or list entry that holds a value, as the end of a phrase."""
    if not path:
        return ""
    if isinstance(path[-1], str):
        return f" in '{shorten(path[-1], 40)}'"
    holder = tuple(node_at(root, path))[-1]
    for kind in ("step", "phase"):
        name = text_of(holder, kind)
        if name is not None:
            return f" in {kind} '{shorten(name.text, 40)}'"
    if path[-2] == "do":
        return _within(root, path[:-2])
    return f" in entry {path[-1] + 1} of '{path[-2]}'"


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
