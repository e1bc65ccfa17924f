"""Whatever stands in a scene file, it is drawn or comes back as problems with a place."""

import copy
import json
import re
import time

import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from signage.ground.problem import with_problems
from signage.load.files.scenes import scene_problems
from signage.pictograms.own_scenes import read_own_pictures

SOUND = yaml.safe_load("""\
theme: don
focus: card
gloss: {who: wearer, does: show, what: a card}
alt: A hand holds up a card.
cropped: [left]
layers:
  - {id: hand, part: hand-open, at: [48, 84], args: {arm: 6}}
  - {id: cloth, shape: [{polygon: [[10, 10], [30, 10], [20, 40]], radius: 2}], style: paper}
  - {id: rope, path: {spline: [[5, 80], [40, 60], [90, 85]]}, width: 3, casing: 1}
  - {id: card, part: card, at: [48, 26], rot: 10, scale: 0.9}
  - {id: move, arrow: {arc: [48, 46, 30, -150, -120]}, mirror_at: 48}
""")

beyond = st.one_of(st.integers(-(10**9), 10**9), st.floats(allow_nan=True))
numbers = st.one_of(*[st.integers(-96, 96)] * 8, *[st.floats(-4, 4)] * 4, st.integers(-720, 720), beyond)
points = st.builds(
    lambda count, across, down: [[i * across % 107 - 5, i * down % 103 - 3] for i in range(count)],
    st.one_of(st.integers(3, 30), st.integers(2, 130)),
    st.integers(1, 102),
    st.integers(1, 102),
)
odd = st.one_of(
    st.none(),
    st.booleans(),
    numbers,
    points,
    st.text(max_size=6),
    st.sampled_from(["side.nose", "M 0 0 L", "ground", "lining", [], {}, [[1, 1], [1, 1]], "2001-99-99"]),
)
curves = st.one_of(
    st.tuples(st.sampled_from(["line", "spline", "loop", "polygon"]), points).map(lambda pair: dict([pair])),
    st.lists(numbers, min_size=5, max_size=5).map(lambda values: {"arc": values}),
    st.lists(numbers, min_size=3, max_size=3).map(lambda values: {"circle": values}),
    points.map(lambda each: {"path": "M " + " L ".join(f"{x} {y}" for x, y in each)}),
)
parts = st.sampled_from(
    [("bars", "count"), ("germ", "knobs"), ("water", "jets"), ("speckle", "rows"), ("clipboard", "rows")]
)
drawn = st.one_of(
    curves.map(lambda curve: {"path": curve, "width": 2}),
    curves.map(lambda curve: {"arrow": curve}),
    st.lists(curves, min_size=1, max_size=5).map(lambda each: {"shape": [{**c, "width": 3} for c in each]}),
    st.tuples(parts, numbers).map(lambda it: {"part": it[0][0], "args": {it[0][1]: it[1]}}),
)
placings = st.fixed_dictionaries(
    {},
    optional={
        "at": st.lists(numbers, min_size=2, max_size=2),
        "rot": numbers,
        "scale": numbers,
        "mirror_at": numbers,
        "within": st.lists(curves, min_size=1, max_size=2),
        "style": st.sampled_from(["ink", "tone", "paper", "lining", "ground"]),
    },
)
layers = st.recursive(
    st.tuples(drawn, placings).map(lambda it: {"id": "x", **it[0], **it[1]}),
    lambda inner: st.tuples(st.lists(inner, min_size=1, max_size=3), placings, st.integers(1, 12)).map(
        lambda it: {"id": "x", "group": it[0] * it[2], **it[1]}
    ),
    max_leaves=6,
)
WITHOUT_END = {"NaN": ".nan", "Infinity": ".inf"}
"""Numbers of JSON that YAML writes otherwise; all else of JSON is YAML."""

FEW_SECONDS = 10
"""Processor time that reading one scene of at most 64 kB may take, compiling it included."""


def paths(value, path=()):
    yield path
    if isinstance(value, dict):
        for key in value:
            yield from paths(value[key], (*path, key))
    elif isinstance(value, list):
        for index, each in enumerate(value):
            yield from paths(each, (*path, index))


@settings(max_examples=120)
@given(st.sampled_from([path for path in paths(SOUND) if path]), odd, st.booleans())
def test_a_spoilt_value(tmp_path_factory, path, value, is_left_out):
    scene = copy.deepcopy(SOUND)
    holder = scene
    for key in path[:-1]:
        holder = holder[key]
    if is_left_out:
        del holder[path[-1]]
    else:
        holder[path[-1]] = value
    assert_is_drawn_or_refused(tmp_path_factory.mktemp("scene") / "our-card.yaml", scene)


@settings(max_examples=60)
@given(st.lists(layers, min_size=1, max_size=3))
def test_a_scene_that_draws_too_far_or_too_much(tmp_path_factory, added):
    scene = {**SOUND, "layers": [SOUND["layers"][3], *added]}
    assert_is_drawn_or_refused(tmp_path_factory.mktemp("scene") / "our-card.yaml", scene)


def assert_is_drawn_or_refused(file, scene):
    text = re.sub(r"\b(NaN|Infinity)\b", lambda word: WITHOUT_END[word.group()], json.dumps(scene))
    file.write_text(text, encoding="utf-8")
    if list(scene_problems([file], ())):
        return
    start = time.process_time()
    scenes, problems = with_problems(read_own_pictures([(file, "content/scenes/our-card.yaml")]))
    assert time.process_time() - start < FEW_SECONDS
    assert len(scenes) + bool(problems) == 1
    assert all(problem.place.path and problem.message and problem.hint for problem in problems)
