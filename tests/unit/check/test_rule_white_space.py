from dataclasses import replace

import demo
from sheet_edits import found

from signage.check.sheet_rules.white_space import RULE
from signage.drawing.marks import PathMark
from signage.ground.geometry import Box, rectangle


def test_a_poster_half_covered_with_ink_is_found():
    sheet = demo.sheet(phase="take-off")
    page = sheet.pages[0]
    slab = PathMark(rectangle(Box(0, 0, page.width, page.height * 0.55)), "#14202C")
    assert found(RULE, replace(sheet, pages=(replace(page, marks=(*page.marks, slab)),)), demo.context())


def test_the_demo_has_air():
    assert not found(RULE, demo.sheet(tag="fr", phase="take-off"), demo.context("fr"))
