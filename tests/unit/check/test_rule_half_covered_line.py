from dataclasses import replace

import demo
from sheet_edits import found

from signage.check.sheet_rules.half_covered_line import RULE
from signage.drawing.marks import PathMark
from signage.ground.geometry import Box, polygon, rectangle


def test_a_tint_over_half_of_a_line_is_found_and_one_under_it_is_not():
    sheet = demo.sheet("pocket-checklist", paper="A4", tone="mono")
    page = sheet.pages[0]
    line = PathMark(polygon([(10, 50), (60, 50)], closed=False), None, "#000000", 0.2)
    tint = PathMark(rectangle(Box(10, 50, 50, 8)), "#FFFFFF")
    below = PathMark(rectangle(Box(10, 50.2, 50, 8)), "#FFFFFF")

    def problems(*marks):
        changed = replace(sheet, pages=(replace(page, marks=(*page.marks, *marks)),))
        return found(RULE, changed, demo.context())

    assert [p.message for p in problems(line, tint)] == ["lines half covered by a fill on page 1: 1"]
    assert problems(tint, line) == problems(line, below) == []


def test_the_demo_has_none():
    for tone in ("colour", "mono"):
        assert not found(
            RULE, demo.sheet("pocket-checklist", "fr", paper="A4", tone=tone), demo.context("fr")
        )
    assert not found(RULE, demo.sheet(phase="take-off"), demo.context())
    assert not found(RULE, demo.sheet("step-cards", paper="A4"), demo.context())
