from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.line_through_text import RULE
from signage.drawing.marks import Group, PathMark, texts_of
from signage.ground.geometry import polygon, rectangle, translation


def test_a_ruler_that_slides_into_the_control_text_is_found():
    # as Arabic checklists and cards of long words were before
    for kind, tag, up in (("pocket-checklist", "ar", 8), ("step-cards", "fr", 7)):

        def slide(mark, up=up):
            if isinstance(mark, Group) and mark.role == "ruler":
                return replace(mark, transform=translation(0, -up))
            return mark

        problems = found(RULE, edited(demo.sheet(kind, tag, paper="A4"), slide), demo.context(tag))
        assert any("'ruler' runs through" in problem.message for problem in problems)


def test_a_seam_between_two_grounds_of_one_colour_is_no_line():
    sheet = demo.sheet("step-cards", "en", paper="A6")
    page = sheet.pages[0]
    box = next(box for mark, box in texts_of(page) if mark.role == "headline")
    left = replace(box, width=box.width / 2)
    right = replace(left, x=left.right)

    def on(*marks):
        return found(
            RULE, replace(sheet, pages=(replace(page, marks=(*marks, *page.marks)),)), demo.context()
        )

    grounds = [PathMark(rectangle(half), "#E1F0F0") for half in (left, right)]
    assert not on(*grounds)
    assert on(grounds[0], replace(grounds[1], fill="#000000"))
    middle = box.y + box.height / 2
    assert on(PathMark(polygon([(0, middle), (105, middle)], closed=False), None, "#000000", 0.3))
    under = box.bottom + 0.3
    assert not on(PathMark(polygon([(0, under), (105, under)], closed=False), None, "#000000", 0.3))


def test_no_line_runs_through_words_of_the_demo():
    for tag in demo.LANGUAGES:
        for sheet in (
            demo.sheet(tag=tag, phase="take-off"),
            demo.sheet(tag=tag, phase="take-off", paper="A4"),
            demo.sheet("step-cards", tag, paper="A4"),
            demo.sheet("pocket-checklist", tag, paper="A4"),
        ):
            assert not found(RULE, sheet, demo.context(tag))
