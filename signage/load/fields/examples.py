"""One example of each field, out of a small library that uses them all."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from importlib.resources import files
from typing import Any

import yaml

from signage.load.step_grammar import ACTION_KEYS

_FOLDER = "example_content"
_LONGEST = 48


@lru_cache(maxsize=1)
def _documents() -> dict[str, Any]:
    """The example files by the name of their kind, every scalar as a text."""
    root = files("signage.load") / _FOLDER
    found: dict[str, Any] = {}
    for folder, kind in ((root, ""), (root / "wards", "ward"), (root / "protocols", "protocol")):
        for entry in folder.iterdir():
            if entry.name.endswith(".yaml"):
                text = entry.read_text(encoding="utf-8")
                found[kind or entry.name.removesuffix(".yaml")] = yaml.load(text, yaml.BaseLoader)  # noqa: S506 - makes texts only
    return found


def example_of(kind: str, way: tuple[str, ...], key: str) -> str:
    """The first example of a key, as an author would write it; empty where only keys stand below it.

    ``way`` are the keys that lead to its mapping, such as ``("phases", "steps")``; entries of lists and
    mappings on it are tried one after another.
    """
    for mapping in _mappings(_documents()[kind], way):
        if key in mapping:
            return _written(mapping[key])
    return ""


def _mappings(value: Any, way: tuple[str, ...]) -> Iterator[dict[str, Any]]:
    """Every mapping at the end of a way; a step with one movement is that movement too."""
    if not way:
        if isinstance(value, dict):
            yield value
        return
    if not isinstance(value, dict):
        return
    if way == ("do",) and isinstance(value.get("do"), str):
        yield {key: value[key] for key in value if key in ACTION_KEYS}
        return
    below = value.get(way[0], {})
    for each in below if isinstance(below, list) else below.values() if isinstance(below, dict) else ():
        yield from _mappings(each, way[1:])


def _written(value: Any) -> str:
    """A value in one line of YAML; empty where it holds mappings or is too long to be read in a table."""
    if isinstance(value, str):
        return value if len(value) <= _LONGEST else ""
    if isinstance(value, list):
        shown = [_written(each) for each in value]
        return f"[{', '.join(shown)}]" if all(shown) else ""
    shown = [f"{key}: {_written(each)}" for key, each in value.items() if not isinstance(each, dict)]
    return f"{{{', '.join(shown)}}}" if len(shown) == len(value) else ""
