import pytest

from signage.ground.kept import Kept
from signage.pictograms.kit.nodes import CANVAS
from signage.pictograms.palette import DOFF, DON, HANDS, MONO, PALETTES
from signage.pictograms.picture import Picture
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES
from signage.pictograms.scan import area, coverage


def drawn_anew(name):
    """A picture of which nothing is remembered."""
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


def test_a_compiled_picture_is_taken_from_an_earlier_run(tmp_path, monkeypatch):
    kept = Kept(tmp_path)
    first = drawn_anew("sit-down").compiled(kept=kept)

    def compile_again(_operations):
        raise AssertionError

    with monkeypatch.context() as patch:
        patch.setattr("signage.pictograms.compile.compile_operations", compile_again)
        assert drawn_anew("sit-down").compiled(kept=kept) == first
        with pytest.raises(AssertionError):
            drawn_anew("sit-down").compiled(kept=Kept(tmp_path, is_fresh=True))
    assert drawn_anew("sit-down").compiled(kept=Kept(tmp_path, is_fresh=True)) == first
