from dataclasses import replace

import demo
import pytest

from signage.compose.canvas import Canvas
from signage.compose.furniture.key_box import KeyBox, KeyWords
from signage.compose.furniture.title_band import BandPlace, BandWords, TitleBand
from signage.compose.theme import style_of
from signage.drawing.marks import Page, groups_of, texts_of
from signage.drawing.roles import GroupRole
from signage.model.mark import Mark

RULE = "Unsure, torn, soiled or unwell? Stay where you are. Tell the observer."


def drawn(words, width=273.0, theme="doff", columns=(86.75, 153.5, 220.25), tag="en", place=None):
    context = demo.context(tag)
    canvas = Canvas(width + 24, 420, context, style_of(theme), 1.0, 12.0)
    phase = context.protocol.phases[1]
    band = TitleBand(canvas, context, phase, words, place or BandPlace(12, 12, width, 36, 1.0), columns)
    band.draw()
    return band, canvas


def words_of(title="Take off", rule=RULE, sheet="", protocol="Layered protection"):
    return BandWords("P1", protocol, title, sheet, "Stop", rule)


def mark_of(canvas, role):
    page = Page(canvas.width, canvas.height, canvas.marks, 12)
    return [(mark, box) for mark, box in texts_of(page) if mark.role == role]


def key_of(canvas):
    ((_, box),) = groups_of(Page(canvas.width, canvas.height, canvas.marks), GroupRole.KEY)
    return box


def test_the_rule_grows_into_the_space_that_a_short_title_leaves():
    _, short = drawn(words_of("Off"))
    _, long = drawn(words_of("Take everything off"))
    assert key_of(short).x < key_of(long).x
    assert mark_of(short, "key-rule")[0][0].points > mark_of(long, "key-rule")[0][0].points


@pytest.mark.parametrize("title", ["Off", "Take off", "Take everything off", "Déshabillage complet"])
def test_title_overline_and_key_box_stay_apart(title):
    _, canvas = drawn(words_of(title, sheet="Sheet 1 of 2"))
    box = key_of(canvas)
    for role in ("title", "over"):
        for mark, bounds in mark_of(canvas, role):
            assert bounds.right < box.x, mark.text
    assert not canvas.overflows


def test_the_number_of_the_sheet_is_always_there():
    for title in ("Off", "Take everything off"):
        _, canvas = drawn(words_of(title, sheet="Sheet 1 of 2"))
        assert "Sheet 1 of 2" in {mark.text for mark, _ in mark_of(canvas, "over")}


def test_a_band_too_narrow_for_the_title_of_the_protocol_says_so():
    words = words_of("Take everything off", sheet="Sheet 1 of 2", protocol="Layered protection for all")
    band, canvas = drawn(words, width=190.0, columns=(90.0,))
    assert band.names_protocol is False
    assert ("over", "title of the protocol dropped") in {(s.role, s.rung) for s in canvas.fit_steps}


def test_a_phase_without_a_rule_has_no_key_box():
    _, canvas = drawn(words_of(rule=None))
    assert mark_of(canvas, "key-word") == []
    assert mark_of(canvas, "title")


def test_the_three_themes_differ_in_form_without_colour():
    grounds = {}
    for theme in ("don", "doff", "hands"):
        _, canvas = drawn(words_of(), theme=theme)
        first, second = canvas.marks[0], canvas.marks[1]
        grounds[theme] = (first.stroke is None, getattr(second, "fill", None) == style_of(theme).deep)
    assert len(set(grounds.values())) == 3


def test_a_tall_script_stays_inside_the_band():
    _, canvas = drawn(words_of("إزالة الملابس الواقية"), tag="ar")
    ((_, box),) = mark_of(canvas, "title")
    assert box.y >= 12 + 11
    assert box.bottom <= 12 + 36 - 2


def test_the_key_word_goes_above_a_rule_that_gains_by_it():
    context = demo.context()
    canvas = Canvas(200, 100, context, style_of("doff"), 1.0)
    box = KeyBox(canvas, KeyWords("Caution", RULE, "caution", ""), y=10, height=28, scale=1.0)
    narrow, wide = box.fit(62), box.fit(130)
    assert narrow.is_stacked
    assert not wide.is_stacked
    assert narrow.excess == wide.excess == 0


def test_a_key_word_wider_than_its_cell_is_counted():
    context = demo.context()
    canvas = Canvas(200, 100, context, style_of("doff"), 1.0)
    long = KeyBox(canvas, KeyWords("W" * 40, RULE, "caution", ""), y=10, height=28, scale=1.0)
    assert long.fit(80).excess > 10


def test_a_rule_that_does_not_fit_is_recorded_and_not_hidden():
    _, canvas = drawn(words_of(rule=" ".join([RULE] * 6)))
    (overflow,) = canvas.overflows
    assert overflow.role == "key-rule"
    assert overflow.excess_mm > 0


def test_an_approved_band_has_no_tag_and_starts_with_the_code():
    context = replace(demo.context(), mark=Mark.NONE)
    canvas = Canvas(297, 420, context, style_of("doff"), 1.0, 12.0)
    place = BandPlace(12, 12, 273, 36, 1.0)
    TitleBand(canvas, context, context.protocol.phases[1], words_of(), place, (153.5,)).draw()
    first = mark_of(canvas, "over")[0][1]
    assert first.x == pytest.approx(17, abs=1)
