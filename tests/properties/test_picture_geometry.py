"""What must hold for any drawing that is compiled: nothing is lost, nothing is painted twice."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from signage.ground.geometry import mirroring
from signage.pictograms.compile import compile_operations
from signage.pictograms.kit.nodes import CANVAS, Blob, Patch, Stroke, closed, flatten, group
from signage.pictograms.kit.paths import ellipse, line, rounded_rectangle
from signage.pictograms.shapes import piece_areas, united, visible_shapes

place = st.floats(min_value=8, max_value=88).map(lambda value: round(value, 1))
size = st.floats(min_value=2, max_value=24).map(lambda value: round(value, 1))
pigment = st.sampled_from(["ink", "tone", "paper", "accent", "ground"])

patches = st.builds(
    lambda x, y, width, height, fill: Patch(ellipse(x, y, width, height), fill),
    place,
    place,
    size,
    size,
    pigment,
)
boxes = st.builds(
    lambda x, y, width, height, style: Blob(style, closed(rounded_rectangle(x, y, width, height, 2))),
    place,
    place,
    size,
    size,
    st.sampled_from(["ink", "tone", "paper", "accent"]),
)
strokes = st.builds(
    lambda x, y, to_x, to_y, width: Stroke(line((x, y), (to_x, to_y)), max(width / 3, 1)),
    place,
    place,
    place,
    place,
    size,
)
drawings = st.lists(st.one_of(patches, boxes, strokes), min_size=1, max_size=7)


@settings(max_examples=60)
@given(drawings)
def test_what_is_seen_of_each_pigment_makes_up_the_whole(nodes):
    layers = compile_operations(flatten(nodes))
    whole = abs(united(path for _, path in layers).area)
    seen = sum(abs(shape.area) for shape in visible_shapes(layers).values())
    assert seen == pytest.approx(whole, abs=2.0)
    assert whole <= CANVAS * CANVAS + 1


@settings(max_examples=60)
@given(drawings)
def test_the_pieces_of_a_shape_make_up_the_shape(nodes):
    shape = united(path for _, path in compile_operations(flatten(nodes)))
    assert sum(piece_areas(shape)) == pytest.approx(abs(shape.area), abs=0.5)


@settings(max_examples=40)
@given(drawings)
def test_a_mirrored_drawing_covers_as_much(nodes):
    plain = abs(united(path for _, path in compile_operations(flatten(nodes))).area)
    turned = group(*nodes, transform=mirroring(CANVAS / 2))
    assert abs(united(path for _, path in compile_operations(flatten(turned))).area) == pytest.approx(
        plain, abs=2.0
    )
