"""Paths to operators and back, read by pikepdf (qpdf's parser) by what ISO 32000-1 says they mean."""

import re

from hypothesis import given
from hypothesis import strategies as st
from outside_readers import outside

from signage.drawing.marks import PathMark
from signage.ground.geometry import Box, polygon, rectangle
from signage.paint.pdf.operators import OperatorList, path_operators

lengths = st.floats(-2000, 2000).map(lambda value: round(value, 2))
points = st.tuples(lengths, lengths)
moves = points.map(lambda point: ("M", *point))
segments = st.one_of(
    points.map(lambda point: ("L", *point)),
    st.tuples(points, points, points).map(lambda three: ("C", *three[0], *three[1], *three[2])),
    st.just(("Z",)),
)
paths = st.tuples(moves, st.lists(segments, max_size=6)).map(lambda parts: (parts[0], *parts[1]))


def operators_in(text):
    pikepdf = outside("pikepdf")
    pdf = pikepdf.new()
    stream = pdf.make_stream(text.encode())
    return [
        (str(operator), [float(operand) for operand in operands])
        for operands, operator in pikepdf.parse_content_stream(stream)
    ]


def path_of(text):
    """The path that the operators construct (section 8.5.2, table 59)."""
    path = []
    for operator, values in operators_in(text):
        if operator == "re":
            x, y, width, height = values
            path += polygon([(x, y), (x + width, y), (x + width, y + height), (x, y + height)])
        else:
            path.append(({"m": "M", "l": "L", "c": "C", "h": "Z"}[operator], *values))
    return path


def assert_same(found, wanted):
    assert [segment[0] for segment in found] == [segment[0] for segment in wanted]
    for ours, theirs in zip(found, wanted, strict=True):
        assert all(abs(a - b) < 0.002 for a, b in zip(ours[1:], theirs[1:], strict=True))


@given(paths)
def test_a_path_comes_back(path):
    assert_same(path_of(path_operators(path)), path)


@given(paths, st.integers(1, 4))
def test_numbers_end_without_noughts_behind_the_point(path, decimals):
    text = path_operators(path, decimals)
    assert not re.search(r"\.\d*0(?!\d)|\.(?!\d)", text), text


@given(lengths, lengths, lengths, lengths, st.booleans())
def test_a_rectangle_comes_back_with_its_direction(x, y, width, height, is_backwards):
    corners = [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]
    path = polygon(corners[::-1] if is_backwards else corners)
    assert_same(path_of(path_operators(path)), path)


def test_an_upright_rectangle_is_one_operator():
    assert path_operators(rectangle(Box(1, 2, 3, 4))) == "1 2 3 4 re"


def test_a_colour_is_set_once_for_all_that_have_it():
    operators = OperatorList(lambda _dots: "P1")
    for x in range(3):
        operators.paint(PathMark(rectangle(Box(x, 0, 1, 1)), fill="#FF0000"))
    assert [name for name, _ in operators_in("\n".join(operators.code))].count("rg") == 1


def test_a_mark_without_fill_or_stroke_paints_nothing():
    operators = OperatorList(lambda _dots: "P1")
    operators.paint(PathMark(rectangle(Box(0, 0, 1, 1))))
    operators.paint(PathMark(rectangle(Box(0, 0, 1, 1)), stroke="#000000", width=0))
    assert operators.code == []
