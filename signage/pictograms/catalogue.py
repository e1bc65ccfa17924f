"""What is known of the scenes that ship, in one file that is read at once, and their compiled outlines.

Reading and building seventy scenes takes half a second, and joining their outlines more than one; a sheet
needs the sentences and fingerprints of all, and the outlines of a few. ``.ci/scenes`` writes the files anew.
An entry is believed only beside the very scene, and the very code, that it was made from. Outlines that
ship are also the same on every machine, whichever version of the geometry library it has.
"""

from __future__ import annotations

import hashlib
import json
from functools import cache, partial
from importlib import resources
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from signage.ground.place import Place
from signage.pictograms.scene import Gloss, Scene
from signage.pictograms.shipped import SCENE_FOLDER, digest_of_scene, shipped_names

if TYPE_CHECKING:
    from signage.pictograms.kit.nodes import CompiledLayer, Node

CATALOGUE = Path(str(resources.files("signage.pictograms"))) / "scene_catalogue.json"

COMPILED = CATALOGUE.with_name("compiled")
"""A file a scene: outlines by the fingerprint of the painting passes that they were joined from."""

_BUILDERS = ("build.py", "reading.py", "schema.py", "scenes.py", "kit/*.py")
"""The code that makes nodes of a scene's file."""


class Known(NamedTuple):
    """A scene, the fingerprint of its picture, and those of its painting passes: as drawn, and mirrored."""

    scene: Scene
    fingerprint: str
    passes: tuple[str, str]


def known_scene(name: str) -> Known | None:
    """What is known of a shipped scene; None where its entry is missing or was made from something else."""
    entry = _entries().get(name)
    if entry is None or entry["source"] != digest_of_scene(name):
        return None
    told = entry["scene"]
    scene = Scene(
        name,
        told["theme"],
        told["focus"],
        told["handed"],
        told["mirror"],
        Gloss(**told["gloss"]),
        told["alternative"],
        frozenset(told["cropped"]),
        Place(*told["place"]),
        partial(_nodes_of, name),
        frozenset(told["alike"]),
    )
    plain, mirrored = entry["passes"]
    return Known(scene, entry["fingerprint"], (plain, mirrored))


def known_layers(name: str, passes: str) -> tuple[CompiledLayer, ...] | None:
    """The compiled outlines of a shipped scene; None where none were made from these painting passes."""
    try:
        stored = json.loads((COMPILED / f"{name}.json").read_bytes())
        if stored["compiler"] != digest_of_compiler():
            return None
        return layers_of_json(stored["layers"][passes])
    except (OSError, ValueError, KeyError, TypeError):
        return None


def layers_of_json(value: Any) -> tuple[CompiledLayer, ...]:
    """Outlines that were written as JSON."""
    return tuple([(pigment, tuple(map(tuple, path))) for pigment, path in value])


@cache
def digest_of_compiler() -> str:
    """SHA-256 of the code that joins painting passes to outlines."""
    return hashlib.sha256((SCENE_FOLDER.parent / "compile.py").read_bytes()).hexdigest()


def _nodes_of(name: str) -> tuple[Node, ...]:
    from signage.pictograms.scenes import load_scene  # noqa: PLC0415 - the drawing kit is seldom needed

    return load_scene(SCENE_FOLDER / f"{name}.yaml").nodes


@cache
def _entries() -> dict[str, Any]:
    try:
        stored = json.loads(CATALOGUE.read_bytes())
        return dict(stored["scenes"]) if stored["builders"] == _digest_of_builders() else {}
    except (OSError, ValueError, KeyError, TypeError):
        return {}


def _digest_of_builders() -> str:
    """SHA-256 of the code that makes nodes, in the order of its paths."""
    folder = SCENE_FOLDER.parent
    files = sorted(file for pattern in _BUILDERS for file in folder.glob(pattern))
    return hashlib.sha256(b"".join(file.read_bytes() for file in files)).hexdigest()


def catalogue_text() -> str:
    """The catalogue of all shipped scenes as they stand in their files, one line a scene."""
    from signage.pictograms.picture import Picture  # noqa: PLC0415 - it needs what is known from here
    from signage.pictograms.scenes import load_scene  # noqa: PLC0415 - the drawing kit is seldom needed

    lines = []
    for name in shipped_names():
        picture = Picture(load_scene(SCENE_FOLDER / f"{name}.yaml"))
        scene = picture.scene
        entry = {
            "source": digest_of_scene(name),
            "fingerprint": picture.fingerprint,
            "passes": [picture.passes_fingerprint(is_mirrored) for is_mirrored in (False, True)],
            "scene": {
                "theme": scene.theme,
                "focus": scene.focus,
                "handed": scene.handed,
                "mirror": scene.mirror,
                "gloss": {field: getattr(scene.gloss, field) for field in Gloss.__slots__},
                "alternative": scene.alternative,
                "cropped": sorted(scene.cropped),
                "place": [scene.place.path, scene.place.line, scene.place.column],
                "alike": sorted(scene.alike),
            },
        }
        lines.append(f"{json.dumps(name)}: {json.dumps(entry, ensure_ascii=False, sort_keys=True)}")
    scenes = ",\n".join(lines)
    return f'{{"builders": "{_digest_of_builders()}", "scenes": {{\n{scenes}\n}}}}\n'


def compiled_text(name: str) -> str:
    """The outlines of a shipped scene as they come of its file, one line a layer."""
    import pathops  # noqa: PLC0415 - only where outlines are joined

    from signage.pictograms.picture import Picture  # noqa: PLC0415 - it needs what is known from here
    from signage.pictograms.scenes import load_scene  # noqa: PLC0415 - the drawing kit is seldom needed

    picture = Picture(load_scene(SCENE_FOLDER / f"{name}.yaml"))
    drawings = []
    for is_mirrored in (False, True) if picture.scene.mirror == "with-layout" else (False,):
        layers = ",\n".join(
            json.dumps(layer, separators=(",", ":")) for layer in picture.compiled(is_mirrored)
        )
        drawings.append(f'"{picture.passes_fingerprint(is_mirrored)}": [\n{layers}\n]')
    head = f'"compiler": "{digest_of_compiler()}", "skia-pathops": "{pathops.__version__}"'
    return f'{{{head}, "layers": {{\n{", ".join(drawings)}\n}}}}\n'


def write_catalogue() -> None:
    """Write the catalogue and the outlines anew; those of scenes that are gone are taken away."""
    CATALOGUE.write_text(catalogue_text(), encoding="utf-8")
    COMPILED.mkdir(exist_ok=True)
    for file in COMPILED.glob("*.json"):
        file.unlink()
    for name in shipped_names():
        (COMPILED / f"{name}.json").write_text(compiled_text(name), encoding="utf-8")
