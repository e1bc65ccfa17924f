from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.card_grid import RULE
from signage.drawing.marks import Group
from signage.ground.geometry import Box


def test_one_higher_tile_is_found():
    def stretch(mark):
        if isinstance(mark, Group) and mark.role == "step" and mark.name == "hood-off":
            return replace(mark, box=Box(mark.box.x, mark.box.y, mark.box.width, mark.box.height + 3))
        return mark

    assert found(RULE, edited(demo.sheet(phase="take-off"), stretch), demo.context())


def test_the_demo_is_on_one_grid():
    for paper in ("A3", "A3-landscape", "A4"):
        assert not found(RULE, demo.sheet(phase="take-off", paper=paper), demo.context())
