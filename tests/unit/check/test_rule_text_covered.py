from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules import text_overlap
from signage.check.sheet_rules.text_covered import RULE
from signage.drawing.marks import TextMark
from signage.ground.geometry import translation


def pushed(millimetres):
    """The poster with its details moved up towards their headlines."""

    def push(mark):
        if isinstance(mark, TextMark) and mark.role == "detail":
            return replace(mark, box=translation(0, -millimetres).box(mark.box))
        return mark

    return edited(demo.sheet(phase="take-off"), push)


def test_a_headline_under_its_detail_is_grave_and_a_touch_of_letters_is_not():
    slight = next(
        step / 10 for step in range(60) if found(text_overlap.RULE, pushed(step / 10), demo.context())
    )
    assert not found(RULE, pushed(slight), demo.context())
    assert found(RULE, pushed(slight + 3), demo.context())


def test_no_text_of_the_demo_covers_another():
    for tag in demo.LANGUAGES:
        assert not found(RULE, demo.sheet(tag=tag, phase="take-off"), demo.context(tag))
