from dataclasses import replace

import demo
import pytest

from signage.compose.papers import paper_of
from signage.compose.poster.poster import compose_poster
from signage.drawing.marks import groups_of, texts_of
from signage.drawing.roles import GroupRole


def phase(name):
    return next(each for each in demo.context().protocol.phases if each.id == name)


def composed(steps, paper="A3", tag="en", name="put-on"):
    shown = phase(name)
    return compose_poster(demo.context(tag), replace(shown, steps=shown.steps[steps]), paper_of(paper))


def headline_points(sheet):
    return max(mark.points for mark, _ in texts_of(sheet.pages[0]) if mark.role == "headline")


def test_a_short_protocol_is_drawn_larger_than_its_paper_asks_for():
    short, whole = composed(slice(4, 8)), composed(slice(None))
    assert headline_points(short) > headline_points(whole) * 1.2
    assert len(short.pages) == 1


def test_the_margin_does_not_grow_with_the_rest():
    assert composed(slice(4, 8)).pages[0].margin == composed(slice(None)).pages[0].margin


def test_one_card_takes_the_whole_width():
    (page,) = composed(slice(4, 5)).pages
    ((_, box),) = groups_of(page, GroupRole.STEP)
    assert box.width > page.width * 0.7


def test_a_phase_of_gates_only_still_makes_a_sheet():
    (page,) = composed(slice(0, 3)).pages
    assert [step.fact("kind") for step, _ in groups_of(page, GroupRole.STEP)] == ["gate"] * 3


def test_a_phase_without_a_key_rule_makes_a_sheet_without_a_key_box():
    shown = replace(phase("take-off"), rule=None)
    pages = compose_poster(demo.context(), shown, paper_of("A3")).pages
    assert [groups_of(page, GroupRole.KEY) for page in pages] == [[]] * len(pages)
    assert sum(len(groups_of(page, GroupRole.STEP)) for page in pages) == 25


@pytest.mark.parametrize("tag", demo.LANGUAGES)
def test_low_sheets_take_another_sheet_before_small_pictures_in_empty_cards(tag):
    sheet = composed(slice(None), "A4-landscape", tag, "take-off")
    for page in sheet.pages:
        tiles = [box for step, box in groups_of(page, GroupRole.STEP) if step.fact("kind") == "big"]
        pictures = [box for picture, box in groups_of(page, GroupRole.PICTURE) if not picture.fact("is_sign")]
        assert min(box.width for box in pictures) > 0.25 * max(box.height for box in tiles)


def test_many_steps_take_several_sheets_even_on_large_paper():
    context = demo.context()
    both = [step for each in context.protocol.phases for step in each.steps]
    shown = replace(phase("take-off"), steps=tuple(both))
    sheet = compose_poster(context, shown, paper_of("A1"))
    numbers = [step.fact("number") for page in sheet.pages for step, _ in groups_of(page, GroupRole.STEP)]
    assert numbers == list(range(1, 43))
    assert len(sheet.pages) == 3


@pytest.mark.parametrize("tag", ["en", "ar", "fr"])
@pytest.mark.parametrize("name", ["torn-glove", "splash"])
def test_growing_loses_neither_notes_nor_times(tag, name):
    sheet = demo.sheet("poster", tag, name, "A3", "gone-wrong")
    roles = {mark.role for mark, _ in texts_of(sheet.pages[0])}
    assert {"note", "time"} <= roles
