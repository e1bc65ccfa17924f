"""A scene as a drawing to place on sheets."""

from __future__ import annotations

import hashlib
import json
import os
from functools import cache
from importlib import metadata
from pathlib import Path as FilePath

from signage.drawing.marks import Form, PathMark
from signage.ground.errors import WrongUsageError
from signage.ground.files import write_whole
from signage.ground.fingerprint import canonical_json, fingerprint
from signage.ground.geometry import mirroring
from signage.pictograms import compile as compile_module
from signage.pictograms.compile import CompiledLayer, compile_operations
from signage.pictograms.kit.nodes import CANVAS, Operation, flatten, group
from signage.pictograms.palette import Palette
from signage.pictograms.scenes import operation_record, scene_of


def picture_form(name: str, palette: Palette, mirrored: bool = False) -> Form:
    """The picture of a scene, 96 units a side, as filled paths with transparent gaps.

    ``mirrored`` asks for the drawing of a right-to-left sheet; scenes whose rule is ``never`` stay
    as they are. Raises WrongUsageError if no scene has the name.
    """
    is_mirrored = mirrored and scene_of(name).mirror == "with-layout"
    marks = tuple(
        PathMark(path, fill=palette.fill(pigment)) for pigment, path in compiled_scene(name, is_mirrored)
    )
    suffix = "-mirrored" if is_mirrored else ""
    return Form(f"picture-{name}-{palette.name}{suffix}", CANVAS, marks)


@cache
def compiled_scene(name: str, mirrored: bool = False) -> tuple[CompiledLayer, ...]:
    """The layers of a scene, kept in memory and in the cache folder of the platform."""
    nodes = scene_of(name).nodes
    if mirrored:
        nodes = (group(*nodes, transform=mirroring(CANVAS / 2)),)
    return compiled(tuple(flatten(nodes)))


def compiled(operations: tuple[Operation, ...]) -> tuple[CompiledLayer, ...]:
    """The layers of painting passes, from the cache folder where they have been compiled before."""
    kept = cache_folder() / f"{_cache_key(operations)}.json"
    layers = _read_kept(kept)
    if layers is None:
        layers = compile_operations(operations)
        _keep(kept, layers)
    return layers


def cache_folder() -> FilePath:
    """Where compiled pictures are kept: ``$XDG_CACHE_HOME/signage`` or ``~/.cache/signage``."""
    root = os.environ.get("XDG_CACHE_HOME")
    base = FilePath(root) if root else FilePath.home() / ".cache"
    return base / "signage" / "pictures"


@cache
def _compiler() -> list[str]:
    """What decides the paths besides the operations: this compiler and the geometry library."""
    source = FilePath(compile_module.__file__).read_bytes()
    return [hashlib.sha256(source).hexdigest(), metadata.version("skia-pathops")]


def _cache_key(operations: tuple[Operation, ...]) -> str:
    return fingerprint([_compiler(), [operation_record(operation) for operation in operations]])


def _read_kept(file: FilePath) -> tuple[CompiledLayer, ...] | None:
    try:
        stored = json.loads(file.read_bytes())
        if stored["fingerprint"] != fingerprint(stored["layers"]):
            return None
        return tuple(
            (pigment, tuple(tuple(segment) for segment in path)) for pigment, path in stored["layers"]
        )
    except (OSError, ValueError, TypeError, KeyError):
        return None


def _keep(file: FilePath, layers: tuple[CompiledLayer, ...]) -> None:
    try:
        write_whole(file, canonical_json({"fingerprint": fingerprint(layers), "layers": layers}))
    except (OSError, WrongUsageError):
        return
