import demo
import pytest

from signage.drawing.marks import groups_of, texts_of


@pytest.mark.parametrize("tag", demo.LANGUAGES)
def test_every_step_has_one_card_in_order(tag):
    sheet = demo.sheet("step-cards", tag, paper="A6")
    protocol = demo.context(tag).protocol
    names = [groups_of(page, "step")[0][0].name for page in sheet.pages]
    assert names == [step.id for step in protocol.steps]
    assert len(names) == 42


@pytest.mark.parametrize("tag", demo.LANGUAGES)
def test_nothing_overflows_and_pictures_stand_in_one_place(tag):
    sheet = demo.sheet("step-cards", tag, paper="A6")
    assert not sheet.overflows
    places = {groups_of(page, "picture")[0][1] for page in sheet.pages}
    assert len(places) == 1


@pytest.mark.parametrize("tag", demo.LANGUAGES)
def test_headlines_of_a_set_have_one_size(tag):
    sheet = demo.sheet("step-cards", tag, paper="A6")
    for pages in (sheet.pages,):
        sizes = {mark.points for page in pages for mark, _ in texts_of(page) if mark.role == "headline"}
        assert len(sizes) == 1


def test_the_code_leads_to_the_page_of_its_own_step():
    sheet = demo.sheet("step-cards", "ar", paper="A6")
    for page in sheet.pages:
        step = groups_of(page, "step")[0][0].name
        payload = groups_of(page, "qr")[0][0].name
        assert payload.endswith(f"/ar/p1/{step}/?r={sheet.revision}")


def test_right_to_left_cards_mirror_positions_not_pictures():
    left = demo.sheet("step-cards", "en", paper="A6").pages[0]
    right = demo.sheet("step-cards", "ar", paper="A6").pages[0]
    box, mirrored = groups_of(left, "picture")[0][1], groups_of(right, "picture")[0][1]
    assert mirrored.x == pytest.approx(left.width - box.right)
    assert box.x > left.width / 2 > mirrored.right - 1 or box.x + box.width / 2 > left.width / 2


def test_letter_cards_are_a_quarter_of_the_sheet():
    sheet = demo.sheet("step-cards", "fr", paper="Letter")
    assert not sheet.overflows
    assert (sheet.pages[0].width, sheet.pages[0].height) == pytest.approx((215.9, 279.4))
    assert len(groups_of(sheet.pages[0], "card")) == 4


def test_cards_keep_the_mark_of_a_critical_step():
    sheet = demo.sheet("step-cards", "en", paper="A6")
    critical = {step.id for step in demo.context().protocol.steps if step.critical}
    marked = {
        groups_of(page, "step")[0][0].name
        for page in sheet.pages
        if any(mark.text == "Critical" for mark, _ in texts_of(page))
    }
    assert marked == critical
    assert critical
