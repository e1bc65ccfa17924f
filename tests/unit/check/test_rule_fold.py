from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.fold import RULE
from signage.drawing.marks import Group


def test_two_panels_swapped_are_found():
    names = {"3": "5", "5": "3"}

    def swap(mark):
        if isinstance(mark, Group) and mark.role == "panel":
            return replace(mark, name=names.get(mark.name, mark.name))
        return mark

    assert found(RULE, edited(demo.sheet("pocket-checklist", paper="A4"), swap), demo.context())


def test_both_directions_fold_in_order():
    assert not found(RULE, demo.sheet("pocket-checklist", "en", paper="A4"), demo.context())
    assert not found(RULE, demo.sheet("pocket-checklist", "ar", paper="A4"), demo.context("ar"))
