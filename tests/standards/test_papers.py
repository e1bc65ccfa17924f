"""Paper sizes against outside tables.

ISO 216 A series and North American sizes: the table of the library papersize.
Area and ratio of the A series: ISO 216 (A0 is one square metre, sides 1 to the square root of 2, each
size half of the one before, rounded down to whole millimetres; from memory).
"""

import math
from itertools import pairwise

import pytest
from outside_readers import outside

from signage.compose.papers import PAPERS, paper_of

A_SERIES = [f"A{number}" for number in range(8)]


@pytest.mark.parametrize("name", [*A_SERIES, "Letter", "Legal", "Tabloid"])
def test_sizes_agree_with_the_outside_table(name):
    papersize = outside("papersize")
    width, height = (float(side) for side in papersize.parse_papersize(name.lower(), "mm"))
    paper = paper_of(name)
    assert (paper.width, paper.height) == pytest.approx((width, height), abs=0.06)


@pytest.mark.parametrize("name", A_SERIES)
def test_sides_of_the_a_series_are_in_the_ratio_of_the_square_root_of_two(name):
    paper = paper_of(name)
    assert paper.height / paper.width == pytest.approx(math.sqrt(2), abs=0.02)


def test_each_size_is_half_of_the_one_before():
    for larger, smaller in pairwise(A_SERIES):
        assert paper_of(smaller).height == paper_of(larger).width
        assert paper_of(smaller).width == paper_of(larger).height // 2


def test_the_largest_is_about_one_square_metre():
    assert paper_of("A0").width * paper_of("A0").height == pytest.approx(1e6, rel=0.001)


def test_every_paper_also_lies_on_its_long_side():
    for paper in PAPERS.values():
        assert PAPERS[paper.turned().name] == paper.turned()
        assert paper.is_landscape == (paper.width > paper.height)
