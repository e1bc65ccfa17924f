from dataclasses import replace

import demo
from sheet_edits import found

from signage.check.sheet_rules.overflow import RULE
from signage.drawing.marks import Overflow
from signage.drawing.roles import TypeRole


def test_a_text_that_is_left_over_is_named_with_step_locale_and_millimetres():
    over = Overflow(TypeRole.HEADLINE, "layered-protection/hood-off/text", "Take off the hood", 11.4)
    sheet = replace(demo.sheet(phase="take-off"), overflows=(over,))
    (problem,) = found(RULE, sheet, demo.context())
    assert problem.step == "hood-off"
    assert problem.locale == "en"
    assert "11.4 mm" in problem.message
    assert "Take off the hood" in problem.message
    assert problem.place.path.endswith("layered-protection.yaml")


def test_an_address_that_is_too_long_leads_to_the_line_that_it_stands_in():
    address = demo.project().library.training_address.removeprefix("http://")
    over = Overflow(TypeRole.CONTROL, None, f"\u2066{address}\u2069", 2.8)
    (problem,) = found(RULE, replace(demo.sheet(phase="take-off"), overflows=(over,)), demo.context())
    assert problem.place == demo.project().library.at("training_address")
    assert problem.hint.startswith("Shorten the training address")


def test_the_demo_fits():
    assert not found(RULE, demo.sheet(phase="take-off"), demo.context())
