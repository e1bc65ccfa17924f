"""A scene file as plain values, each with its place, and its faults as problems."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path as FilePath
from typing import Any

import yaml
from pydantic import ValidationError

from signage.ground.place import Place
from signage.ground.problem import Problem
from signage.pictograms import faults
from signage.pictograms.reported import reported
from signage.pictograms.schema import SceneFile

Location = tuple[str | int, ...]

_PARSER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
"""The parser written in C where this installation has it."""


@dataclass(slots=True)
class _Reader:
    path: str
    scalars: yaml.SafeLoader = field(default_factory=lambda: yaml.SafeLoader(""))
    places: dict[Location, Place] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)

    def value(self, node: yaml.Node, location: Location) -> Any:
        self.places[location] = _place(self.path, node.start_mark)
        if isinstance(node, yaml.MappingNode):
            return self._mapping(node, location)
        if isinstance(node, yaml.SequenceNode):
            return [self.value(child, (*location, index)) for index, child in enumerate(node.value)]
        return self._scalar(node)

    def _scalar(self, node: yaml.Node) -> Any:
        """A number, a text, yes or no; what looks like a date or a number and is none stays a text."""
        try:
            return self.scalars.construct_object(node)
        except ValueError:
            return str(node.value)

    def _mapping(self, node: yaml.MappingNode, location: Location) -> dict[str, Any]:
        values: dict[str, Any] = {}
        for key_node, value_node in node.value:
            key = str(key_node.value)
            if key in values:
                place = _place(self.path, key_node.start_mark)
                self.problems.append(
                    _problem(place, f"the key {key!r} stands twice in one mapping", "Keep one of them.")
                )
            values[key] = self.value(value_node, (*location, key))
        return values


def _place(path: str, mark: yaml.Mark) -> Place:
    return Place(path, mark.line + 1, mark.column + 1)


def _problem(place: Place, message: str, hint: str) -> Problem:
    return faults.SCENE.problem(message, place, hint=hint)


@dataclass(frozen=True, slots=True)
class ReadScene:
    """A scene file that was read: the checked scene or None, where its values stand, what is wrong."""

    scene: SceneFile | None
    places: dict[Location, Place]
    problems: tuple[Problem, ...]

    def place(self, location: Location) -> Place:
        """Where a value stands, or the nearest value that holds it."""
        while location not in self.places and location:
            location = location[:-1]
        return self.places.get(location, Place(""))


def read_scene(file: FilePath, name: str) -> ReadScene:
    """The scene of a file. Problems carry ``name`` with line and column, not the path on this machine."""
    try:
        node = yaml.compose(file.read_text(encoding="utf-8"), Loader=_PARSER)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark
        place = _place(name, mark) if mark is not None else Place(name)
        problem = _problem(place, f"no YAML: {error.problem}", "Mend the line; check indentation and quotes.")
        return ReadScene(None, {}, (problem,))
    if node is None:
        problem = _problem(Place(name), "the file is empty", "Write a scene.")
        return ReadScene(None, {}, (problem,))
    reader = _Reader(name)
    values = reader.value(node, ())
    read = ReadScene(None, reader.places, tuple(reader.problems))
    try:
        scene = SceneFile.model_validate(values)
    except ValidationError as error:
        found = [
            faults.BOUNDS.problem(fault.message, read.place(fault.location))
            if fault.is_beyond_bounds
            else _problem(
                read.place(fault.location),
                fault.message,
                "docs/pictures.md lists the keys of scenes, layers and paths with their forms.",
            )
            for fault in reported(error.errors())
        ]
        return ReadScene(None, reader.places, (*reader.problems, *found))
    return ReadScene(scene, reader.places, tuple(reader.problems))
