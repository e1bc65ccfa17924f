"""The scenes that ship with the project, by name."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from importlib import resources
from pathlib import Path as FilePath

from signage.ground.errors import UnreadableInputError, WrongUsageError
from signage.ground.fingerprint import fingerprint
from signage.ground.place import Place
from signage.ground.problem import Problem, Severity
from signage.model.messages import Message, MessageRole
from signage.pictograms.build import LayerFaultError, build_scene
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

    @property
    def operations(self) -> tuple[Operation, ...]:
        """The painting passes in order."""
        return tuple(flatten(self.nodes))


def load_scene(file: FilePath) -> Scene:
    """The scene of a file. Raises UnreadableInputError with every problem of the file."""
    name = file.stem
    read = read_scene(file, f"scenes/{file.name}")
    if read.scene is None or read.problems:
        raise UnreadableInputError(read.problems)
    try:
        nodes = build_scene(read.scene)
    except LayerFaultError as fault:
        place = read.place(fault.location)
        hint = "See the list of parts and their arguments."
        problem = Problem("PIC-2", "layer cannot be drawn", Severity.S1, fault.message, hint, place)
        raise UnreadableInputError([problem]) from fault
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
    )


def _focus_problems(scene: SceneFile, read: ReadScene) -> list[Problem]:
    ids = [layer.id for layer in scene.layers]
    count = ids.count(scene.focus)
    if count == 1:
        return []
    message = f"the focus {scene.focus!r} names {count} layers; it must name exactly one of {', '.join(ids)}"
    hint = "Give the item of the step one layer, and further pieces of it the key belongs_to."
    return [Problem("PIC-3", "focus is unclear", Severity.S1, message, hint, read.place(("focus",)))]


def _accent_problems(nodes: tuple[Node, ...], read: ReadScene) -> list[Problem]:
    strangers = {
        operation.role
        for operation in flatten(nodes)
        if operation.pigment == "accent" and operation.role.partition(".")[0] != ITEM
    }
    hint = "Only the focus is painted in the accent: give the others ink, tone or paper."
    return [
        Problem(
            "PIC-4",
            "two accents",
            Severity.S1,
            f"{role!r} is painted in the accent but is no piece of the focus",
            hint,
            read.place(("layers",)),
        )
        for role in sorted(strangers)
    ]


@cache
def scene_names() -> tuple[str, ...]:
    """The names of all scenes in alphabetical order."""
    return tuple(sorted(file.stem for file in SCENE_FOLDER.glob("*.yaml")))


@cache
def scene_of(name: str) -> Scene:
    """The scene of a name. Raises WrongUsageError if there is none."""
    if name not in scene_names():
        raise WrongUsageError(f"no picture is named {name!r}; pictures are {', '.join(scene_names())}")
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
