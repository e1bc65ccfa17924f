import math

import pytest

from signage.ground.geometry import path_box
from signage.pictograms.kit.paths import (
    arc,
    capsule,
    ellipse,
    limb,
    parse_path,
    reach,
    rounded_polygon,
    spline,
)
from signage.pictograms.scan import area


def test_path_text_gives_its_segments():
    assert parse_path("M 1 2 L 3 4 C 1 1 2 2 3 3 Z") == (
        ("M", 1.0, 2.0),
        ("L", 3.0, 4.0),
        ("C", 1.0, 1.0, 2.0, 2.0, 3.0, 3.0),
        ("Z",),
    )


def test_further_points_after_a_move_are_lines():
    assert parse_path("M 0 0 5 5 6 7")[1:] == (("L", 5.0, 5.0), ("L", 6.0, 7.0))


def test_quadratic_curve_passes_its_middle():
    # The middle of a quadratic Bézier curve is (start + 2 handle + end) / 4.
    _, curve = parse_path("M 0 0 Q 4 8 8 0")
    _, x1, y1, x2, y2, x, y = curve
    assert ((3 * x1 + 3 * x2 + x) / 8, (3 * y1 + 3 * y2 + y) / 8) == pytest.approx((4, 4))


@pytest.mark.parametrize("text", ["", "L 1 1", "M 1", "M 0 0 A 1 1", "M 0 0 L 3", "M 0 0 h 5"])
def test_wrong_path_text_is_refused(text):
    with pytest.raises(ValueError, match="path"):
        parse_path(text)


def test_circle_has_the_area_of_a_circle():
    assert area(ellipse(10, 10, 7)) == pytest.approx(math.pi * 49, rel=0.01)


def test_rounding_takes_corners_off_but_keeps_the_box():
    square = rounded_polygon([(0, 0), (10, 0), (10, 10), (0, 10)], 3)
    assert area(square) < 100
    assert area(square) > 100 - 4 * 9 * (1 - math.pi / 4) - 2
    box = path_box(square)
    assert (box.x, box.y, box.right, box.bottom) == (0, 0, 10, 10)


def test_a_radius_for_each_corner_must_be_given_for_each():
    with pytest.raises(ValueError, match="3 corners want 3 radii, found 2"):
        rounded_polygon([(0, 0), (1, 0), (0, 1)], [1, 2])


def test_a_spline_goes_through_its_points():
    points = [(0.0, 0.0), (4.0, 9.0), (8.0, 2.0)]
    ends = [segment[-2:] for segment in spline(points)]
    assert ends == points


def test_an_arc_begins_and_ends_at_its_angles():
    path = arc(50, 50, 10, 0, 90)
    assert path[0][1:] == pytest.approx((60, 50))
    assert path[-1][-2:] == pytest.approx((50, 60))


def test_a_capsule_of_one_radius_is_a_strip_with_round_ends():
    assert area(capsule((0, 0), (10, 0), 2, 2)) == pytest.approx(40 + math.pi * 4, rel=0.01)


def test_a_disc_inside_the_other_leaves_the_larger_one():
    assert area(capsule((0, 0), (1, 0), 5, 2)) == pytest.approx(math.pi * 25, rel=0.01)


def test_a_limb_has_one_bone_between_two_joints():
    assert len(limb([(0, 0, 2), (5, 5, 2), (9, 0, 1)])) == 2


@pytest.mark.parametrize("bend", [1, -1])
def test_an_elbow_stands_at_the_lengths_of_its_bones(bend):
    elbow = reach((0, 0), (10, 5), 8, 7, bend)
    assert math.dist((0, 0), elbow) == pytest.approx(8)
    assert math.dist(elbow, (10, 5)) == pytest.approx(7)


def test_the_bend_says_on_which_side_the_elbow_stands():
    assert reach((0, 0), (10, 0), 8, 8, 1)[1] > 0 > reach((0, 0), (10, 0), 8, 8, -1)[1]


def test_an_arm_that_is_too_short_is_stretched_straight():
    elbow = reach((0, 0), (100, 0), 8, 7)
    assert elbow == pytest.approx((8, 0), abs=0.5)
