"""The scenes by name: those that ship with the project, and those that a library adds."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from importlib import resources
from pathlib import Path as FilePath

from signage.ground.errors import UnreadableInputError, WrongUsageError
from signage.ground.fingerprint import fingerprint
from signage.ground.place import Place
from signage.ground.problem import Problem
from signage.model.messages import Message, MessageRole
from signage.pictograms import faults
from signage.pictograms.build import LayerFaultError, build_scene
from signage.pictograms.burden import crowding, overload
from signage.pictograms.kit.nodes import ITEM, Node, Operation, flatten
from signage.pictograms.reading import ReadScene, read_scene
from signage.pictograms.schema import Gloss, MirrorRule, SceneFile, Theme

SCENE_FOLDER = FilePath(str(resources.files("signage.pictograms"))) / "scenes"


@dataclass(frozen=True, slots=True)
class Scene:
    """A scene that is ready to draw."""

    name: str
    theme: Theme
    focus: str
    handed: bool
    mirror: MirrorRule
    gloss: Gloss
    alternative: str
    cropped: frozenset[str]
    nodes: tuple[Node, ...]
    place: Place
    alike: frozenset[str] = frozenset()

    @property
    def operations(self) -> tuple[Operation, ...]:
        """The painting passes in order."""
        return tuple(flatten(self.nodes))


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
        source.gloss,
        source.alt,
        frozenset(source.cropped),
        nodes,
        read.place(("alt",)),
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


def _focus_problems(scene: SceneFile, read: ReadScene) -> list[Problem]:
    ids = [layer.id for layer in scene.layers]
    count = ids.count(scene.focus)
    if count == 1:
        return []
    message = f"the focus {scene.focus!r} names {count} layers; it must name exactly one of {', '.join(ids)}"
    return [faults.FOCUS.problem(message, read.place(("focus",)))]


def _accent_problems(nodes: tuple[Node, ...], read: ReadScene) -> list[Problem]:
    strangers = {
        operation.role
        for operation in flatten(nodes)
        if operation.pigment == "accent" and operation.role.partition(".")[0] != ITEM
    }
    return [
        faults.ACCENT.problem(
            f"{role!r} is painted in the accent but is no piece of the focus", read.place(("layers",))
        )
        for role in sorted(strangers)
    ]


_ADDED: dict[str, Scene] = {}
"""The scenes of libraries, by name."""


def add_scene(scene: Scene) -> bool:
    """Make a scene known by its name; returns whether another of that name was known and gave way."""
    has_replaced = scene.name in _ADDED
    if has_replaced:
        scene_of.cache_clear()
        scene_fingerprint.cache_clear()
    _ADDED[scene.name] = scene
    return has_replaced


@cache
def scene_names() -> tuple[str, ...]:
    """The names of the scenes that ship with the project, in alphabetical order."""
    return tuple(sorted(file.stem for file in SCENE_FOLDER.glob("*.yaml")))


@cache
def scene_of(name: str) -> Scene:
    """The scene of a name. Raises WrongUsageError if there is none."""
    if name in _ADDED:
        return _ADDED[name]
    if name not in scene_names():
        known = ", ".join(sorted({*scene_names(), *_ADDED}))
        raise WrongUsageError(f"no picture is named {name!r}; pictures are {known}")
    return load_scene(SCENE_FOLDER / f"{name}.yaml")


@cache
def scene_fingerprint(name: str) -> str:
    """SHA-256 of what a reader sees and hears of a picture: paint, mirroring, sentence."""
    scene = scene_of(name)
    return fingerprint(
        {
            "alternative": scene.alternative,
            "mirror": scene.mirror,
            "handed": scene.handed,
            "operations": [operation_record(operation) for operation in scene.operations],
        }
    )


def operation_record(operation: Operation) -> list[object]:
    """An operation as plain values with coordinates at 0.01 unit."""

    def numbers(path: tuple[tuple[str | float, ...], ...]) -> list[object]:
        return [
            [round(value, 2) + 0.0 if isinstance(value, float | int) else value for value in segment]
            for segment in path
        ]

    return [
        numbers(operation.path),
        operation.pigment,
        round(operation.width, 2),
        operation.is_filled,
        operation.has_butt_caps,
        [[[numbers(member.path), round(member.width, 2)] for member in clip] for clip in operation.within],
    ]


def picture_messages(names: Iterable[str]) -> list[Message]:
    """The sentences that stand for pictures where they are not seen, to translate."""
    return [
        Message(
            f"picture/{name}",
            scene_of(name).alternative,
            MessageRole.PICTURE,
            scene_of(name).place,
            picture=name,
        )
        for name in names
    ]
