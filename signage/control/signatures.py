"""Ed25519 signatures of records (RFC 8032), and which key of a role holds at which record.

The library for them is an extra (``sign``): without it a signature cannot be verified, and does not count.
"""

from __future__ import annotations

import base64
import binascii
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, cast

from signage.control.records import Record, RecordKind
from signage.ground.errors import MissingFromMachineError, WrongUsageError
from signage.ground.files import read_ordinary, write_whole
from signage.model.people import People

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

_INSTALL = "Install it with: pip install 'signage[sign]', or from its folder: pip install -e '.[sign]'."
_LARGEST_KEY = 10_000
_SIGNATURE_BYTES = 64
"""RFC 8032, section 5.1.6."""


def _ed25519() -> ModuleType:
    try:
        from cryptography.hazmat.primitives.asymmetric import ed25519  # noqa: PLC0415 - an extra
    except ImportError:
        message = f"Signatures need the library 'cryptography', which this machine lacks. {_INSTALL}"
        raise MissingFromMachineError(message) from None
    return ed25519


def is_valid(public_key: str, signature: str, data: bytes) -> bool:
    """Whether a signature over the bytes was made with the private key of ``public_key``; both in base64.

    Raises MissingFromMachineError where the library is missing.
    """
    ed25519 = _ed25519()
    from cryptography.exceptions import InvalidSignature  # noqa: PLC0415 - there when the above is

    try:
        made = base64.b64decode(signature, validate=True)
        if len(made) != _SIGNATURE_BYTES or base64.b64encode(made).decode() != signature:
            return False
        ed25519.Ed25519PublicKey.from_public_bytes(base64.b64decode(public_key)).verify(made, data)
    except (InvalidSignature, ValueError, binascii.Error):
        return False
    return True


def make_key(path: Path) -> str:
    """Write a new private key into a file that is not there yet; returns its public key in base64."""
    from cryptography.hazmat.primitives import serialization  # noqa: PLC0415 - an extra

    ed25519 = _ed25519()
    if path.exists():
        raise WrongUsageError(f"'{path}' is there already, and keys are never overwritten. Name a new file.")
    private = ed25519.Ed25519PrivateKey.generate()
    data = private.private_bytes(
        serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    )
    write_whole(path, data, is_durable=True)
    path.chmod(0o600)
    return public_key_of(private)


def read_key(path: Path) -> Ed25519PrivateKey:
    """The private key in a file (PEM, PKCS #8). Raises WrongUsageError for anything else."""
    ed25519 = _ed25519()
    from cryptography.hazmat.primitives.serialization import load_pem_private_key  # noqa: PLC0415 - an extra

    try:
        key = load_pem_private_key(read_ordinary(path, _LARGEST_KEY), None)
    except (ValueError, TypeError):
        key = None
    if key is None or not isinstance(key, ed25519.Ed25519PrivateKey):
        raise WrongUsageError(
            f"'{path}' holds no key for signatures. Name the file that 'signage approvals make-key' wrote."
        )
    return cast("Ed25519PrivateKey", key)


def public_key_of(private: Ed25519PrivateKey) -> str:
    """Its public key, 32 bytes in base64."""
    return base64.b64encode(private.public_key().public_bytes_raw()).decode()


def with_signature(record: Record, private: Ed25519PrivateKey) -> Record:
    """The record, already in its place in the chain, with a signature."""
    return replace(record, signature=base64.b64encode(private.sign(record.signed_bytes)).decode())


@dataclass(frozen=True)
class Signed:
    """What is known of the signature of each record; ``keys`` are the last recorded ones by role.

    ``faults`` say by number why a record does not count; ``verified`` are those whose signature is valid.
    """

    keys: dict[str, str]
    faults: dict[int, str]
    verified: frozenset[int]


def judge_signatures(records: Sequence[Record], people: People, *, are_required: bool) -> Signed:
    """Every record against the key that its role had at that point of the chain.

    A key comes in by a record of its own: the first is signed with itself, each later one with the key
    before it, or with the recorded key of another role that signs (a key that was lost). A key that stands
    in people.yaml and in no record, or in another form, makes the sign-offs of its role not count.
    """
    keys: dict[str, str] = {}
    faults: dict[int, str] = {}
    verified: set[int] = set()
    for record in records:
        key = _key_for(record, keys)
        if record.signature is None:
            fault = _fault_of_unsigned(record, key, are_required=are_required)
        else:
            fault = _fault_of_signed(record, key)
        if fault:
            faults[record.n] = fault
            continue
        if record.signature is not None:
            verified.add(record.n)
        if record.kind is RecordKind.KEY and record.key and record.author:
            keys[record.author] = record.key
    for record in records:
        role = people.get(record.by)
        listed = role.public_key if role else None
        if record.kind is not RecordKind.KEY and listed and listed != keys.get(record.by):
            faults.setdefault(record.n, _unrecorded(record.by))
        elif record.kind is not RecordKind.KEY and keys.get(record.by) and listed is None:
            faults.setdefault(record.n, f"people.yaml no longer lists the recorded key of {record.by}")
    return Signed(keys, faults, frozenset(verified))


def _key_for(record: Record, keys: dict[str, str]) -> str | None:
    is_first = record.kind is RecordKind.KEY and record.by == record.author and record.by not in keys
    return record.key if is_first else keys.get(record.by)


def _fault_of_unsigned(record: Record, key: str | None, *, are_required: bool) -> str:
    if record.kind is RecordKind.KEY:
        return "a change of keys needs a signature"
    if key is not None:
        return f"it is not signed, and {record.by} has a key"
    return "it is not signed, and the policy wants signatures" if are_required else ""


def _fault_of_signed(record: Record, key: str | None) -> str:
    if key is None:
        return f"it is signed, and no record holds a key of {record.by}"
    try:
        is_sound = is_valid(key, record.signature or "", record.signed_bytes)
    except MissingFromMachineError as missing:
        return str(missing)
    return "" if is_sound else f"its signature was not made with the key of {record.by}"


def _unrecorded(role: str) -> str:
    return f"the key of {role} in people.yaml is not the recorded one ('signage approvals key')"
