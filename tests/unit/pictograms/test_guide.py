"""The guide for people who write scenes tells the truth."""

import re
from pathlib import Path

import pytest

from signage.check.picture_rule import picture_subject
from signage.check.registry import all_picture_rules
from signage.ground.problem import with_problems
from signage.load.files.scenes import LARGEST_SCENE
from signage.pictograms import burden
from signage.pictograms.faults import RULES
from signage.pictograms.kit import bounds
from signage.pictograms.kit.landmarks import LANDMARKS
from signage.pictograms.kit.parts import part_named, part_names
from signage.pictograms.own_scenes import read_own_pictures
from signage.pictograms.picture_set import PictureSet
from signage.pictograms.schema import Curve, Layer, SceneFile

GUIDE = (Path(__file__).resolve().parents[3] / "docs" / "pictures.md").read_text(encoding="utf-8")
ROWS = dict(re.findall(r"^\| `([a-z-]+)` \| (.*)$", GUIDE, re.MULTILINE))


def test_every_part_stands_in_the_guide_with_all_its_arguments():
    assert [name for name in part_names() if name not in ROWS] == []
    arguments = [(name, each) for name in part_names() for each in part_named(name).arguments.model_fields]
    assert [(name, each) for name, each in arguments if f"`{each}` " not in ROWS[name]] == []


def test_the_guide_names_no_part_that_is_gone():
    after = GUIDE.partition("## Parts")[2]
    assert set(re.findall(r"^\| `([a-z-]+)` \|", after, re.MULTILINE)) == set(part_names())


@pytest.mark.parametrize("schema", [SceneFile, Layer, Curve])
def test_every_key_is_explained(schema):
    for key in schema.model_fields:
        assert re.search(rf"`{key}\b", GUIDE), key


def test_every_landmark_stands_in_the_guide_with_its_place():
    for points in LANDMARKS.values():
        for name, (x, y) in points.items():
            assert f"{name} ({x:g}, {y:g})" in GUIDE


def test_the_example_can_be_drawn_and_is_clean(tmp_path):
    file = tmp_path / "example-of-the-guide.yaml"
    file.write_text(re.search(r"```yaml\n(.*?)```", GUIDE, re.DOTALL).group(1), encoding="utf-8")
    own, problems = with_problems(read_own_pictures([(file, file.name)]))
    assert problems == ()
    subject = picture_subject(PictureSet(tuple(own)), "example-of-the-guide")
    assert [problem.message for rule in all_picture_rules() for problem in rule.find(subject)] == []


def test_the_bounds_stand_in_the_guide():
    table = GUIDE.partition("## Bounds")[2].partition("## Parts")[0]
    named = set(re.findall(r"\d+(?:\.\d+)?", table))
    for module in (bounds, burden):
        for name, value in vars(module).items():
            assert not (name.isupper() and isinstance(value, int | float)) or f"{value:g}" in named, name
    assert f"{LARGEST_SCENE / 1000:g} kB" in table


def test_every_fault_of_a_scene_explains_itself():
    for rule in RULES:
        for sentence in (rule.what, rule.why, rule.cure):
            assert len(sentence.split()) >= 4, rule.code
        assert rule.example, rule.code
