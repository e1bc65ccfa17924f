import math

import pytest

from signage.ground.geometry import (
    Box,
    circle,
    mirroring,
    path_box,
    rectangle,
    rotation,
    scaling,
    transform_path,
    translation,
)


def test_maps_apply_from_right_to_left():
    assert (translation(10, 0) @ scaling(2)).point(1, 1) == (12, 2)


def test_rotation_turns_clockwise_on_the_page():
    x, y = rotation(90, 5, 5).point(6, 5)
    assert (x, y) == pytest.approx((5, 6))


def test_mirroring_keeps_the_axis_and_is_noticed():
    assert mirroring(48).point(48, 3) == (48, 3)
    assert mirroring(48).mirrors
    assert not rotation(180).mirrors


def test_a_circle_of_four_curves_stays_round():
    worst = 0.0
    path = circle(0, 0, 1)
    start = path[0][1:]
    for _, x1, y1, x2, y2, x, y in path[1:-1]:
        for i in range(11):
            t = i / 10
            px = (1 - t) ** 3 * start[0] + 3 * (1 - t) ** 2 * t * x1 + 3 * (1 - t) * t * t * x2 + t**3 * x
            py = (1 - t) ** 3 * start[1] + 3 * (1 - t) ** 2 * t * y1 + 3 * (1 - t) * t * t * y2 + t**3 * y
            worst = max(worst, abs(math.hypot(px, py) - 1))
        start = (x, y)
    assert worst < 0.0003


def test_rounded_boxes_keep_their_bounds():
    box = path_box(rectangle(Box(1, 2, 30, 20), 4, (True, False, True, False)))
    assert (box.x, box.y, box.width, box.height) == pytest.approx((1, 2, 30, 20))


def test_moved_paths_move_by_every_point():
    assert path_box(transform_path(rectangle(Box(0, 0, 1, 1)), translation(3, 4))) == Box(3, 4, 1, 1)
