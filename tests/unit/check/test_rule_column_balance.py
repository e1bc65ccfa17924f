from dataclasses import replace

import demo
from sheet_edits import found

from signage.check.sheet_rules.column_balance import RULE
from signage.drawing.marks import PathMark, groups_of
from signage.drawing.roles import GroupRole
from signage.ground.geometry import rectangle


def test_a_column_under_ink_is_found():
    sheet = demo.sheet(phase="put-on")
    page = sheet.pages[0]
    first = min(box.x for step, box in groups_of(page, GroupRole.STEP) if step.fact("kind") == "big")
    slabs = tuple(
        PathMark(rectangle(box), "#14202C")
        for step, box in groups_of(page, GroupRole.STEP)
        if step.fact("kind") == "big" and box.x == first
    )
    heavy = replace(sheet, pages=(replace(page, marks=(*page.marks, *slabs)),))
    assert found(RULE, heavy, demo.context())


def test_the_demo_is_balanced():
    for tag in ("en", "ar"):
        for phase in ("put-on", "take-off"):
            assert not found(RULE, demo.sheet(tag=tag, phase=phase), demo.context(tag))
