"""Whatever stands in a scene file, it is drawn or comes back as problems with a place."""

import copy

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from signage.load.yaml_reader import read_yaml
from signage.pictograms.own_scenes import read_scenes

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

odd = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-(10**6), 10**6),
    st.floats(allow_nan=True),
    st.text(max_size=6),
    st.sampled_from(["side.nose", "M 0 0 L", "ground", "lining", [], {}, [[1, 1], [1, 1]], "2001-99-99"]),
)


@pytest.fixture(scope="module", autouse=True)
def own_cache(tmp_path_factory):
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


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
    file = tmp_path_factory.mktemp("scene") / "our-card.yaml"
    file.write_text(yaml.safe_dump(scene, allow_unicode=True), encoding="utf-8")
    if read_yaml(file)[1]:
        return
    scenes, problems = read_scenes([(file, "content/scenes/our-card.yaml")])
    assert len(scenes) + bool(problems) == 1
    assert all(problem.place.path and problem.message and problem.hint for problem in problems)
