"""The warning triangle. ISO 3864-1 and DIN 4844 count its height as 0.817 of its base (read through a
secondary page of safety-sign factors): an equilateral triangle, 0.866 high, whose corners are rounded."""

import math

import pytest

from signage.pictograms.compile import compile_operations
from signage.pictograms.kit.marks import warning_triangle
from signage.pictograms.kit.nodes import CANVAS, flatten
from signage.pictograms.scan import coverage

CELLS = 384
UNIT = CANVAS / CELLS


@pytest.fixture(scope="module")
def widths():
    """The width of the whole sign in each row, in units of the canvas, whatever its pigments."""
    rows = [[0.0] * CELLS for _ in range(CELLS)]
    for _pigment, path in compile_operations(flatten(warning_triangle(centre=(48, 54), radius=44))):
        for row, covered in zip(rows, coverage(path, CELLS, CANVAS), strict=True):
            row[:] = [max(old, share) for old, share in zip(row, covered, strict=True)]
    return [UNIT * between_the_ends(row) for row in rows]


def between_the_ends(row):
    """How many cells lie between the first and the last covered one, these included."""
    covered = [column for column, share in enumerate(row) if share > 0.5]
    return covered[-1] - covered[0] + 1 if covered else 0


def test_its_sides_meet_at_sixty_degrees(widths):
    middle = CELLS // 2
    growth = (widths[middle + 60] - widths[middle - 60]) / (120 * UNIT)
    assert growth == pytest.approx(2 * math.tan(math.radians(30)), abs=0.03)


def test_its_visible_height_is_0817_of_the_base_between_the_unrounded_corners(widths):
    rows = [index for index, width in enumerate(widths) if width > 0]
    height = (rows[-1] - rows[0] + 1) * UNIT
    middle = CELLS // 2
    to_foot = (rows[-1] + 0.5 - middle) * UNIT
    base = widths[middle] + to_foot * 2 * math.tan(math.radians(30))
    assert height / base == pytest.approx(0.817, abs=0.01)
