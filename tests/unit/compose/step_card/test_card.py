import demo
import pytest
from long_samples import with_steps, with_zone_names
from sheet_edits import found

from signage.check.sheet_rules import line_through_text, shape_over_text, text_overlap
from signage.compose.step_card.card import compose_step_cards
from signage.drawing.marks import groups_of, texts_of
from signage.drawing.roles import GroupRole


@pytest.mark.parametrize("tag", demo.LANGUAGES)
def test_every_step_has_one_card_in_order(tag):
    sheet = demo.sheet("step-cards", tag, paper="A6")
    protocol = demo.context(tag).protocol
    names = [groups_of(page, GroupRole.STEP)[0][0].name for page in sheet.pages]
    assert names == [step.id for step in protocol.steps]
    assert len(names) == 42


@pytest.mark.parametrize("tag", demo.LANGUAGES)
def test_nothing_overflows_and_pictures_stand_in_one_place(tag):
    sheet = demo.sheet("step-cards", tag, paper="A6")
    assert not sheet.overflows
    places = {groups_of(page, GroupRole.PICTURE)[0][1] for page in sheet.pages}
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
        step = groups_of(page, GroupRole.STEP)[0][0].name
        payload = groups_of(page, GroupRole.QR)[0][0].name
        assert payload.endswith(f"/ar/p1/{step}/?r={sheet.revision}")


def test_right_to_left_cards_mirror_positions_not_pictures():
    left = demo.sheet("step-cards", "en", paper="A6").pages[0]
    right = demo.sheet("step-cards", "ar", paper="A6").pages[0]
    box, mirrored = groups_of(left, GroupRole.PICTURE)[0][1], groups_of(right, GroupRole.PICTURE)[0][1]
    assert mirrored.x == pytest.approx(left.width - box.right)
    assert box.x > left.width / 2 > mirrored.right - 1 or box.x + box.width / 2 > left.width / 2


def test_letter_cards_are_a_quarter_of_the_sheet():
    sheet = demo.sheet("step-cards", "fr", paper="Letter")
    assert not sheet.overflows
    assert (sheet.pages[0].width, sheet.pages[0].height) == pytest.approx((215.9, 279.4))
    assert len(groups_of(sheet.pages[0], GroupRole.CARD)) == 4


def test_cards_keep_the_mark_of_a_critical_step():
    sheet = demo.sheet("step-cards", "en", paper="A6")
    critical = {step.id for step in demo.context().protocol.steps if step.critical}
    marked = {
        groups_of(page, GroupRole.STEP)[0][0].name
        for page in sheet.pages
        if any(mark.text == "Critical" for mark, _ in texts_of(page))
    }
    assert marked == critical
    assert critical


def test_a_cut_card_still_says_that_it_is_a_draft_and_that_nobody_checked_its_translation():
    for tag in demo.LANGUAGES:
        wording = demo.project().wording(tag)
        places = set()
        for page in demo.sheet("step-cards", tag, paper="A6").pages:
            said = [(mark.text, box.y) for mark, box in texts_of(page) if mark.role == "draft-sentence"]
            assert len(said) == 1
            places.add(round(said[0][1], 3))
            assert wording.fixed("draft-sentence") in said[0][0]
            assert (wording.fixed("translation-unverified") in said[0][0]) is (tag != "en")
        assert len(places) == 1


def test_a_long_name_of_a_zone_and_a_long_title_keep_clear_of_all_else():
    # names of 30 characters, of stand-ins 42: the block of a critical step hid their second line
    for tag in ("en", "en-XA", "ar-XB"):
        context = with_zone_names("Neonatal cohort cot room", tag, title="Cot room, gown mask and gloves")
        for width, height in ((105.0, 148.0), (107.95, 139.7))[: 2 if tag == "en" else 1]:
            sheet = compose_step_cards(context, width, height)
            assert not sheet.overflows
            for rule in (line_through_text.RULE, shape_over_text.RULE, text_overlap.RULE):
                assert not found(rule, sheet, context)


def test_the_frame_of_a_condition_keeps_clear_of_a_headline_with_accents():
    context = with_steps([3, 3], "en-XA", when="if-soiled", detail=None, why=None, caution=None)
    assert not found(line_through_text.RULE, compose_step_cards(context, 105.0, 148.0), context)


def test_a_blank_zone_has_no_rail():
    rails = {
        groups_of(page, GroupRole.STEP)[0][0].fact("zone"): bool(groups_of(page, GroupRole.PATTERN))
        for page in demo.sheet("step-cards", "en", paper="A6").pages
    }
    assert rails == {"anteroom": False, "room": True, "dirty-side": True, "clean-side": True}
