from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.role_sizes import RULE
from signage.drawing.marks import TextMark


def test_one_smaller_headline_is_found():
    def shrink(mark):
        is_one = isinstance(mark, TextMark) and mark.message == "layered-protection/hood-off/text"
        return replace(mark, points=mark.points - 2) if is_one else mark

    (problem,) = found(RULE, edited(demo.sheet(phase="take-off"), shrink), demo.context())
    assert problem.step == "hood-off"
    assert "the smallest is 'Take off the hood'" in problem.message
    assert problem.hint.startswith("Shorten the text")


def test_the_demo_is_even():
    for tag in demo.LANGUAGES:
        assert not found(RULE, demo.sheet(tag=tag, phase="take-off"), demo.context(tag))
