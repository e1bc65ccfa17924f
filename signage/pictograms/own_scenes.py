"""The pictures that a library has drawn itself: read from its scenes, and proved to be drawable."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path as FilePath

import pathops

from signage.ground.errors import UnreadableInputError
from signage.ground.place import Place
from signage.ground.problem import Problem
from signage.pictograms import faults
from signage.pictograms.picture import Picture
from signage.pictograms.scenes import load_scene


def read_own_pictures(files: Iterable[tuple[FilePath, str]]) -> tuple[list[Picture], list[Problem]]:
    """The pictures of scenes that can be read and drawn, and every problem of the others.

    Each file comes with the path that messages show.
    """
    found: list[Picture] = []
    problems: list[Problem] = []
    for file, shown in files:
        try:
            picture = Picture(load_scene(file, shown))
        except UnreadableInputError as unreadable:
            problems += unreadable.problems
            continue
        reason = _why_undrawable(picture)
        if reason:
            problems.append(faults.LAYER.problem(reason, Place(shown)))
        else:
            found.append(picture)
    return found, problems


def _why_undrawable(picture: Picture) -> str:
    """Why the outlines of a scene cannot be joined; empty where they can."""
    try:
        picture.compiled()
    except pathops.PathOpsError:
        return "the outlines of the scene cannot be joined; look for a shape that crosses itself"
    return ""
