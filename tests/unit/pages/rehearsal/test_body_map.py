"""What a body map shows is what the trace says: whatever is outermost, with its level, and nothing hidden."""

from itertools import pairwise

import pytest
from rehearsal_edits import demo_library, layered_protection, with_action

from signage.ground.geometry import mirroring, path_box, transform_path
from signage.pages.rehearsal.body_map import PATTERNS, body_map
from signage.pages.rehearsal.body_shapes import (
    ANCHORS,
    CANVAS,
    HEAD,
    OPEN_FRONT,
    SITE_SHAPES,
    SOLES,
    WORN_SHAPES,
)
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.state.body import SITES
from signage.rehearse.state.level import Level

ALL_SHAPES = {**SITE_SHAPES, **WORN_SHAPES, "head": HEAD, "soles": SOLES, "front": OPEN_FRONT}


def figure(step, protocol=None, person="wearer"):
    trace = rehearse(demo_library(), protocol or layered_protection()).trace
    state = next(state for state in trace if state.step == step)
    return body_map(state.of(person), demo_library().garments)


def painted(step):
    return [(layer.shapes, layer.level) for layer in figure(step).layers]


def test_every_part_that_the_model_knows_has_a_shape_and_a_place_for_the_mark_of_an_exposure():
    assert set(SITE_SHAPES) == set(ANCHORS) == set(SITES)


@pytest.mark.parametrize("name", ALL_SHAPES)
def test_every_shape_lies_in_the_view_and_is_its_own_mirror_image(name):
    shape = ALL_SHAPES[name]
    assert CANVAS.contains(path_box(shape), tolerance=0.01)
    mirrored = path_box(transform_path(shape, mirroring(30.0)))
    assert (mirrored.x, mirrored.width) == pytest.approx((path_box(shape).x, path_box(shape).width), abs=0.01)


def test_before_kit_only_own_clothes_are_painted_and_with_a_thinner_line():
    layers = figure("rub-before-kit").layers
    assert [layer.shapes for layer in layers] == [("trunk", "legs"), ("feet",)]
    coverall = next(layer for layer in figure("coverall-on").layers if "trunk" in layer.shapes)
    assert not any(layer.is_barrier for layer in layers)
    assert layers[0].outline - layers[0].growth < coverall.outline - coverall.growth


def test_what_lies_under_a_coverall_is_not_painted():
    shapes = [layer.shapes for layer in figure("coverall-on").layers]
    assert ("trunk", "legs") not in shapes
    assert ("hands",) in shapes  # of the inner gloves the cuffs are hidden, the hands are not
    assert ("trunk", "legs", "arms", "wrists", "neck") in shapes


def test_an_apron_hangs_in_front_of_the_coverall_that_stays_in_sight():
    names = [shapes for shapes, _level in painted("apron-on")]
    assert ("panel",) in names
    assert any({"trunk", "legs", "arms"} <= set(shapes) for shapes in names)
    assert names.index(("panel",)) > next(i for i, shapes in enumerate(names) if "trunk" in shapes)


def test_a_hood_leaves_goggles_and_respirator_in_sight():
    names = {name for shapes, _level in painted("hood-on") for name in shapes}
    assert {"hood", "goggles", "cup"} <= names


def test_levels_follow_the_trace_from_entry_to_hygiene_to_removal():
    gloves = {step: dict(painted(step))[("wrists", "hands")] for step in ("outer-gloves-on", "enter-room")}
    assert gloves == {"outer-gloves-on": "clean", "enter-room": "contaminated"}
    assert dict(painted("rub-outer-first"))[("wrists", "hands")] == "reduced"
    assert dict(painted("rub-after-goggles"))[("cup",)] == "contaminated"
    assert figure("stand-on-mat").soles == "reduced"


def test_an_open_zip_shows_until_it_is_closed():
    assert figure("coverall-on").is_open
    assert not figure("zip-close").is_open
    assert figure("zip-open").is_open


def test_bare_hands_and_exposures_show_and_stay():
    grabbed = with_action(layered_protection(), "respirator-off", technique="front-grab")
    after = figure("respirator-off", grabbed)
    assert after.bare_hands == ("wrists_hands", "contaminated")
    assert set(after.exposed) == {ANCHORS["hands"], ANCHORS["mouth-nose"]}
    later = figure("to-corridor", grabbed)
    assert later.bare_hands is None or later.bare_hands[1] != "contaminated"
    assert later.exposed == after.exposed


def test_an_observer_who_wears_nothing_is_a_bare_figure():
    observer = figure("enter-room", person="observer")
    assert observer.layers == ()
    assert observer.soles == "clean"


def share_of_ink(pattern):
    return 1 - (1 - pattern.width / pattern.distance) ** pattern.directions


def test_levels_differ_in_pattern_and_in_shade_without_any_colour():
    """Shade: the share of ground that is inked; half again as dark or more, from one level to the next."""
    clean, reduced, contaminated = (PATTERNS[level] for level in Level)
    assert clean.lines == ()
    assert 0.1 < share_of_ink(reduced) < share_of_ink(contaminated) / 2
    assert share_of_ink(contaminated) > 0.45
    assert reduced.directions != contaminated.directions


@pytest.mark.parametrize("level", [Level.REDUCED, Level.CONTAMINATED])
def test_a_pattern_has_its_distance_and_covers_the_whole_figure(level):
    pattern = PATTERNS[level]
    falling = [
        (start[2], end[2])
        for start, end in zip(pattern.lines[::2], pattern.lines[1::2], strict=True)
        if start[2] < end[2]
    ]
    steps = {round(b[1] - a[1], 6) for a, b in pairwise(falling)}
    assert steps == {round(pattern.distance * 2**0.5, 6)}
    assert falling[0][1] <= CANVAS.y + pattern.distance * 2**0.5
    assert falling[-1][0] >= CANVAS.bottom - CANVAS.right - pattern.distance * 2**0.5
