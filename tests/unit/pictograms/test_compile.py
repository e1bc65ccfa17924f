import math

import pytest

from signage.ground.geometry import path_box
from signage.pictograms.compile import combine, compile_operations, skia_shape
from signage.pictograms.kit.nodes import Blob, Group, Patch, Stroke, closed, flatten, group
from signage.pictograms.kit.paths import ellipse, line, rounded_rectangle
from signage.pictograms.scan import area, coverage


def compiled(*nodes):
    return compile_operations(flatten(nodes))


def test_a_gap_is_cut_through_everything_beneath_and_nothing_above():
    layers = compiled(
        Patch(ellipse(48, 48, 30), "tone"), Patch(ellipse(48, 48, 10), "ground"), Patch(ellipse(48, 48, 4))
    )
    assert [pigment for pigment, _ in layers] == ["tone", "ink"]
    assert area(layers[0][1]) == pytest.approx(math.pi * (900 - 100), rel=0.01)
    assert area(layers[1][1]) == pytest.approx(math.pi * 16, rel=0.01)


def test_no_layer_is_a_gap():
    layers = compiled(Blob("ink", closed(ellipse(48, 48, 10))))
    assert {pigment for pigment, _ in layers} == {"ink"}


def test_a_stroke_becomes_an_outline_of_its_width():
    ((_, path),) = compiled(Stroke(line((20, 48), (70, 48)), 6))
    assert area(path) == pytest.approx(50 * 6 + math.pi * 9, rel=0.01)
    assert path_box(path).height == pytest.approx(6, abs=0.1)


def test_neighbours_of_one_pigment_become_one_path():
    layers = compiled(Patch(ellipse(40, 48, 10)), Patch(ellipse(50, 48, 10)), Patch(ellipse(80, 20, 5)))
    assert len(layers) == 1


def test_a_shape_does_not_sink_below_one_that_it_covers():
    layers = compiled(
        Patch(ellipse(30, 48, 10)), Patch(ellipse(45, 48, 10), "paper"), Patch(ellipse(45, 48, 5))
    )
    assert [pigment for pigment, _ in layers] == ["ink", "paper", "ink"]


def test_drawing_ends_at_the_canvas():
    ((_, path),) = compiled(Patch(ellipse(96, 48, 20), "tone"))
    assert path_box(path).right <= 96


def test_ink_stays_behind_the_fill_along_a_cut():
    # Else a hair of the outline shows beside the fill where both end at one line.
    cut = closed(rounded_rectangle(0, 0, 48, 96, 0))
    layers = dict(compiled(Group((Blob("paper", closed(rounded_rectangle(20, 20, 60, 40, 2))),), within=cut)))
    assert path_box(layers["paper"]).right == pytest.approx(48, abs=0.02)
    assert 47.5 < path_box(layers["ink"]).right < 47.9


def test_compiling_twice_gives_the_same_coordinates():
    nodes = [Blob("accent", closed(ellipse(48, 48, 20))), Stroke(line((10, 10), (80, 70)), 5)]
    assert compiled(*nodes) == compiled(*nodes)


def test_areas_of_cuts_add_up_even_where_outlines_nearly_coincide():
    # Inclusion and exclusion: |A| + |B| = |A or B| + |A and B|.
    import pathops

    first = skia_shape(rounded_rectangle(10, 10, 40, 40, 4))
    for shift in (0.0, 1e-4, 1e-3, 0.01, 0.5):
        second = skia_shape(rounded_rectangle(10 + shift, 10, 40, 40, 4))
        union = abs(combine(first, second, pathops.PathOp.UNION).area)
        shared = abs(combine(first, second, pathops.PathOp.INTERSECTION).area)
        assert union + shared == pytest.approx(abs(first.area) + abs(second.area), abs=0.5)


def test_a_scene_of_nothing_compiles_to_nothing():
    assert compile_operations([]) == ()


def test_compiled_cover_equals_painted_cover():
    nodes = group(Blob("tone", closed(ellipse(40, 40, 20))), Blob("ink", closed(ellipse(56, 56, 12))))
    layers = compile_operations(flatten(nodes))
    ink = coverage(dict(layers)["ink"], 96, 96)
    assert ink[56][56] == pytest.approx(1)
    assert ink[10][90] == 0
