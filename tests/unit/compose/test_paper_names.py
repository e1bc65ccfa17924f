import pytest

from signage.compose.papers import paper_names, paper_of
from signage.ground.errors import WrongUsageError


def test_names_are_found_whatever_their_capitals():
    assert paper_of("a3-LANDSCAPE") is paper_of("A3-landscape")
    assert paper_of("letter").name == "Letter"


def test_turning_twice_gives_the_same_paper():
    paper = paper_of("A4")
    assert paper.turned().name == "A4-landscape"
    assert paper.turned().turned() == paper


def test_an_unknown_paper_is_told_with_the_known_ones():
    with pytest.raises(WrongUsageError, match=r"'B3' is not a paper. Known are A0, .*Letter"):
        paper_of("B3")


def test_both_ways_round_are_offered():
    names = paper_names()
    assert {"A1", "A1-landscape", "Tabloid", "Tabloid-landscape"} <= set(names)
    assert len(names) == len(set(names))
