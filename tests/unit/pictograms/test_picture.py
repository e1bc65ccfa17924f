import json

import pytest

from signage.pictograms import picture
from signage.pictograms.kit.nodes import CANVAS
from signage.pictograms.palette import DOFF, DON, HANDS, MONO, PALETTES
from signage.pictograms.picture import Picture, cache_folder
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES
from signage.pictograms.scan import area, coverage


@pytest.fixture
def own_cache(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    return tmp_path


def drawn_anew(name):
    """A picture of which nothing is remembered but what the cache folder holds."""
    return Picture(PICTURES.scene(name))


def covered(form):
    return sum(area(mark.path) for mark in form.marks)


def test_a_form_holds_filled_paths_and_nothing_else():
    form = PICTURES.form("apron-on", DON)
    assert form.size == CANVAS
    assert all(mark.fill is not None and mark.stroke is None for mark in form.marks)


def test_the_palette_chooses_the_fills():
    accents = {
        palette.name: {mark.fill for mark in PICTURES.form("apron-on", palette).marks}
        for palette in PALETTES.values()
    }
    assert "#0F86D2" in accents["don"]
    assert "#0F86D2" not in accents["doff"]
    assert MONO.accent in accents["mono"]
    assert HANDS.accent in accents["hands"]


def test_a_palette_changes_no_outline():
    paths = [
        [mark.path for mark in PICTURES.form("hood-off", palette).marks] for palette in (DON, DOFF, MONO)
    ]
    assert paths[0] == paths[1] == paths[2]


def test_the_same_form_is_the_same_object():
    assert PICTURES.form("sit-down", DON) is PICTURES.form("sit-down", DON)
    assert PICTURES.form("sit-down", DON) is not PICTURES.form("sit-down", MONO)


def test_equal_forms_share_a_key_and_others_do_not():
    keys = {
        PICTURES.form(name, palette, mirrored).key
        for name in ("sit-down", "stand-up")
        for palette in (DON, MONO)
        for mirrored in (False, True)
    }
    assert len(keys) == 8


def test_hands_and_heads_stay_as_they_are_on_a_right_to_left_sheet():
    assert PICTURES.form("goggles-off", DOFF, is_mirrored=True) == PICTURES.form("goggles-off", DOFF)


def test_travel_runs_with_the_reading_on_a_right_to_left_sheet():
    plain, mirrored = (
        dict(PICTURES.compiled("to-corridor", is_mirrored))["tone"] for is_mirrored in (False, True)
    )
    left = [row[::-1] for row in coverage(plain, 24, CANVAS)]
    assert left == [pytest.approx(row, abs=0.02) for row in coverage(mirrored, 24, CANVAS)]


@pytest.mark.parametrize("name", ["sit-down", "to-dirty-side", "enter-room"])
def test_a_mirrored_picture_loses_nothing(name):
    assert covered(PICTURES.form(name, DON, is_mirrored=True)) == pytest.approx(
        covered(PICTURES.form(name, DON)), rel=0.005
    )


def test_a_compiled_picture_is_kept_on_disk_and_read_again(own_cache):
    first = drawn_anew("sit-down").compiled()
    (kept,) = cache_folder().glob("*.json")
    assert kept.is_relative_to(own_cache)
    assert drawn_anew("sit-down").compiled() == first


def test_a_damaged_kept_picture_is_drawn_anew(own_cache):
    first = drawn_anew("sit-down").compiled()
    (kept,) = cache_folder().glob("*.json")
    stored = json.loads(kept.read_text())
    stored["layers"] = stored["layers"][:1]
    kept.write_text(json.dumps(stored))
    assert drawn_anew("sit-down").compiled() == first


def test_rubbish_in_the_cache_does_no_harm(own_cache):
    first = drawn_anew("sit-down").compiled()
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
        assert drawn_anew("sit-down").compiled() == first, damage[:40]


def sealed(kept, pigment):
    """A file that another programme version could have left: whole, but with a colour that does not exist."""
    layers = [[pigment, [["M", 1, 2], ["Z"]]]]
    return json.dumps({"fingerprint": picture._seal(kept.stem, layers), "layers": layers}).encode()


def test_two_kept_pictures_under_each_others_names_are_not_believed(own_cache):
    names = ("sit-down", "stand-up")
    first = {name: drawn_anew(name).compiled() for name in names}
    one, other = cache_folder().glob("*.json")
    swapped = one.read_bytes(), other.read_bytes()
    one.write_bytes(swapped[1])
    other.write_bytes(swapped[0])
    assert {name: drawn_anew(name).compiled() for name in names} == first


def test_a_machine_without_a_home_folder_draws_all_the_same(monkeypatch):
    def no_home():
        raise RuntimeError("Could not determine home directory.")

    monkeypatch.delenv("XDG_CACHE_HOME", raising=False)
    monkeypatch.setattr(picture.FilePath, "home", no_home)
    assert drawn_anew("sit-down").form(DOFF).marks


def test_a_cache_that_cannot_be_written_is_no_obstacle(tmp_path, monkeypatch):
    blocker = tmp_path / "file"
    blocker.write_text("")
    monkeypatch.setenv("XDG_CACHE_HOME", str(blocker))
    assert drawn_anew("sit-down").form(DOFF).marks


def test_without_the_variable_the_cache_lies_in_the_home_folder(tmp_path, monkeypatch):
    monkeypatch.delenv("XDG_CACHE_HOME", raising=False)
    monkeypatch.setattr(picture.FilePath, "home", lambda: tmp_path)
    assert cache_folder() == tmp_path / ".cache" / "signage" / "pictures"
