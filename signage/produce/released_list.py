"""What a published site said was in force: a small list among its files, to be read again by a recall."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from signage.ground.fingerprint import canonical_json
from signage.model.current_sheet import CurrentSheet, CurrentSheets

RELEASED_LIST = "site-assets/released.json"

State = Mapping[str, Any]


def published_state(sheet: CurrentSheet | None) -> State:
    """What the list says of a protocol in a language."""
    if sheet is None:
        return {"hash": None, "withdrawn": False}
    return {"hash": sheet.hash, "withdrawn": sheet.is_withdrawn}


def released_list(current: CurrentSheets) -> bytes:
    """The list: by protocol and language the full fingerprint of what is in force, and what is withdrawn."""
    found: dict[str, dict[str, State]] = {}
    for (subject, tag), sheet in current.items():
        found.setdefault(subject, {})[tag] = published_state(sheet)
    return canonical_json(found)


def read_published(folder: Path) -> Mapping[str, Mapping[str, State]] | None:
    """The list of the site in a folder; None where there is none or it cannot be read."""
    try:
        content = json.loads((folder / RELEASED_LIST).read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError):
        return None
    if not isinstance(content, dict) or not all(isinstance(each, dict) for each in content.values()):
        return None
    return content
