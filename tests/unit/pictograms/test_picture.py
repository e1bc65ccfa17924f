import json

import pytest

from signage.pictograms import picture
from signage.pictograms.kit.nodes import CANVAS
from signage.pictograms.palette import DOFF, DON, HANDS, MONO, PALETTES
from signage.pictograms.picture import cache_folder, compiled_scene, picture_form
from signage.pictograms.scan import area, coverage


@pytest.fixture
def own_cache(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    compiled_scene.cache_clear()
    yield tmp_path
    compiled_scene.cache_clear()


def covered(form):
    return sum(area(mark.path) for mark in form.marks)


def test_a_form_holds_filled_paths_and_nothing_else():
    form = picture_form("apron-on", DON)
    assert form.size == CANVAS
    assert all(mark.fill is not None and mark.stroke is None for mark in form.marks)


def test_the_palette_chooses_the_fills():
    accents = {
        palette.name: {mark.fill for mark in picture_form("apron-on", palette).marks}
        for palette in PALETTES.values()
    }
    assert "#0F86D2" in accents["don"]
    assert "#0F86D2" not in accents["doff"]
    assert MONO.accent in accents["mono"]
    assert HANDS.accent in accents["hands"]


def test_a_palette_changes_no_outline():
    paths = [[mark.path for mark in picture_form("hood-off", palette).marks] for palette in (DON, DOFF, MONO)]
    assert paths[0] == paths[1] == paths[2]


def test_equal_forms_share_a_key_and_others_do_not():
    keys = {
        picture_form(name, palette, mirrored).key
        for name in ("sit-down", "stand-up")
        for palette in (DON, MONO)
        for mirrored in (False, True)
    }
    assert len(keys) == 8


def test_hands_and_heads_stay_as_they_are_on_a_right_to_left_sheet():
    assert picture_form("goggles-off", DOFF, mirrored=True) == picture_form("goggles-off", DOFF)


def test_travel_runs_with_the_reading_on_a_right_to_left_sheet():
    plain, mirrored = (
        dict(compiled_scene("to-corridor", mirrored=is_mirrored))["tone"] for is_mirrored in (False, True)
    )
    left = [row[::-1] for row in coverage(plain, 24, CANVAS)]
    assert left == [pytest.approx(row, abs=0.02) for row in coverage(mirrored, 24, CANVAS)]


@pytest.mark.parametrize("name", ["sit-down", "to-dirty-side", "enter-room"])
def test_a_mirrored_picture_loses_nothing(name):
    assert covered(picture_form(name, DON, mirrored=True)) == pytest.approx(
        covered(picture_form(name, DON)), rel=0.005
    )


def test_a_compiled_picture_is_kept_on_disk_and_read_again(own_cache):
    first = compiled_scene("sit-down")
    (kept,) = cache_folder().glob("*.json")
    assert kept.is_relative_to(own_cache)
    compiled_scene.cache_clear()
    assert compiled_scene("sit-down") == first


def test_a_damaged_kept_picture_is_drawn_anew(own_cache):
    first = compiled_scene("sit-down")
    (kept,) = cache_folder().glob("*.json")
    stored = json.loads(kept.read_text())
    stored["layers"] = stored["layers"][:1]
    kept.write_text(json.dumps(stored))
    compiled_scene.cache_clear()
    assert compiled_scene("sit-down") == first


def test_rubbish_in_the_cache_does_no_harm(own_cache):
    first = compiled_scene("sit-down")
    (kept,) = cache_folder().glob("*.json")
    for damage in (
        b"",
        b"[]",
        b"{",
        b'{"fingerprint": 1}',
        b"[" * 100_000,
        b"\xff\xfe",
        sealed(kept, "pink"),
    ):
        kept.write_bytes(damage)
        compiled_scene.cache_clear()
        assert compiled_scene("sit-down") == first, damage[:40]


def sealed(kept, pigment):
    """A file that another programme version could have left: whole, but with a colour that does not exist."""
    layers = [[pigment, [["M", 1, 2], ["Z"]]]]
    return json.dumps({"fingerprint": picture._seal(kept.stem, layers), "layers": layers}).encode()


def test_two_kept_pictures_under_each_others_names_are_not_believed(own_cache):
    names = ("sit-down", "stand-up")
    first = {name: compiled_scene(name) for name in names}
    one, other = cache_folder().glob("*.json")
    swapped = one.read_bytes(), other.read_bytes()
    one.write_bytes(swapped[1])
    other.write_bytes(swapped[0])
    compiled_scene.cache_clear()
    assert {name: compiled_scene(name) for name in names} == first


def test_a_machine_without_a_home_folder_draws_all_the_same(monkeypatch):
    def no_home():
        raise RuntimeError("Could not determine home directory.")

    monkeypatch.delenv("XDG_CACHE_HOME", raising=False)
    monkeypatch.setattr(picture.FilePath, "home", no_home)
    compiled_scene.cache_clear()
    assert picture_form("sit-down", DOFF).marks
    compiled_scene.cache_clear()


def test_a_cache_that_cannot_be_written_is_no_obstacle(tmp_path, monkeypatch):
    blocker = tmp_path / "file"
    blocker.write_text("")
    monkeypatch.setenv("XDG_CACHE_HOME", str(blocker))
    compiled_scene.cache_clear()
    assert picture_form("sit-down", DOFF).marks
    compiled_scene.cache_clear()


def test_without_the_variable_the_cache_lies_in_the_home_folder(tmp_path, monkeypatch):
    monkeypatch.delenv("XDG_CACHE_HOME", raising=False)
    monkeypatch.setattr(picture.FilePath, "home", lambda: tmp_path)
    assert cache_folder() == tmp_path / ".cache" / "signage" / "pictures"
