"""Canonical form, fingerprint and short revision code of a value."""

import hashlib
import json
from typing import Any

REVISION_ALPHABET = "23456789ABCDEFGHJKMNPQRSTVWXYZ"
"""Thirty signs that are told apart by hand and eye: no 0, O, 1, I, L or U."""


def canonical_json(value: Any) -> bytes:
    """UTF-8 JSON with sorted keys and no spaces; equal values give equal bytes."""
    return json.dumps(value, ensure_ascii=False, sort_keys=True, separators=(",", ":")).encode()


def fingerprint(value: Any) -> str:
    """SHA-256 of the canonical form, in hexadecimal."""
    return hashlib.sha256(canonical_json(value)).hexdigest()


def revision_code(fingerprint_hex: str, length: int = 4) -> str:
    """The short code printed on a sheet: the first signs of the fingerprint in base 30."""
    number = int(fingerprint_hex, 16)
    signs: list[str] = []
    for _ in range(length):
        number, rest = divmod(number, len(REVISION_ALPHABET))
        signs.append(REVISION_ALPHABET[rest])
    return "".join(signs)
