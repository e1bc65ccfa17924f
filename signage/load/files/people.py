"""people.yaml: the roles of a library and what each may do; no names are needed."""

from __future__ import annotations

import base64
import binascii
import re
from collections.abc import Iterator, Mapping
from typing import Annotated, Any

from signage.ground.problem import Problem
from signage.load import faults
from signage.load.building import build_each
from signage.load.declared import Names, judge, judge_tag
from signage.load.kind import Kind, fault_error, wanted_text
from signage.load.kinds import NOT_EMPTY, Identifier, LanguageTag, Name, ReadableText, YesNo
from signage.load.suggestion import shorten
from signage.load.validation import Entry
from signage.load.yaml.nodes import Node, child, entries_of, texts_of
from signage.model.people import ALL, Role

_INITIALS = re.compile(r"[^\W\d_]{1,4}")
_KEY_BYTES = 32
"""The length of an Ed25519 public key (RFC 8032, section 5.1.5)."""


def _read_initials(value: Any) -> str:
    text = wanted_text(value, "initials")
    if _INITIALS.fullmatch(text) is None:
        raise fault_error(
            faults.MALFORMED_NAME,
            f"'{shorten(text)}' is not initials.",
            "Write one to four letters, such as IN.",
        )
    return text


def _read_key(value: Any) -> str:
    text = wanted_text(value, "a public key")
    try:
        data = base64.b64decode(text, validate=True)
    except (binascii.Error, ValueError):
        data = b""
    if len(data) != _KEY_BYTES:
        raise fault_error(
            faults.MALFORMED_NAME,
            f"'{shorten(text)}' is not a public key.",
            "Copy the line that 'signage approvals make-key' printed: 44 letters, digits and signs.",
        )
    return text


Initials = Annotated[
    str, Kind(_read_initials, "initials", "one to four letters", {"type": "string", "maxLength": 4})
]
PublicKey = Annotated[
    str,
    Kind(
        _read_key,
        "public key",
        "44 characters of base64, as 'signage approvals make-key' prints them",
        {"type": "string", "minLength": 44, "maxLength": 44},
    ),
]


class RoleEntry(Entry):
    """A role by its identifier; a person may have several, and no name is needed."""

    initials: Initials
    """What this role writes on paper beside what it has done."""

    role: Name | None = None
    """The role in words, as your protocols name their owner."""

    writes: tuple[ReadableText, ...] = ()
    """Codes or ids of the protocols whose author it is, or all. Who writes a protocol never signs it."""

    translates: tuple[LanguageTag, ...] = ()
    """The languages it translates into."""

    checks: tuple[LanguageTag, ...] = ()
    """The languages whose words it checks; never the words that it has translated."""

    signs: YesNo = False
    """Whether it may sign and withdraw ('signage approve', 'signage withdraw')."""

    mounts: YesNo = False
    """Whether it puts sheets up and takes them down."""

    audits: YesNo = False
    """Whether it goes round the ward with the audit form."""

    public_key: PublicKey | None = None
    """The public key of its signatures; from then on nothing it signs counts without a valid one."""


class PeopleEntry(Entry):
    """All of people.yaml."""

    people: Annotated[dict[Identifier, RoleEntry], NOT_EMPTY]
    """Each role by its identifier, which commands and records name it by."""


def people_problems(
    node: Node, protocols: Names, codes: Mapping[str, str], locales: Names | None
) -> Iterator[Problem]:
    """Protocols and languages that do not exist. ``codes`` finds the id of a protocol by its code."""
    for role in entries_of(node, "people").values():
        for name in texts_of(role, "writes"):
            if name.text in codes or name.text == ALL:
                continue
            if name.text.isupper():
                yield faults.UNKNOWN_REFERENCE.problem(
                    f"'{shorten(name.text)}' is not the code of a protocol.",
                    name.place,
                    hint=f"There are: {', '.join(codes)}. 'all' means every protocol.",
                )
            else:
                yield from judge(name, protocols, "a protocol of this library, or 'all'")
        for tag in (*texts_of(role, "translates"), *texts_of(role, "checks")):
            yield from judge_tag(tag, locales)


def build_people(entry: PeopleEntry, node: Node, ids: Mapping[str, str]) -> dict[str, Role]:
    """The roles of a valid people.yaml in the order of the file; ``ids`` finds protocols by code."""
    return build_each(
        Role,
        entry.people,
        child(node, "people"),
        more=lambda _name, role: {"writes": tuple(ids.get(name, name) for name in role.writes)},
    )
