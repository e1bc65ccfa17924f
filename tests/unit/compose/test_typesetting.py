import pytest

from signage.compose.typesetting import (
    Face,
    Room,
    common_size,
    fit,
    fit_ink,
    line_width,
    measure,
    sizes_down,
)
from signage.text.font_set import BUNDLED_FONTS

BOLD = Face("en", "Latn", BUNDLED_FONTS, 700)
ARABIC = Face("ar", "Arab", BUNDLED_FONTS, 700)


def test_sizes_fall_in_half_points_and_end_at_the_floor():
    assert sizes_down(12.0, 11.0) == [12.0, 11.5, 11.0]
    assert sizes_down(12.0, 11.3) == [12.0, 11.5, 11.3]
    assert sizes_down(9.0, 9.0) == [9.0]


def test_a_text_that_fits_keeps_its_size():
    fitted = fit("Open the zip", BOLD, 23, 18, Room(60, lines=2))
    assert fitted.points == 23
    assert fitted.excess == 0


def test_the_largest_size_that_fits_is_found():
    text, room = "Take off outer gloves", Room(40, lines=2)
    fitted = fit(text, BOLD, 40, 8, room)
    assert fitted.excess == 0
    assert room.excess(measure(text, BOLD, fitted.points + 0.5, room.width)) > 0


def test_what_does_not_fit_at_the_floor_is_measured_and_not_hidden():
    fitted = fit("Unbreakableheadlineofoneword", BOLD, 23, 18, Room(30, lines=2))
    assert fitted.points == 18
    assert fitted.excess > 0


def test_soft_ties_yield_before_the_size_does():
    tied = "Put on the\u00a0respirator"
    width = line_width("Put on the", BOLD, 23) + 1
    fitted = fit(tied, BOLD, 23, 18, Room(max(width, line_width("respirator", BOLD, 23) + 1), lines=2))
    assert fitted.points == 23
    assert fitted.is_softened
    assert "\u00a0" not in fitted.text


def test_a_lone_short_first_line_costs_the_tie():
    room = Room(line_width("the\u00a0coverall off", BOLD, 23) + 1, lines=2)
    fitted = fit("Roll the\u00a0coverall off", BOLD, 23, 18, room)
    lines = fitted.measured.lines
    assert fitted.text[lines[0].start : lines[0].end].strip() == "Roll the"


def test_one_size_serves_all_texts_of_a_role():
    room = Room(45, lines=1)
    texts = ["Stand up", "Sit on the dirty chair"]
    size = common_size(texts, BOLD, 20, 8, room)
    assert all(fit(text, BOLD, size, size, room).excess == 0 for text in texts)
    assert fit(texts[1], BOLD, size + 0.5, size + 0.5, room).excess > 0


@pytest.mark.parametrize(
    ("text", "face"), [("Take off", BOLD), ("اخلع", Face("ar", "Arab", BUNDLED_FONTS, 700))]
)
def test_ink_is_fitted_to_a_height(text, face):
    fitted = fit_ink(text, face, 60, 20, 1000, 9.0)
    line = fitted.measured.lines[0]
    assert (line.ink_top - line.ink_bottom) * fitted.measured.em <= 9.0 + 1e-6
    assert fitted.excess == 0
