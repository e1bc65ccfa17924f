from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.ruler import RULE
from signage.drawing.marks import Group
from signage.ground.geometry import scaling


def test_a_page_that_was_scaled_is_found():
    sheet = demo.sheet(phase="take-off")
    page = sheet.pages[0]
    shrunk = replace(page, marks=(Group(page.marks, transform=scaling(0.94)),))
    problems = found(RULE, replace(sheet, pages=(shrunk,)), demo.context())
    assert "47.00 mm" in problems[0].message


def test_a_page_without_a_ruler_is_found():
    def remove(mark):
        return None if isinstance(mark, Group) and mark.role == "ruler" else mark

    assert found(RULE, edited(demo.sheet(phase="put-on"), remove), demo.context())


def test_rulers_stay_true_after_imposition():
    assert not found(RULE, demo.sheet("pocket-checklist", "hi", paper="A4"), demo.context("hi"))
    assert not found(RULE, demo.sheet("step-cards", "ar", paper="A4"), demo.context("ar"))
    assert not found(RULE, demo.sheet(phase="take-off", paper="A1"), demo.context())
