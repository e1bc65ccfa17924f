import pytest

from signage.ground.errors import UnreadableInputError
from signage.pictograms.reading import read_scene
from signage.pictograms.scenes import load_scene

GOOD = """\
theme: don
focus: drop
gloss: {who: wearer, does: rub, what: hands}
alt: A drop falls on a hand.
layers:
  - {id: hand, part: hand-open, at: [48, 70]}
  - {id: drop, part: drop, args: {centre: [48, 16]}}
"""


def problems_of(tmp_path, text):
    file = tmp_path / "trial.yaml"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(UnreadableInputError) as caught:
        load_scene(file)
    return caught.value.problems


def test_a_good_scene_is_read(tmp_path):
    file = tmp_path / "trial.yaml"
    file.write_text(GOOD, encoding="utf-8")
    scene = load_scene(file)
    assert (scene.name, scene.theme, scene.mirror) == ("trial", "don", "never")
    assert str(scene.place) == "scenes/trial.yaml:4:6"


@pytest.mark.parametrize(
    ("old", "new", "place", "words"),
    [
        ("theme: don", "theme: blue", "scenes/trial.yaml:1:8", "theme"),
        ("focus: drop", "focus: dorp", "scenes/trial.yaml:2:8", "'dorp' names 0 layers"),
        ("alt: A drop falls on a hand.", "alt: " + "x" * 91, "scenes/trial.yaml:4:6", "at most 90"),
        ("part: hand-open", "part: hand-opne", "scenes/trial.yaml:6:5", "no part is named 'hand-opne'"),
        ("at: [48, 70]", "at: [48]", "scenes/trial.yaml:6:37", "at.1"),
        ("at: [48, 70]", "at: side.nose+(1;2)", "scenes/trial.yaml:6:37", "is no point"),
        ("at: [48, 70]", "at: side.elbow", "scenes/trial.yaml:6:37", "the view side has no 'elbow'"),
        ("at: [48, 70]", "args: {glove: inner}", "scenes/trial.yaml:6:47", "glove: Extra inputs"),
        ("at: [48, 70]", "colour: red", "scenes/trial.yaml:6:41", "colour: Extra inputs"),
        ("{who: wearer, does", "{does", "scenes/trial.yaml:3:8", "gloss.who"),
        ("part: hand-open", "part: hand-open, style: accent", "scenes/trial.yaml:6:3", "'hand' is painted"),
    ],
)
def test_a_fault_is_told_with_its_place(tmp_path, old, new, place, words):
    assert old in GOOD
    problems = problems_of(tmp_path, GOOD.replace(old, new))
    assert any(words in problem.message for problem in problems), [p.message for p in problems]
    assert str(problems[0].place) == place
    assert all(problem.hint for problem in problems)


def test_all_faults_of_a_file_are_told_at_once(tmp_path):
    text = GOOD.replace("theme: don", "theme: blue").replace("at: [48, 70]", "colour: red")
    assert len(problems_of(tmp_path, text)) == 2


def test_a_layer_has_exactly_one_content(tmp_path):
    text = GOOD.replace("part: hand-open", "part: hand-open, arrow: {line: [[1, 1], [5, 5]]}")
    assert "exactly one of part, path, arrow, shape, group" in problems_of(tmp_path, text)[0].message


def test_an_open_line_in_a_shape_wants_a_width(tmp_path):
    text = GOOD.replace("part: hand-open", "shape: [{line: [[1, 1], [5, 5]]}]")
    assert "an open line in a shape wants a width" in problems_of(tmp_path, text)[0].message


def test_two_layers_cannot_both_be_the_focus(tmp_path):
    text = GOOD.replace("id: hand", "id: drop")
    assert "names 2 layers" in problems_of(tmp_path, text)[0].message


def test_a_repeated_key_is_told_where_it_stands_again(tmp_path):
    (problem,) = problems_of(tmp_path, GOOD + "theme: doff\n")
    assert "stands twice" in problem.message
    assert problem.place.line == 8


@pytest.mark.parametrize("text", ["", "theme: [don", "a: b: c"])
def test_what_is_no_scene_is_a_problem_and_no_crash(tmp_path, text):
    assert problems_of(tmp_path, text)[0].code == "PIC-1"


def test_a_problem_names_no_path_of_this_machine(tmp_path):
    file = tmp_path / "trial.yaml"
    file.write_text("theme: don\n", encoding="utf-8")
    read = read_scene(file, "scenes/trial.yaml")
    assert {problem.place.path for problem in read.problems} == {"scenes/trial.yaml"}
