"""What was signed, kept beside the records by its hash, so that it can be shown after the content changed."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

from signage.control.binding import Binding
from signage.ground.files import read_ordinary, write_whole
from signage.load.content_files import SIGNED_CONTENT

_MOST_BYTES = 20_000_000


def path_of(content: Path, binds: str) -> Path:
    """The file that holds what a record binds."""
    return content / SIGNED_CONTENT / f"{binds}.json"


def find_approved(content: Path, binds: str) -> Binding | None:
    """What a record binds; None where its file is missing or holds anything else."""
    try:
        data = read_ordinary(path_of(content, binds), _MOST_BYTES)
        if hashlib.sha256(data).hexdigest() != binds:
            return None
        return Binding.from_json(json.loads(data))
    except (OSError, ValueError, KeyError, TypeError):
        return None


def keep_approved(content: Path, binding: Binding) -> Path:
    """Write what is signed into the file that is named after it."""
    path = path_of(content, binding.hash)
    write_whole(path, binding.data(), is_durable=True)
    return path
