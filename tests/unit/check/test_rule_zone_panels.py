from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.zone_panels import RULE
from signage.drawing.marks import Group
from signage.ground.geometry import translation


def test_a_step_moved_into_the_neighbouring_panel_is_found():
    def move(mark):
        if isinstance(mark, Group) and mark.role == "step" and mark.name == "respirator-off":
            return replace(mark, box=translation(0, -150).box(mark.box))
        return mark

    problems = found(RULE, edited(demo.sheet(phase="take-off"), move), demo.context())
    assert [problem.step for problem in problems] == ["respirator-off"]
    assert problems[0].severity == "S1"


def test_a_step_said_to_be_in_another_zone_is_found():
    def lie(mark):
        if isinstance(mark, Group) and mark.role == "step" and mark.name == "apron-off":
            return replace(mark, facts=tuple((k, "clean-side" if k == "zone" else v) for k, v in mark.facts))
        return mark

    assert found(RULE, edited(demo.sheet(phase="take-off"), lie), demo.context())


def test_the_demo_is_silent_in_both_directions_and_shapes():
    for tag, paper in (("en", "A3"), ("ar", "A3"), ("hi", "A3-landscape"), ("am", "A4")):
        for phase in ("put-on", "take-off"):
            assert not found(RULE, demo.sheet(tag=tag, phase=phase, paper=paper), demo.context(tag))
