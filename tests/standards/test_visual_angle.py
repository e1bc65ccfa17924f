"""Letter heights under a visual angle, against published tables."""

import pytest

from signage.ground.visual_angle import letter_height_mm, reading_distance_mm


@pytest.mark.parametrize(
    ("metres", "millimetres"),
    # 5 minutes of arc, the 6/6 letter of an acuity chart:
    # 1.45 mm at 1 m (Fox, Sensation and perception), 8.73 mm at 6 m
    [(0.4, 0.58), (1, 1.45), (2, 2.91), (3, 4.36), (6, 8.73), (20, 29.09)],
)
def test_acuity_letters(metres, millimetres):
    assert letter_height_mm(metres * 1000, 5) == pytest.approx(millimetres, abs=0.005)


@pytest.mark.parametrize(
    ("metres", "at_16", "at_22"),
    # the range that ISO 9241-303 gives for screens, computed from its angles
    [(0.5, 2.33, 3.20), (1, 4.65, 6.40), (3, 13.96, 19.20), (10, 46.54, 64.00)],
)
def test_angles_of_iso_9241_303(metres, at_16, at_22):
    assert letter_height_mm(metres * 1000, 16) == pytest.approx(at_16, abs=0.005)
    assert letter_height_mm(metres * 1000, 22) == pytest.approx(at_22, abs=0.005)


@pytest.mark.parametrize("distance", [400, 1000, 5400])
def test_distance_is_the_inverse_of_height(distance):
    assert reading_distance_mm(letter_height_mm(distance, 15), 15) == pytest.approx(distance)
