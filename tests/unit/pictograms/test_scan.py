import math

import pytest

from signage.ground.geometry import polygon
from signage.pictograms.kit.paths import ellipse
from signage.pictograms.scan import area, coverage


def test_a_cell_is_covered_by_the_share_that_lies_in_it():
    grid = coverage(polygon([(2.5, 1), (5, 1), (5, 2), (2.5, 2)]), 8, 8)
    assert grid[1] == pytest.approx([0, 0, 0.5, 1, 1, 0, 0, 0])
    assert sum(grid[0]) + sum(grid[2]) == 0


def test_a_hole_stays_open():
    outer = polygon([(0, 0), (8, 0), (8, 8), (0, 8)])
    hole = polygon([(2, 2), (2, 6), (6, 6), (6, 2)])
    grid = coverage(outer + hole, 8, 8)
    assert grid[4][4] == 0
    assert grid[0][0] == pytest.approx(1)


def test_paths_may_stand_out_of_the_square():
    grid = coverage(polygon([(-5, -5), (20, -5), (20, 20), (-5, 20)]), 4, 4)
    assert all(cell == pytest.approx(1) for row in grid for cell in row)


def test_cover_adds_up_to_the_area_of_a_circle():
    total = sum(map(sum, coverage(ellipse(48, 48, 30), 96, 96)))
    assert total == pytest.approx(math.pi * 900, rel=0.01)


def test_the_area_of_a_ring():
    ring = ellipse(0, 0, 10) + tuple(reversed_circle(5))
    assert area(ring) == pytest.approx(math.pi * 75, rel=0.01)


def reversed_circle(radius):
    points = [
        (radius * math.cos(angle / 50 * math.tau), -radius * math.sin(angle / 50 * math.tau))
        for angle in range(50)
    ]
    return polygon(points)
