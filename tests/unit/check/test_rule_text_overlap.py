from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.text_overlap import RULE
from signage.drawing.marks import TextMark
from signage.ground.geometry import translation


def test_a_detail_pushed_up_into_its_headline_is_found():
    def push(mark):
        if isinstance(mark, TextMark) and mark.role == "detail":
            return replace(mark, box=translation(0, -5).box(mark.box))
        return mark

    assert found(RULE, edited(demo.sheet(phase="take-off"), push), demo.context())


def test_no_text_of_the_demo_lies_on_another():
    for tag in demo.LANGUAGES:
        assert not found(RULE, demo.sheet(tag=tag, phase="take-off"), demo.context(tag))
        assert not found(RULE, demo.sheet("step-cards", tag, paper="A4"), demo.context(tag))
        assert not found(RULE, demo.sheet("pocket-checklist", tag, paper="A4"), demo.context(tag))
