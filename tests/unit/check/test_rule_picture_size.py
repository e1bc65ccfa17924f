from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.picture_size import RULE
from signage.drawing.marks import Group
from signage.ground.geometry import Box


def test_a_picture_of_eleven_millimetres_is_found():
    def shrink(mark):
        if isinstance(mark, Group) and mark.role == "picture" and mark.name == "hood-off":
            return replace(mark, box=Box(mark.box.x, mark.box.y, 11, 11))
        return mark

    problems = found(RULE, edited(demo.sheet(phase="take-off"), shrink), demo.context())
    assert ["hood-off" in problem.message for problem in problems] == [True]


def test_pictures_of_the_demo_are_large_enough():
    for tag in demo.LANGUAGES:
        assert not found(RULE, demo.sheet(tag=tag, phase="take-off", paper="A4"), demo.context(tag))
