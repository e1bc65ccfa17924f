"""Whole sheets of the demo, read by other people's readers: every language and every kind once."""

import demo
import pytest
from print_checks import (
    HAND_POSTERS,
    SAMPLED_SHEETS,
    assert_headlines_can_be_found,
    assert_language_direction_boxes_and_tabs,
    assert_pdf_ua_1,
    assert_steps_are_spoken_in_order,
)

from signage.paint.pdf.document import paint_pdf


@pytest.mark.parametrize(("tag", "kind", "phase", "paper"), SAMPLED_SHEETS)
def test_sheets_are_pdf_ua_1(tag, kind, phase, paper, tmp_path):
    assert_pdf_ua_1(demo.printed(kind, tag, phase, paper), tmp_path)


@pytest.mark.parametrize(("tag", "sheet"), list(zip(["en", "ar"], HAND_POSTERS, strict=True)))
def test_hand_posters_are_pdf_ua_1(tag, sheet, tmp_path):
    kind, phase, paper = sheet
    assert_pdf_ua_1(demo.printed(kind, tag, phase, paper, "clean-hands"), tmp_path)


@pytest.mark.parametrize(("tag", "kind", "phase", "paper"), SAMPLED_SHEETS)
def test_language_direction_boxes_and_order_of_tabs(tag, kind, phase, paper):
    assert_language_direction_boxes_and_tabs(demo.printed(kind, tag, phase, paper), tag)


@pytest.mark.parametrize(
    ("tag", "phase"), [("en", "take-off"), ("fr", "put-on"), ("am", "put-on"), ("hi", "take-off")]
)
def test_every_headline_is_found_in_the_text_of_the_page(tag, phase):
    assert_headlines_can_be_found(tag, phase)


@pytest.mark.parametrize("tag", ["en", "ar"])
def test_a_screen_reader_meets_the_steps_in_order(tag):
    assert_steps_are_spoken_in_order(tag)


def test_built_twice_the_bytes_are_the_same():
    for tag, kind, phase, paper in SAMPLED_SHEETS[:3]:
        sheet = demo.sheet(kind, tag, phase, paper)
        assert paint_pdf(sheet) == paint_pdf(sheet)
