"""One record of the file of sign-offs: its fields, its one written form, and what is no record."""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, fields, replace
from datetime import date
from enum import StrEnum
from typing import Any

from signage.ground.fingerprint import canonical_json

BEFORE_ALL = "0" * 64
"""What the first record names as the one before it."""

_SHA256 = re.compile(r"[0-9a-f]{64}")
_MOST_TEXT = 2000


class RecordKind(StrEnum):
    """What a record does: signs steps, signs the words of a language, withdraws, or changes a key."""

    PROTOCOL = "protocol"
    LANGUAGE = "language"
    WITHDRAWAL = "withdrawal"
    KEY = "key"


class NoRecordError(ValueError):
    """A line that is no record; the sentence says what was found and what was wanted."""


@dataclass(frozen=True, kw_only=True)
class Record:
    """A record. Hashes are SHA-256 in hexadecimal.

    ``n`` counts from 1; ``previous`` is the hash of the line before. ``protocol`` is the subject as
    ``Subject`` writes it, empty for a key. ``locale``: None for a whole subject. ``content`` is of what
    readers see or act on, of which ``code`` is the printed form; ``binds`` is of all that the sign-off
    binds, and names a file beside the records. ``by`` is the role that signs, ``author`` the roles that
    wrote or translated, or whose key changes. ``key`` is a new public key and ``signature`` an Ed25519
    signature over the record without it and without ``own_hash``, both in base64. ``own_hash`` is of the
    record without itself.
    """

    n: int
    previous: str
    kind: RecordKind
    protocol: str
    locale: str | None = None
    content: str | None = None
    binds: str | None = None
    code: str | None = None
    by: str
    author: str | None = None
    on: date
    review_by: date | None = None
    waivers: tuple[str, ...] = ()
    reason: str | None = None
    demo: bool = False
    key: str | None = None
    signature: str | None = None
    own_hash: str = ""

    @property
    def authors(self) -> tuple[str, ...]:
        """The roles that wrote or translated what is signed."""
        return tuple(self.author.split(", ")) if self.author else ()

    def as_json(self) -> dict[str, Any]:
        """The fields as they stand in the file."""
        found = {_key(each.name): _written(getattr(self, each.name)) for each in fields(self)}
        return {**found, "demo": self.demo, "waivers": list(self.waivers)}

    @property
    def signed_bytes(self) -> bytes:
        """What a signature is made over."""
        return canonical_json({k: v for k, v in self.as_json().items() if k not in {"hash", "signature"}})

    def sealed(self) -> Record:
        """The record with its own hash."""
        return replace(self, own_hash=_own_hash(self.as_json()))

    def line(self) -> bytes:
        """The one form in which the record may stand in the file, without the end of the line."""
        return canonical_json(self.as_json())


def _key(name: str) -> str:
    return "hash" if name == "own_hash" else name.replace("_", "-")


def _written(value: Any) -> Any:
    return value.isoformat() if isinstance(value, date) else value


def _own_hash(values: Mapping[str, Any]) -> str:
    without = {key: value for key, value in values.items() if key != "hash"}
    return hashlib.sha256(canonical_json(without)).hexdigest()


def read_record(line: bytes) -> Record:
    """The record that a line holds. Raises NoRecordError for anything but its one written form."""
    try:
        values = json.loads(line.decode("utf-8"), object_pairs_hook=_each_key_once)
    except (UnicodeDecodeError, ValueError, RecursionError):
        raise NoRecordError("is no record (one JSON object was wanted)") from None
    if not isinstance(values, dict):
        raise NoRecordError("is no record (one JSON object was wanted)")
    _refuse_other_fields(values)
    for key, (is_sound, wanted) in _SOUND.items():
        if not is_sound(values[key]):
            raise NoRecordError(f"has a field '{key}' that is not {wanted}")
    if canonical_json(values) != line:
        raise NoRecordError("is not written as signage writes it (sorted keys, no spaces)")
    if values["hash"] != _own_hash(values):
        raise NoRecordError("was changed: its own hash is of another record")
    names = {each.name: _key(each.name) for each in fields(Record)}
    found = {name: values[key] for name, key in names.items()}
    return Record(
        **{
            **found,
            "kind": RecordKind(values["kind"]),
            "on": date.fromisoformat(values["on"]),
            "review_by": None if values["review-by"] is None else date.fromisoformat(values["review-by"]),
            "waivers": tuple(values["waivers"]),
        }
    )


def _each_key_once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        raise ValueError
    return found


def _refuse_other_fields(values: Mapping[str, Any]) -> None:
    unknown, missing = sorted(values.keys() - _SOUND.keys()), sorted(_SOUND.keys() - values.keys())
    if unknown:
        raise NoRecordError(f"has a field '{unknown[0][:40]}' that this version does not know")
    if missing:
        raise NoRecordError(f"lacks the field '{missing[0]}'")


def _is_text(value: Any) -> bool:
    return isinstance(value, str) and len(value) <= _MOST_TEXT


def _is_hash(value: Any) -> bool:
    return isinstance(value, str) and _SHA256.fullmatch(value) is not None


def _is_day(value: Any) -> bool:
    try:
        return isinstance(value, str) and date.fromisoformat(value).isoformat() == value
    except ValueError:
        return False


def _or_none(is_sound: Callable[[Any], bool]) -> Callable[[Any], bool]:
    return lambda value: value is None or is_sound(value)


_SOUND: Mapping[str, tuple[Callable[[Any], bool], str]] = {
    "n": (lambda value: type(value) is int and value > 0, "a number"),
    "previous": (_is_hash, "a hash"),
    "kind": (lambda value: value in list(RecordKind), f"one of {', '.join(RecordKind)}"),
    "protocol": (_is_text, "a text"),
    "locale": (_or_none(_is_text), "a text or null"),
    "content": (_or_none(_is_hash), "a hash or null"),
    "binds": (_or_none(_is_hash), "a hash or null"),
    "code": (_or_none(_is_text), "a text or null"),
    "by": (_is_text, "a text"),
    "author": (_or_none(_is_text), "a text or null"),
    "on": (_is_day, "a day"),
    "review-by": (_or_none(_is_day), "a day or null"),
    "waivers": (lambda value: isinstance(value, list) and all(map(_is_text, value)), "a list of texts"),
    "reason": (_or_none(_is_text), "a text or null"),
    "demo": (lambda value: type(value) is bool, "true or false"),
    "key": (_or_none(_is_text), "a text or null"),
    "signature": (_or_none(_is_text), "a text or null"),
    "hash": (_is_hash, "a hash"),
}
