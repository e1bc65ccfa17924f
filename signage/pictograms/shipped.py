"""Which scenes ship with the programme; nothing of them is read here."""

import hashlib
from functools import cache
from importlib import resources
from pathlib import Path

SCENE_FOLDER = Path(str(resources.files("signage.pictograms"))) / "scenes"


@cache
def shipped_names() -> tuple[str, ...]:
    """The names of the pictures that ship with the programme, in alphabetical order."""
    return tuple(sorted(file.stem for file in SCENE_FOLDER.glob("*.yaml")))


@cache
def digest_of_scene(name: str) -> str:
    """SHA-256 of the file of a shipped scene."""
    return hashlib.sha256((SCENE_FOLDER / f"{name}.yaml").read_bytes()).hexdigest()
