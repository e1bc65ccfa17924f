from dataclasses import replace

import demo
from sheet_edits import KINDS, found

from signage.check.ink_sketch import sketch_of
from signage.check.raster import rasters_of
from signage.check.rule import SheetSubject
from signage.check.sheet_rules import column_balance, white_space
from signage.drawing.marks import PathMark, groups_of
from signage.drawing.roles import GroupRole
from signage.ground.geometry import Box, rectangle


def posters():
    for tag, phase in (("en", "put-on"), ("ar", "take-off"), ("hi", "put-on"), ("am", "take-off")):
        yield tag, demo.sheet(tag=tag, phase=phase, paper="A4")


def with_slabs(sheet, share):
    """Ink over a part of every step of the first column."""
    page = sheet.pages[0]
    boxes = [box for _, box in groups_of(page, GroupRole.STEP)]
    slabs = [
        PathMark(rectangle(Box(box.x, box.y, box.width, box.height * share)), "#14202C")
        for box in boxes
        if box.x == min(each.x for each in boxes)
    ]
    return replace(sheet, pages=(replace(page, marks=(*page.marks, *slabs)), *sheet.pages[1:]))


def test_the_exact_ink_lies_where_the_sketch_says():
    for tag, sheet in posters():
        subject = SheetSubject(sheet, demo.context(tag), KINDS.of(sheet.kind))
        for page, raster in zip(sheet.pages, rasters_of(subject), strict=True):
            least, most = sketch_of(page).darkness(238)
            assert least - 0.01 <= raster.share_darker_than(238) <= most + 0.01, sheet.file_stem
            assert most - least < 0.12


def test_rules_say_with_the_sketch_what_they_say_without(monkeypatch):
    sheets = [(tag, with_slabs(sheet, share)) for tag, sheet in posters() for share in (0.0, 0.95)]
    rules = (white_space.RULE, column_balance.RULE)

    def said():
        return [p for tag, sheet in sheets for rule in rules for p in found(rule, sheet, demo.context(tag))]

    with_sketch = said()
    for module in (white_space, column_balance):
        monkeypatch.setattr(module, "_DOUBT", 1e9)
    assert with_sketch == said()
    assert {problem.code for problem in with_sketch} == {"SH-15", "SH-16"}
