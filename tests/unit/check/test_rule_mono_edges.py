from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.mono_edges import RULE
from signage.compose.theme import Tone
from signage.drawing.marks import Group


def test_patterns_survive_the_photocopier():
    context = demo.context(tone=Tone.MONO)
    assert not found(RULE, demo.sheet(phase="take-off", tone="mono"), context)


def test_a_rail_that_lost_its_pattern_is_found():
    def blank(mark):
        if isinstance(mark, Group) and mark.role == "pattern":
            return replace(mark, marks=mark.marks[:1])
        return mark

    sheet = edited(demo.sheet(phase="take-off", tone="mono"), blank)
    assert found(RULE, sheet, demo.context(tone=Tone.MONO))
