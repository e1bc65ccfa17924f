"""What is known of the scenes that ship, in one file that is read at once.

Reading seventy scenes and building them takes half a second; a sheet needs the sentences and fingerprints
of all, and the nodes of none that has been compiled before. ``.ci/scenes`` writes the file anew. An entry
is believed only beside the very scene, and the very code, that it was made from.
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
    from signage.pictograms.kit.nodes import Node

CATALOGUE = Path(str(resources.files("signage.pictograms"))) / "scene_catalogue.json"

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


def write_catalogue() -> None:
    """Write the catalogue anew beside the scenes."""
    CATALOGUE.write_text(catalogue_text(), encoding="utf-8")
