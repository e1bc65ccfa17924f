"""Scenes that a library adds."""

import pytest

from signage.ground.errors import WrongUsageError
from signage.ground.problem import with_problems
from signage.pictograms.own_scenes import read_own_pictures
from signage.pictograms.palette import DON
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES
from signage.pictograms.picture_set import PictureSet

CARD = """\
theme: don
focus: card
gloss: {who: wearer, does: show, what: a card}
alt: A hand holds up a card.
layers:
  - {id: hand, part: hand-open, at: [48, 80], args: {arm: 10}}
  - {id: card, part: card, at: [48, 28]}
"""


def read(tmp_path, text, name="our-card"):
    file = tmp_path / f"{name}.yaml"
    file.write_text(text, encoding="utf-8")
    return with_problems(read_own_pictures([(file, f"content/scenes/{name}.yaml")]))


@pytest.fixture
def pictures(tmp_path):
    own, problems = read(tmp_path, CARD)
    assert problems == ()
    return PictureSet(tuple(own))


def test_an_own_picture_is_drawn_and_said_by_its_name(pictures):
    assert pictures.scene("our-card") is pictures.own[0].scene
    assert pictures.form("our-card", DON).marks
    (message,) = pictures.messages(["our-card"])
    assert message.source == "A hand holds up a card."
    assert str(message.place) == "content/scenes/our-card.yaml:4:6"


def test_what_ships_is_in_every_set_and_what_a_library_draws_in_its_own_alone(pictures):
    assert set(pictures.names) == {*PICTURES.names, "our-card"}
    assert pictures.own_names == ("our-card",)
    assert pictures.form("sit-down", DON) is PICTURES.form("sit-down", DON)
    with pytest.raises(WrongUsageError, match="no picture is named 'our-card'"):
        PICTURES.scene("our-card")


def test_two_sets_have_other_pictures_of_the_same_name(pictures, tmp_path):
    before = pictures.fingerprint("our-card"), pictures.form("our-card", DON)
    own, _ = read(tmp_path, CARD.replace("at: [48, 28]", "at: [48, 40]"))
    others = PictureSet(tuple(own))
    assert others.fingerprint("our-card") != before[0]
    assert others.form("our-card", DON).marks != before[1].marks
    assert (pictures.fingerprint("our-card"), pictures.form("our-card", DON)) == before


def test_what_is_kept_of_a_picture_is_kept_under_all_that_rules_and_sheets_take_from_it(pictures, tmp_path):
    seen, kept = pictures.fingerprint("our-card"), pictures.source_fingerprint("our-card")
    for old, new in (
        ("theme: don", "theme: doff"),
        ("who: wearer", "who: anyone"),
        ("alt: ", "alike: [sit-down]\nalt: "),
        ("alt: ", "cropped: [bottom]\nalt: "),
    ):
        changed = PictureSet(tuple(read(tmp_path, CARD.replace(old, new))[0]))
        assert changed.fingerprint("our-card") == seen
        assert changed.source_fingerprint("our-card") != kept
    shipped = {pictures.source_fingerprint(name) for name in PICTURES.names}
    assert len(shipped) == len(PICTURES.names)
    with pytest.raises(WrongUsageError, match="our-card"):
        PICTURES.source_fingerprint("our-card")


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("theme: don", "theme: red", "PIC-1"),
        ("alt: A hand", "alt: A {hand}", "PIC-1"),
        ("[48, 28]", "[48, .nan]", "PIC-5"),
        ("part: card", "part: cart", "PIC-2"),
        ("[48, 28]", "[48, 1.0e+300]", "PIC-5"),
        ("focus: card", "focus: cart", "PIC-3"),
        ("part: hand-open", "part: hand-open, style: accent", "PIC-4"),
    ],
)
def test_every_fault_comes_back_as_a_problem(tmp_path, old, new, code):
    assert old in CARD
    drawable, problems = read(tmp_path, CARD.replace(old, new))
    assert drawable == ()
    assert [problem.code for problem in problems] == [code]
    assert problems[0].place.path == "content/scenes/our-card.yaml"
    assert problems[0].hint


def test_the_faults_of_all_files_come_together(tmp_path):
    files = []
    for name in ("one", "two"):
        file = tmp_path / f"{name}.yaml"
        file.write_text(CARD.replace("theme: don", "theme: red"), encoding="utf-8")
        files.append((file, file.name))
    drawable, problems = with_problems(read_own_pictures(files))
    assert drawable == ()
    assert [problem.place.path for problem in problems] == ["one.yaml", "two.yaml"]


def test_what_looks_like_a_date_and_is_none_stays_a_text(tmp_path):
    (picture,), problems = read(tmp_path, CARD.replace("A hand holds up a card.", "2001-99-99"))
    assert problems == ()
    assert picture.scene.alternative == "2001-99-99"
