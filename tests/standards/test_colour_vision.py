"""Colour vision and lightness against published values.

Matrices: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for Simulation of
Color Vision Deficiency", IEEE Transactions on Visualization and Computer Graphics 15(6), 2009, severity 1.0.
The expected colours are the matrices applied to linear sRGB (IEC 61966-2-1), worked out independently.
"""

import pytest

from signage.pictograms.colour import DEFICIENCY_MATRICES, as_seen_with, difference, lab, lightness, linear

SEEN = {
    "protan": {
        "#FF0000": "#6D5F00",
        "#00FF00": "#FFE500",
        "#0000FF": "#0059FF",
        "#808080": "#808080",
        "#9B2423": "#484121",
        "#237F52": "#7E754F",
        "#005387": "#395689",
        "#F9A800": "#C5AD00",
    },
    "deutan": {
        "#FF0000": "#A39000",
        "#00FF00": "#EFD63A",
        "#0000FF": "#003DFB",
        "#808080": "#808080",
        "#9B2423": "#665B1E",
        "#237F52": "#726C55",
        "#005387": "#264B86",
        "#F9A800": "#D8C011",
    },
    "tritan": {
        "#FF0000": "#FF000F",
        "#00FF00": "#00F7D9",
        "#0000FF": "#006B96",
        "#808080": "#808080",
        "#9B2423": "#AB0025",
        "#237F52": "#007E73",
        "#005387": "#006066",
        "#F9A800": "#FF938F",
    },
}


@pytest.mark.parametrize("kind", SEEN)
def test_colours_are_seen_as_the_model_says(kind):
    assert {colour: as_seen_with(kind, colour) for colour in SEEN[kind]} == SEEN[kind]


@pytest.mark.parametrize("kind", SEEN)
def test_greys_stay_grey_because_rows_sum_to_one(kind):
    for row in DEFICIENCY_MATRICES[kind]:
        assert sum(row) == pytest.approx(1, abs=2e-6)


def test_lightness_of_black_white_and_the_middle():
    # CIE 15: L* = 116 (Y)^(1/3) - 16; a grey of 18.4 % luminance has L* 50. #777777 is the nearest (memory).
    assert lightness("#000000") == pytest.approx(0, abs=1e-9)
    assert lightness("#FFFFFF") == pytest.approx(100, abs=1e-4)
    assert lightness("#777777") == pytest.approx(50, abs=0.2)


@pytest.mark.parametrize(
    ("colour", "expected"),
    [
        # sRGB primaries under D65 as commonly tabulated (from memory, one decimal).
        ("#FF0000", (53.2, 80.1, 67.2)),
        ("#00FF00", (87.7, -86.2, 83.2)),
        ("#0000FF", (32.3, 79.2, -107.9)),
    ],
)
def test_primaries_in_lab(colour, expected):
    assert lab(colour) == pytest.approx(expected, abs=0.1)


def test_the_difference_of_black_and_white_is_a_hundred():
    assert difference("#000000", "#FFFFFF") == pytest.approx(100, abs=0.02)


@pytest.mark.parametrize("colour", ["red", "#FFF", "112233", "#GG0000"])
def test_another_form_of_colour_is_refused(colour):
    with pytest.raises(ValueError, match=r"colour|invalid literal"):
        linear(colour)
