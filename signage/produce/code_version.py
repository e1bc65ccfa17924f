"""Which code made a result: the source of the rooms involved and the libraries under them."""

from __future__ import annotations

import hashlib
import platform
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from importlib.resources import files
from importlib.resources.abc import Traversable

from signage.ground.fingerprint import fingerprint

WORDS = ("ground", "model", "text", "words")
SHEETS = ("ground", "model", "drawing", "text", "rehearse", "words", "pictograms", "compose", "impose")
PICTURES = ("ground", "model", "drawing", "pictograms")
PAINT = ("paint",)
RULES = ("check", "control")
PAGES = ("ground", "model", "drawing", "text", "rehearse", "words", "pictograms", "pages")

_NOT_CODE = frozenset({"__pycache__", "scenes", "scene_catalogue.json"})

_LIBRARIES = (
    "babel",
    "brotli",
    "fonttools",
    "icu4py",
    "jinja2",
    "manimgx-fonts",
    "pillow",
    "pypdfium2",
    "qrcode",
    "reportlab",
    "skia-pathops",
    "uharfbuzz",
)


@cache
def code_version(*rooms: str) -> str:
    """SHA-256 of every file of some rooms, of the order of stages, and of the libraries that they call."""
    package = files("signage")
    return fingerprint(
        {
            "rooms": {room: _digest_of_room(room) for room in (*rooms, "produce")},
            "project": hashlib.sha256((package / "project.py").read_bytes()).hexdigest(),
            "libraries": {name: _version(name) for name in _LIBRARIES},
            "python": platform.python_version(),
        }
    )


@cache
def _digest_of_room(room: str) -> str:
    return _digest(files("signage") / room)


def _digest(folder: Traversable) -> str:
    """Of names and bytes, but for compiled files, and for scenes: each counts where its picture is shown."""
    digest = hashlib.sha256()
    for entry in sorted(folder.iterdir(), key=lambda entry: entry.name):
        if entry.name in _NOT_CODE:
            continue
        data = _digest(entry).encode() if entry.is_dir() else entry.read_bytes()
        digest.update(f"{entry.name}\n{len(data)}\n".encode())
        digest.update(data)
    return digest.hexdigest()


@cache
def _version(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:
        return ""
