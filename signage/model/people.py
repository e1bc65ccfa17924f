"""Who may do what, by role: the tool knows no names and identifies nobody."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from signage.model.located import Located

ALL = "all"
"""In the place of protocols: each of them, those still to be written too."""


@dataclass(frozen=True, kw_only=True)
class Role(Located):
    """A role of the library. ``id`` is what commands and records name it by, ``initials`` what people write.

    ``writes`` are the ids of the protocols whose author it is, or ``ALL``; ``translates`` and ``checks`` are
    languages. ``public_key`` is that of its signatures (Ed25519, RFC 8032: 32 bytes in base64), None for
    a role that signs by its word alone.
    """

    id: str
    initials: str
    role: str | None = None
    writes: tuple[str, ...] = ()
    translates: tuple[str, ...] = ()
    checks: tuple[str, ...] = ()
    signs: bool = False
    mounts: bool = False
    audits: bool = False
    public_key: str | None = None

    def is_author_of(self, protocol: str) -> bool:
        """Whether it writes the protocol with this id."""
        return protocol in self.writes or ALL in self.writes


People = Mapping[str, Role]
"""Roles by their ids, in the order of the file."""


def authors_of(people: People, protocol: str) -> tuple[str, ...]:
    """The ids of the roles that write a protocol, which is named by its id."""
    return tuple(name for name, role in people.items() if role.is_author_of(protocol))


def translators_of(people: People, tag: str) -> tuple[str, ...]:
    """The ids of the roles that translate into a language."""
    return tuple(name for name, role in people.items() if tag in role.translates)
