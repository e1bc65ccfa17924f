from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.shape_over_text import RULE
from signage.drawing.marks import Group, PathMark, texts_of, walk
from signage.ground.geometry import Box, circle, rectangle, translation

CARD = demo.sheet("step-cards", "fr", paper="A6")


def with_shape(shape, *, is_before=False, page=0):
    """The first card with one more shape, painted before or after all the rest."""
    old = CARD.pages[page]
    marks = (shape, *old.marks) if is_before else (*old.marks, shape)
    return replace(CARD, pages=(replace(old, marks=marks),))


def box_of(role):
    return next(box for mark, box in texts_of(CARD.pages[0]) if mark.role == role)


def test_a_number_block_that_slides_over_the_name_of_the_zone_is_found():
    # as cards were before: a name of two lines, and the block of a critical step over the second
    critical = next(
        page
        for page in CARD.pages
        if any(getattr(mark, "role", "") == "critical" for mark, _ in walk(page.marks))
    )

    def slide(mark):
        if isinstance(mark, Group) and mark.role == "critical":
            return replace(mark, transform=translation(0, -6))
        return mark

    problems = found(RULE, edited(replace(CARD, pages=(critical,)), slide), demo.context("fr"))
    assert any(problem.message.startswith("name of a zone '") for problem in problems)
    assert {problem.severity.value for problem in problems} == {"S1"}


def test_only_what_is_painted_later_and_over_the_ink_covers():
    zone = box_of("zone")
    context = demo.context("fr")
    cover = PathMark(rectangle(zone), "#FFFFFF")
    assert found(RULE, with_shape(cover), context)
    assert not found(RULE, with_shape(cover, is_before=True), context)  # a ground
    assert not found(RULE, with_shape(replace(cover, fill=None, stroke="#000000", width=0.3)), context)
    beside = Box(zone.x, zone.bottom + 0.2, zone.width, 1)
    assert not found(RULE, with_shape(PathMark(rectangle(beside), "#FFFFFF")), context)
    # its box reaches over the name, its curve does not
    disc = circle(zone.right + 7.2, zone.bottom + 7.2, 10)
    assert not found(RULE, with_shape(PathMark(disc, "#FFFFFF")), context)


def test_what_a_clip_cuts_off_covers_nothing():
    zone = box_of("zone")
    path = PathMark(rectangle(Box(0, 0, 105, 148)), "#FFFFFF")
    clipped = Group((path,), clip=rectangle(Box(0, 0, 3, 3)))
    assert not found(RULE, with_shape(clipped), demo.context("fr"))
    assert found(RULE, with_shape(replace(clipped, clip=rectangle(zone))), demo.context("fr"))


def test_nothing_covers_words_of_the_demo():
    for tag in demo.LANGUAGES:
        for sheet in (
            demo.sheet(tag=tag, phase="take-off"),
            demo.sheet("step-cards", tag, paper="A4"),
            demo.sheet("pocket-checklist", tag, paper="A4"),
        ):
            assert not found(RULE, sheet, demo.context(tag))
