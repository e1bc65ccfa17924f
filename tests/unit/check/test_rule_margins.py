from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.margins import RULE
from signage.drawing.marks import TextMark
from signage.ground.geometry import Box


def test_a_text_in_the_margin_is_found_with_its_distance():
    def push(mark):
        if isinstance(mark, TextMark) and mark.role == "title":
            return replace(mark, box=Box(9.0, mark.box.y, mark.box.width, mark.box.height))
        return mark

    problems = found(RULE, edited(demo.sheet(phase="put-on"), push), demo.context())
    assert len(problems) == 1
    assert "3.0 mm" in problems[0].message


def test_the_demo_keeps_its_margins():
    for tag in demo.LANGUAGES:
        assert not found(RULE, demo.sheet(tag=tag, phase="put-on"), demo.context(tag))
        assert not found(RULE, demo.sheet("step-cards", tag, paper="A6"), demo.context(tag))
