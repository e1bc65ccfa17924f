"""The fingerprint of a protocol's content: what decides whether a printed sheet is still true."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from datetime import date
from enum import Enum
from typing import Any

from signage.ground.fingerprint import fingerprint, revision_code
from signage.model.library import Library, Protocol

_NOT_CONTENT = {"place", "places"}


def plain(value: Any) -> Any:
    """The value as dictionaries, lists and scalars, without places in files."""
    if is_dataclass(value) and not isinstance(value, type):
        return {f.name: plain(getattr(value, f.name)) for f in fields(value) if f.name not in _NOT_CONTENT}
    if isinstance(value, dict) or hasattr(value, "items"):
        return {str(key): plain(item) for key, item in value.items()}
    if isinstance(value, (tuple, list)):
        return [plain(item) for item in value]
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, date):
        return value.isoformat()
    return value


def protocol_fingerprint(library: Library, protocol: Protocol, pictures: dict[str, str]) -> str:
    """SHA-256 over steps, source texts, policy, ward, kit and picture fingerprints.

    ``pictures`` maps the name of each picture to the fingerprint of its scene. The result depends on
    neither the order of keys nor on comments nor on the layout of the files.
    """
    used = {step.picture for step in protocol.steps}
    return fingerprint(
        {
            "hospital": library.name,
            "source": library.source_locale,
            "protocol": plain(protocol),
            "policy": plain(library.policy),
            "ward": plain(library.wards[protocol.ward]),
            "kit": plain(library.garments),
            "pictures": {name: pictures.get(name, "") for name in sorted(used)},
        }
    )


def protocol_revision(library: Library, protocol: Protocol, pictures: dict[str, str]) -> str:
    """The short code that a sheet carries, such as ``K7M2``."""
    return revision_code(protocol_fingerprint(library, protocol, pictures))
