import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.step_order import RULE
from signage.drawing.marks import Group


def without(step):
    return lambda mark: (
        None if isinstance(mark, Group) and mark.role == "step" and mark.name == step else mark
    )


def test_a_lost_step_is_named():
    sheet = edited(demo.sheet(phase="take-off"), without("rub-after-apron"))
    problems = found(RULE, sheet, demo.context())
    assert [problem.step for problem in problems] == ["rub-after-apron"]
    assert "not on the sheet" in problems[0].message


def test_cards_in_another_order_are_found():
    sheet = demo.sheet("step-cards", paper="A6")
    from dataclasses import replace

    swapped = replace(sheet, pages=(sheet.pages[1], sheet.pages[0], *sheet.pages[2:]))
    assert found(RULE, swapped, demo.context())


def test_the_demo_has_every_step_once():
    assert not found(RULE, demo.sheet(phase="put-on"), demo.context())
    assert not found(RULE, demo.sheet("pocket-checklist", "ar", paper="A4"), demo.context("ar"))
    assert not found(RULE, demo.sheet("step-cards", "am", paper="A4"), demo.context("am"))
