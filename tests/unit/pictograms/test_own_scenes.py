"""Scenes that a library adds."""

import pytest

from signage.pictograms.own_scenes import add_scenes, read_scenes
from signage.pictograms.palette import DON
from signage.pictograms.picture import picture_form
from signage.pictograms.scenes import picture_messages, scene_fingerprint, scene_names, scene_of

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
    return read_scenes([(file, f"content/scenes/{name}.yaml")])


@pytest.fixture
def added(tmp_path):
    scenes, problems = read(tmp_path, CARD)
    assert problems == []
    add_scenes(scenes)
    return scenes[0]


def test_an_added_scene_is_drawn_and_said_by_its_name(added):
    assert scene_of("our-card") is added
    assert picture_form("our-card", DON).marks
    (message,) = picture_messages(["our-card"])
    assert message.source == "A hand holds up a card."
    assert str(message.place) == "content/scenes/our-card.yaml:4:6"


def test_what_ships_is_not_mixed_with_what_a_library_adds(added):
    assert "our-card" not in scene_names()


def test_a_changed_scene_of_the_same_name_takes_its_place(added, tmp_path):
    before = scene_fingerprint("our-card"), picture_form("our-card", DON).marks
    scenes, _ = read(tmp_path, CARD.replace("at: [48, 28]", "at: [48, 40]"))
    add_scenes(scenes)
    assert scene_fingerprint("our-card") != before[0]
    assert picture_form("our-card", DON).marks != before[1]


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
    scenes, problems = read(tmp_path, CARD.replace(old, new))
    assert scenes == []
    assert [problem.code for problem in problems] == [code]
    assert problems[0].place.path == "content/scenes/our-card.yaml"
    assert problems[0].hint


def test_the_faults_of_all_files_come_together(tmp_path):
    files = []
    for name in ("one", "two"):
        file = tmp_path / f"{name}.yaml"
        file.write_text(CARD.replace("theme: don", "theme: red"), encoding="utf-8")
        files.append((file, file.name))
    scenes, problems = read_scenes(files)
    assert scenes == []
    assert [problem.place.path for problem in problems] == ["one.yaml", "two.yaml"]


def test_what_looks_like_a_date_and_is_none_stays_a_text(tmp_path):
    (scene,), problems = read(tmp_path, CARD.replace("A hand holds up a card.", "2001-99-99"))
    assert problems == []
    assert scene.alternative == "2001-99-99"
