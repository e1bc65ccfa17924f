from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.contrast import RULE
from signage.drawing.marks import TextMark


def test_a_pale_detail_is_found_with_its_ratio():
    # #949494 on white is 3.03 to 1 by the definition of WCAG 2.2
    def pale(mark):
        return (
            replace(mark, colour="#949494") if isinstance(mark, TextMark) and mark.role == "detail" else mark
        )

    problems = found(RULE, edited(demo.sheet(phase="take-off"), pale), demo.context())
    assert "3.0 to 1" in problems[0].message


def test_white_on_a_filled_band_is_measured_against_the_band():
    assert not found(RULE, demo.sheet(phase="put-on"), demo.context())


def test_all_kinds_of_sheet_are_silent():
    assert not found(RULE, demo.sheet("step-cards", "hi", paper="A6"), demo.context("hi"))
    assert not found(RULE, demo.sheet("pocket-checklist", "ar", paper="A4"), demo.context("ar"))
    assert not found(RULE, demo.sheet(phase="take-off", tone="mono"), demo.context())
