"""The fields of all content files, told from their schemas: what may stand where, and what it means."""

from __future__ import annotations

import ast
import inspect
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin, get_type_hints

from signage.load.fields.examples import example_of
from signage.load.files.kit import KitEntry
from signage.load.files.library import LibraryEntry, TermsEntry
from signage.load.files.people import PeopleEntry
from signage.load.files.policy import PoliciesEntry
from signage.load.files.protocol import ProtocolEntry
from signage.load.files.waivers import WaiversEntry
from signage.load.files.ward import WardEntry
from signage.load.kind import Kind
from signage.load.validation import Entry


@dataclass(frozen=True, slots=True)
class FileKind:
    """A kind of content file; ``name`` is that of its JSON schema."""

    name: str
    path: str
    schema: type[Entry]
    about: str


FILE_KINDS = (
    FileKind("library", "content/library.yaml", LibraryEntry, "Hospital, languages and papers. Needed."),
    FileKind("kit", "content/kit.yaml", KitEntry, "What is worn and handled. Needed."),
    FileKind("policy", "content/policy.yaml", PoliciesEntry, "The local decisions. Needed."),
    FileKind("ward", "content/wards/*.yaml", WardEntry, "One file for each ward; at least one."),
    FileKind("protocol", "content/protocols/*.yaml", ProtocolEntry, "One file for each; at least one."),
    FileKind("terms", "content/terms.yaml", TermsEntry, "Words for translators. May be left out."),
    FileKind("people", "content/people.yaml", PeopleEntry, "Roles and what each may do. Needed to sign."),
    FileKind("waivers", "content/waivers.yaml", WaiversEntry, "Findings that are accepted. May be left out."),
)
"""Every file with a schema, in the order in which they are explained."""


@dataclass(frozen=True, slots=True)
class FieldRow:
    """One key: what may stand there, whether it is needed, one example, what it means."""

    key: str
    kind: str
    form: str
    words: tuple[str, ...]
    is_needed: bool
    default: str
    example: str
    meaning: str
    below: type[Entry] | None = None


@dataclass(frozen=True, slots=True)
class Part:
    """The keys of one mapping; ``way`` are the keys that lead to it, empty for the file itself."""

    way: tuple[str, ...]
    about: str
    schema: type[Entry]
    rows: tuple[FieldRow, ...]


@dataclass(frozen=True, slots=True)
class _Value:
    """What may stand at a key."""

    kind: str
    form: str = ""
    words: tuple[str, ...] = ()
    below: type[Entry] | None = None


@lru_cache(maxsize=16)
def parts_of(file: FileKind) -> tuple[Part, ...]:
    """The mappings of a kind of file, from the outermost inwards, each once."""
    return tuple(_parts(file.name, file.schema, ()))


def _parts(kind: str, schema: type[Entry], way: tuple[str, ...]) -> Iterator[Part]:
    rows = tuple(_rows(kind, schema, way))
    yield Part(way, _about(schema), schema, rows)
    for row in rows:
        if row.below is not None:
            yield from _parts(kind, row.below, (*way, row.key))


def _about(schema: type[Entry]) -> str:
    return inspect.cleandoc(schema.__doc__ or "").partition("\n")[0].replace("``", "`")


def _rows(kind: str, schema: type[Entry], way: tuple[str, ...]) -> Iterator[FieldRow]:
    meanings = meanings_of(schema)
    hints = get_type_hints(schema, include_extras=True)
    for name, info in schema.model_fields.items():
        value = _value_of(hints[name])
        key = info.alias or name
        yield FieldRow(
            key=key,
            kind=value.kind,
            form=value.form,
            words=value.words,
            is_needed=info.is_required(),
            default=_shown(info.default) if not info.is_required() else "",
            example="" if value.below else example_of(kind, way, key),
            meaning=meanings[name],
            below=value.below,
        )


def _shown(default: Any) -> str:
    """A default as an author would write it; empty where it is nothing."""
    if isinstance(default, bool):
        return "yes" if default else "no"
    return default if isinstance(default, str) else ""


def _value_of(hint: Any) -> _Value:
    """What a type of the schema lets stand in the file."""
    origin, arguments = get_origin(hint), get_args(hint)
    if origin is Annotated:
        kinds = [each for each in arguments[1:] if isinstance(each, Kind)]
        if kinds:
            return _Value(kinds[0].name, kinds[0].form, kinds[0].words)
        return _value_of(arguments[0])
    if origin in {Union, UnionType}:
        return _value_of(next(each for each in arguments if each is not type(None)))
    if origin is tuple:
        inner = _value_of(arguments[0])
        kind = "list of entries" if inner.below else f"list of {_several(inner.kind)}"
        return _Value(kind, inner.form, inner.words, inner.below)
    if origin is dict:
        key, value = _value_of(arguments[0]), _value_of(arguments[1])
        what = "keys of their own" if value.below else _several(value.kind)
        kind = f"mapping of {_several(key.kind)} to {what}"
        return _Value(kind, value.form, value.words or key.words, value.below)
    if inspect.isclass(hint) and issubclass(hint, Entry):
        return _Value("keys of its own", below=hint)
    return _Value("depends on the identifier")


def _several(kind: str) -> str:
    """More than one of a kind."""
    first, space, rest = kind.partition(" of ")
    return f"{first}s{space}{rest}"


@lru_cache(maxsize=64)
def meanings_of(schema: type[Entry]) -> dict[str, str]:
    """The sentence under each field of a schema, by the name of the field; bases included."""
    found: dict[str, str] = {}
    for base in reversed(schema.__mro__):
        if inspect.isclass(base) and issubclass(base, Entry) and base is not Entry:
            found.update(_sentences(base))
    return found


def _sentences(schema: type[Entry]) -> dict[str, str]:
    tree = ast.parse(inspect.getsource(sys.modules[schema.__module__]))
    body = next(
        node.body for node in tree.body if isinstance(node, ast.ClassDef) and node.name == schema.__name__
    )
    found = {}
    for field, below in pairwise(body):
        match field, below:
            case ast.AnnAssign(target=ast.Name(id=name)), ast.Expr(value=ast.Constant(value=str(text))):
                found[name] = " ".join(text.replace("``", "'").split())
    return found
