"""How a scene comes of its file."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from pathlib import Path as FilePath

from signage.ground.errors import UnreadableInputError
from signage.ground.problem import Problem
from signage.pictograms import faults
from signage.pictograms.build import LayerFaultError, build_scene
from signage.pictograms.burden import crowding, overload
from signage.pictograms.kit.nodes import ITEM, Node, flatten
from signage.pictograms.reading import ReadScene, read_scene
from signage.pictograms.scene import Gloss, Scene
from signage.pictograms.schema import SceneFile


def load_scene(file: FilePath, shown: str = "") -> Scene:
    """The scene of a file; ``shown`` is the path that its places carry, by default ``scenes/NAME.yaml``.

    Raises UnreadableInputError with every problem of the file.
    """
    name = file.stem
    read = read_scene(file, shown or f"scenes/{file.name}")
    if read.scene is None or read.problems:
        raise UnreadableInputError(read.problems)
    nodes = _nodes(read.scene, read)
    problems = [*_focus_problems(read.scene, read), *_accent_problems(nodes, read)]
    if problems:
        raise UnreadableInputError(problems)
    source = read.scene
    return Scene(
        name,
        source.theme,
        source.focus,
        source.handed,
        source.mirror,
        Gloss(**source.gloss.model_dump()),
        source.alt,
        frozenset(source.cropped),
        read.place(("alt",)),
        partial(tuple, nodes),
        frozenset(source.alike),
    )


def _nodes(scene: SceneFile, read: ReadScene) -> tuple[Node, ...]:
    """The nodes of the layers. Raises UnreadableInputError where one cannot be drawn or draws too much."""
    crowd = crowding(scene.layers)
    if crowd is not None:
        raise UnreadableInputError([faults.BOUNDS.problem(crowd.message, read.place(crowd.location))])
    try:
        nodes = build_scene(scene)
    except LayerFaultError as fault:
        kind = faults.BOUNDS if fault.is_beyond_bounds else faults.LAYER
        raise UnreadableInputError([kind.problem(fault.message, read.place(fault.location))]) from fault
    excess = overload(nodes)
    if excess is not None:
        raise UnreadableInputError([faults.BOUNDS.problem(excess.message, read.place(excess.location))])
    return nodes


def _focus_problems(scene: SceneFile, read: ReadScene) -> Iterator[Problem]:
    ids = [layer.id for layer in scene.layers]
    count = ids.count(scene.focus)
    if count != 1:
        one = f"it must name exactly one of {', '.join(ids)}"
        message = f"the focus {scene.focus!r} names {count} layers; {one}"
        yield faults.FOCUS.problem(message, read.place(("focus",)))


def _accent_problems(nodes: tuple[Node, ...], read: ReadScene) -> Iterator[Problem]:
    strangers = {
        operation.role
        for operation in flatten(nodes)
        if operation.pigment == "accent" and operation.role.partition(".")[0] != ITEM
    }
    for role in sorted(strangers):
        yield faults.ACCENT.problem(
            f"{role!r} is painted in the accent but is no piece of the focus", read.place(("layers",))
        )
