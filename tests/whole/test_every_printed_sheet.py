"""Every sheet of the demo in every language, read by other people's readers."""

import demo
import pytest
from picture_sheet_samples import picture_sheet
from print_checks import (
    CODED_SHEETS,
    EVERY_SHEET,
    HAND_POSTERS,
    assert_codes_lead_where_they_say,
    assert_headlines_can_be_found,
    assert_language_direction_boxes_and_tabs,
    assert_pdf_ua_1,
    assert_steps_are_spoken_in_order,
)

from signage.paint.pdf.document import paint_pdf


@pytest.mark.parametrize(("tag", "kind", "phase", "paper"), EVERY_SHEET)
def test_sheets_are_pdf_ua_1(tag, kind, phase, paper, tmp_path):
    data = demo.printed(kind, tag, phase, paper)
    assert_pdf_ua_1(data, tmp_path)
    assert_language_direction_boxes_and_tabs(data, tag)


@pytest.mark.parametrize("tag", demo.LANGUAGES)
@pytest.mark.parametrize(("kind", "phase", "paper"), HAND_POSTERS)
def test_hand_posters_are_pdf_ua_1(tag, kind, phase, paper, tmp_path):
    assert_pdf_ua_1(demo.printed(kind, tag, phase, paper, "clean-hands"), tmp_path)


@pytest.mark.parametrize("tag", ["en", "ar", "hi", "am"])
@pytest.mark.parametrize("kind", ["pictures", "picture-trial"])
def test_sheets_about_pictures_are_pdf_ua_1(kind, tag, tmp_path):
    assert_pdf_ua_1(paint_pdf(picture_sheet(kind, tag)), tmp_path)


@pytest.mark.parametrize("tag", ["en", "fr", "am", "hi"])
@pytest.mark.parametrize("phase", ["put-on", "take-off"])
def test_every_headline_is_found_in_the_text_of_the_page(tag, phase):
    assert_headlines_can_be_found(tag, phase)


@pytest.mark.parametrize("tag", demo.LANGUAGES)
def test_a_screen_reader_meets_the_steps_in_order(tag):
    assert_steps_are_spoken_in_order(tag)


@pytest.mark.parametrize("tag", ["en", "ar", "hi", "am"])
@pytest.mark.parametrize(("kind", "phase", "paper", "protocol"), CODED_SHEETS)
def test_codes_read_at_150_dpi_lead_where_they_say(tag, kind, phase, paper, protocol):
    assert_codes_lead_where_they_say(tag, kind, phase, paper, protocol)
