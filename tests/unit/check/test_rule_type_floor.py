from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.type_floor import RULE
from signage.drawing.marks import TextMark


def test_a_headline_of_eight_points_is_found():
    def shrink(mark):
        return replace(mark, points=8.0) if isinstance(mark, TextMark) and mark.role == "headline" else mark

    problems = found(RULE, edited(demo.sheet(phase="take-off"), shrink), demo.context())
    assert len(problems) == 12
    assert "8.0 pt" in problems[0].message


def test_the_factor_of_a_script_is_taken_off_before_comparing():
    # 9 pt nominal is 9.72 pt in Arabic
    def shrink(mark):
        return replace(mark, points=9.5) if isinstance(mark, TextMark) and mark.role == "headline" else mark

    assert found(RULE, edited(demo.sheet(tag="ar", phase="take-off"), shrink), demo.context("ar"))


def test_the_demo_is_large_enough():
    for tag in demo.LANGUAGES:
        assert not found(RULE, demo.sheet(tag=tag, phase="take-off", paper="A4"), demo.context(tag))
        assert not found(RULE, demo.sheet("pocket-checklist", tag, paper="A4"), demo.context(tag))
