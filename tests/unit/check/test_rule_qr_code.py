from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.qr_code import RULE
from signage.drawing.marks import Group
from signage.ground.geometry import Box


def test_modules_below_half_a_millimetre_are_found():
    def shrink(mark):
        if isinstance(mark, Group) and mark.role == "qr":
            return replace(mark, facts=(("module", 0.41),))
        return mark

    problems = found(RULE, edited(demo.sheet(phase="take-off"), shrink), demo.context())
    assert "0.41 mm" in problems[0].message


def test_text_on_the_quiet_zone_is_found():
    def widen(mark):
        if isinstance(mark, Group) and mark.role == "qr":
            return replace(mark, box=Box(mark.box.x - 20, mark.box.y, mark.box.width + 20, mark.box.height))
        return mark

    assert found(RULE, edited(demo.sheet(phase="take-off"), widen), demo.context())


def test_every_kind_of_sheet_keeps_its_code_readable():
    for tag in demo.LANGUAGES:
        assert not found(RULE, demo.sheet(tag=tag, phase="take-off"), demo.context(tag))
        assert not found(RULE, demo.sheet("step-cards", tag, paper="A4"), demo.context(tag))
        assert not found(RULE, demo.sheet("pocket-checklist", tag, paper="A4"), demo.context(tag))
