"""A refusal leads to the line to mend, in words that need no knowledge of the programme."""

from dataclasses import replace

import demo

from signage.check.blockers import reasons_not_to_print
from signage.check.refused_sheet import refusal_problems
from signage.compose.part_names import PART_NAMES, missing_glyph_message
from signage.compose.refusal import TextTooLongError
from signage.drawing.marks import Overflow, texts_of
from signage.drawing.roles import TypeRole
from signage.words.wording import MissingMessageError


def test_a_line_without_a_message_of_its_own_is_led_back_to_its_entry():
    wording = demo.context("fr").wording
    title = wording.content("layered-protection/title")
    long = Overflow(TypeRole.OVER, None, f"\u2066P1\u2069  {title}", 3.2)
    sheet = replace(demo.sheet(tag="fr", phase="take-off"), overflows=(long, long))
    reason, cure = reasons_not_to_print(sheet, wording)
    assert reason.startswith(f"{wording.place_of('layered-protection/title')}: The line above the title 'P1")
    assert "3.2 mm" in reason
    assert "Shorten" in cure


def test_a_text_of_200_kilobytes_is_not_quoted_whole():
    sheet = replace(
        demo.sheet(phase="take-off"), overflows=(Overflow(TypeRole.HEADLINE, None, "word " * 40_000, 9.0),)
    )
    assert sum(map(len, reasons_not_to_print(sheet, demo.context().wording))) < 400


def test_refusals_become_findings_at_the_place_of_their_text():
    context = demo.context("fr")
    text = "layered-protection/hood-off/text"
    overflow = Overflow(TypeRole.HEADLINE, text, context.wording.content(text), 2.0)
    refusal = TextTooLongError("poster take-off", context.wording, "A4", [overflow, overflow])
    for each in (
        *refusal_problems(refusal, context.wording, context.protocol, "poster take-off A4"),
        *refusal_problems(
            MissingMessageError("fr", text, "it is not translated", context.wording.place_of(text)),
            context.wording,
            context.protocol,
            "poster take-off A4",
        ),
    ):
        assert (each.place, each.step, each.text) == (context.wording.place_of(text), "hood-off", text)
        assert each.place.path not in each.message


def test_every_part_of_a_sheet_for_the_ward_has_a_plain_name():
    sheets = [demo.sheet(phase="take-off"), demo.sheet("step-cards", paper="A4")]
    sheets.append(demo.sheet("pocket-checklist", paper="A4"))
    roles = {mark.role for sheet in sheets for page in sheet.pages for mark, _ in texts_of(page)}
    assert roles <= PART_NAMES.keys()


def test_a_tab_is_called_a_control_character_and_no_letter_without_a_font():
    assert missing_glyph_message("\t", "headline", "Take\toff").startswith(
        "The control character U+0009 stands"
    )
    assert missing_glyph_message("😀", "headline", "Take off 😀").startswith("No font has '😀' (U+1F600)")
