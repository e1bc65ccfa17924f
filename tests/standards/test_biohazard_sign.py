"""The biohazard sign. 29 CFR 1910.145 shows it; its construction is three-fold symmetric with mirror lines
(verbal geometry of the symbol, widely reproduced). Lengths of the letters A to H are from memory."""

import math

import pytest

from signage.pictograms.compile import compile_operations
from signage.pictograms.kit.biohazard import LETTERS, biohazard
from signage.pictograms.kit.nodes import CANVAS, Patch, flatten
from signage.pictograms.kit.paths import ellipse
from signage.pictograms.scan import coverage

CELLS = 192


@pytest.fixture(scope="module")
def grid():
    ground = Patch(ellipse(48, 48, 46), "tone")
    layers = compile_operations(flatten([ground, biohazard(centre=(48, 48), radius=40)]))
    seen = [[0.0] * CELLS for _ in range(CELLS)]
    for pigment, path in layers:
        shade = 1.0 if pigment == "ink" else 0.0
        for row, covered in zip(seen, coverage(path, CELLS, CANVAS), strict=True):
            row[:] = [old + (shade - old) * share for old, share in zip(row, covered, strict=True)]
    return seen


def at(grid, x, y):
    return grid[int(y * CELLS / CANVAS)][int(x * CELLS / CANVAS)]


def polar(grid, radius, degrees):
    angle = math.radians(degrees)
    return at(grid, 48 + radius * math.cos(angle), 48 + radius * math.sin(angle))


def test_a_turn_by_a_third_leaves_it_as_it_is(grid):
    differing = [
        abs(polar(grid, radius, angle) - polar(grid, radius, angle + 120))
        for radius in range(2, 42)
        for angle in range(0, 360, 5)
    ]
    assert sum(differing) / len(differing) < 0.03


def test_it_is_mirrored_in_the_upright(grid):
    differing = [abs(a - b) for row in grid for a, b in zip(row, row[::-1], strict=True)]
    assert sum(differing) / len(differing) < 0.01


def test_it_has_an_open_middle_three_horns_and_a_ring(grid):
    unit = 40 / (LETTERS["E"] + LETTERS["F"])
    assert polar(grid, 0.5, 0) == 0
    for turn in (-90, 30, 150):
        assert polar(grid, (LETTERS["F"] + 3) * unit, turn) == 0
        assert polar(grid, (LETTERS["E"] + 0.75) * unit, turn) == 1
        assert polar(grid, 8 * unit, turn + 60) == 1
