"""The pictures that a library has drawn itself: read from its scenes, and proved to be drawable."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path as FilePath

from signage.ground.errors import UnreadableInputError
from signage.ground.place import Place
from signage.ground.problem import Reading, read_each
from signage.pictograms import faults
from signage.pictograms.picture import Picture


def read_own_pictures(files: Iterable[tuple[FilePath, str]]) -> Reading[tuple[Picture, ...]]:
    """The pictures of scenes that can be read and drawn.

    Each file comes with the path that messages show.
    """
    pictures = yield from read_each(_read(file, shown) for file, shown in files)
    return tuple(picture for picture in pictures if picture is not None)


def _read(file: FilePath, shown: str) -> Reading[Picture | None]:
    """The picture of a scene; None where it cannot be read or drawn."""
    from signage.pictograms.scenes import load_scene  # noqa: PLC0415 - few libraries have own scenes

    try:
        picture = Picture(load_scene(file, shown))
    except UnreadableInputError as unreadable:
        yield from unreadable.problems
        return None
    reason = _why_undrawable(picture)
    if reason:
        yield faults.LAYER.problem(reason, Place(shown))
        return None
    return picture


def _why_undrawable(picture: Picture) -> str:
    """Why the outlines of a scene cannot be joined; empty where they can."""
    import pathops  # noqa: PLC0415 - few libraries have own scenes

    try:
        picture.compiled()
    except pathops.PathOpsError:
        return "the outlines of the scene cannot be joined; look for a shape that crosses itself"
    return ""
