"""The scenes of a library: read beside those that ship with the project, and then found by name like them."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path as FilePath

import pathops

from signage.ground.errors import UnreadableInputError
from signage.ground.place import Place
from signage.ground.problem import Problem
from signage.pictograms import faults
from signage.pictograms.picture import compiled, compiled_scene
from signage.pictograms.scenes import Scene, add_scene, load_scene


def read_scenes(files: Iterable[tuple[FilePath, str]]) -> tuple[list[Scene], list[Problem]]:
    """The scenes of files that can be read and drawn, and every problem of the others.

    Each file comes with the path that messages show.
    """
    found: list[Scene] = []
    problems: list[Problem] = []
    for file, shown in files:
        try:
            scene = load_scene(file, shown)
        except UnreadableInputError as unreadable:
            problems += unreadable.problems
            continue
        reason = _why_undrawable(scene)
        if reason:
            problems.append(faults.LAYER.problem(reason, Place(shown)))
        else:
            found.append(scene)
    return found, problems


def _why_undrawable(scene: Scene) -> str:
    """Why the outlines of a scene cannot be joined; empty where they can."""
    try:
        compiled(scene.operations)
    except pathops.PathOpsError:
        return "the outlines of the scene cannot be joined; look for a shape that crosses itself"
    return ""


def add_scenes(added: Iterable[Scene]) -> None:
    """Make scenes known by their names to everything that draws; a later scene of a name takes its place."""
    has_replaced = [add_scene(scene) for scene in added]
    if any(has_replaced):
        compiled_scene.cache_clear()
