import json
import subprocess
import sys

import pathops
import pytest

from signage.pictograms import catalogue
from signage.pictograms.catalogue import (
    CATALOGUE,
    COMPILED,
    catalogue_text,
    compiled_text,
    known_layers,
    known_scene,
)
from signage.pictograms.picture import Picture
from signage.pictograms.scenes import load_scene
from signage.pictograms.shipped import SCENE_FOLDER, shipped_names


def test_the_catalogue_says_what_the_scenes_say():
    assert CATALOGUE.read_text(encoding="utf-8") == catalogue_text(), "write it anew with .ci/scenes"
    for name in shipped_names():
        known, read = known_scene(name), Picture(load_scene(SCENE_FOLDER / f"{name}.yaml"))
        assert known.scene == read.scene
        assert known.scene.nodes == read.scene.nodes
        assert Picture(known.scene, known).source_fingerprint == read.source_fingerprint


def test_the_outlines_that_ship_are_those_of_the_scenes():
    files = {file.stem: file.read_text(encoding="utf-8") for file in COMPILED.glob("*.json")}
    assert sorted(files) == list(shipped_names())
    if any(json.loads(text)["skia-pathops"] != pathops.__version__ for text in files.values()):
        pytest.skip("the outlines that ship were joined by another version of the geometry library")
    assert [name for name, text in files.items() if text != compiled_text(name)] == []


def test_outlines_of_other_passes_are_not_believed(monkeypatch):
    known = known_scene("apron-on")
    assert known_layers("apron-on", known.passes[0])
    assert known_layers("apron-on", known.passes[0][::-1]) is None
    monkeypatch.setattr(catalogue, "digest_of_compiler", lambda: "another compiler")
    assert known_layers("apron-on", known.passes[0]) is None


@pytest.mark.parametrize(
    "change",
    [
        lambda text: text.replace('"source": "', '"source": "0'),
        lambda text: text.replace('"builders": "', '"builders": "0'),
        lambda text: text[:5000],
        lambda _text: "[]",
    ],
)
def test_an_entry_of_another_scene_or_another_kit_is_not_believed(change, tmp_path, monkeypatch):
    changed = tmp_path / "scene_catalogue.json"
    changed.write_text(change(CATALOGUE.read_text(encoding="utf-8")), encoding="utf-8")
    monkeypatch.setattr(catalogue, "CATALOGUE", changed)
    catalogue._entries.cache_clear()
    try:
        assert known_scene("apron-on") is None
    finally:
        catalogue._entries.cache_clear()


def test_sheets_of_shipped_pictures_load_neither_the_drawing_kit_nor_the_geometry_library():
    code = (
        "import sys; from signage.pictograms.picture_set import SHIPPED_PICTURES as pictures;"
        "[(pictures.fingerprint(name), pictures.scene(name).alternative) for name in pictures.names];"
        "pictures.compiled('apron-on');"
        "kit = ('signage.pictograms.kit.', 'pathops', 'yaml');"
        "print(sorted(name for name in sys.modules if name.startswith(kit)))"
    )
    told = subprocess.run(
        [sys.executable, "-c", code], check=True, timeout=60, capture_output=True, text=True
    )
    assert told.stdout.strip() == "['signage.pictograms.kit.nodes', 'signage.pictograms.kit.paths']"
