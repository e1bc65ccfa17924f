"""What painted marks look like, seen through pdfium, and what the file holds, seen through pikepdf."""

import math
from io import BytesIO

import numpy as np
import pypdfium2
import pytest
from outside_readers import outside
from sheet_samples import DOT_SCREEN, disc_form, figure, poster, sheet_of, text_mark

from signage.drawing.marks import FormMark, Group, PathMark
from signage.ground.geometry import (
    Box,
    circle,
    mirroring,
    polygon,
    rectangle,
    rotation,
    scaling,
    translation,
)
from signage.paint.pdf import resources
from signage.paint.pdf.document import paint_pdf

DOTS_PER_MM = 10


def ink(*marks):
    """The page as an array of rows: 0 white to 1 black, ten dots a millimetre."""
    pdf = paint_pdf(sheet_of(*marks))
    picture = pypdfium2.PdfDocument(pdf)[0].render(scale=DOTS_PER_MM * 25.4 / 72, grayscale=True).to_numpy()
    return 1 - picture.reshape(picture.shape[:2]) / 255


def coverage(page, box):
    """The mean ink in a box of millimetres."""
    rows = slice(round(box.y * DOTS_PER_MM), round(box.bottom * DOTS_PER_MM))
    columns = slice(round(box.x * DOTS_PER_MM), round(box.right * DOTS_PER_MM))
    return float(np.mean(page[rows, columns]))


def at(page, x, y):
    return page[round(y * DOTS_PER_MM), round(x * DOTS_PER_MM)]


def test_a_filled_box_covers_just_its_place():
    page = ink(PathMark(rectangle(Box(20, 30, 40, 10)), fill="#000000"))
    assert coverage(page, Box(20, 30, 40, 10)) == pytest.approx(1, abs=0.001)
    assert float(page.sum()) == pytest.approx(40 * 10 * DOTS_PER_MM**2, rel=0.02)


@pytest.mark.parametrize("inner_turns_back", [True, False])
def test_fills_follow_the_non_zero_rule(inner_turns_back):
    inner = polygon([(30, 40), (40, 40), (40, 50), (30, 50)])
    backwards = polygon([(30, 40), (30, 50), (40, 50), (40, 40)])
    outer = rectangle(Box(20, 30, 30, 30))
    page = ink(PathMark(outer + (backwards if inner_turns_back else inner), fill="#000000"))
    assert at(page, 35, 45) == (0 if inner_turns_back else 1)
    assert at(page, 25, 45) == 1


def test_caps_are_round_unless_butt():
    line = polygon([(30, 50), (60, 50)], closed=False)
    for is_butt in (True, False):
        page = ink(PathMark(line, stroke="#000000", width=6, butt_caps=is_butt))
        assert at(page, 31, 50) == 1
        assert at(page, 28, 50) == (0 if is_butt else 1)
        assert at(page, 27.3, 47.3) == 0


def test_dashes_leave_gaps():
    line = polygon([(30, 50), (60, 50)], closed=False)
    page = ink(PathMark(line, stroke="#000000", width=2, dash=(4, 2), butt_caps=True))
    assert coverage(page, Box(30, 49, 30, 2)) == pytest.approx(4 / 6, abs=0.01)


def test_fill_and_stroke_have_their_own_colours():
    page = ink(PathMark(circle(50, 50, 20), fill="#FFFFFF", stroke="#000000", width=4))
    assert at(page, 50, 50) == 0
    assert at(page, 50, 31) == 1


@pytest.mark.parametrize("turn", [0, 30, 90])
def test_a_dot_screen_has_the_grey_of_its_dots(turn):
    """Staggered rows: one dot of area pi r squared on every pitch times pitch."""
    box = rectangle(Box(-36, -36, 72, 72))
    place = translation(100, 100) @ rotation(turn)
    page = ink(Group((PathMark(box, fill=DOT_SCREEN),), transform=place))
    grey = math.pi * DOT_SCREEN.radius**2 / (DOT_SCREEN.pitch_x * DOT_SCREEN.pitch_y)
    assert coverage(page, Box(80, 80, 36, 37.2)) == pytest.approx(grey, rel=0.06)
    assert float(page.max()) > 0.95


def test_dots_grow_with_their_group_and_their_form():
    disc = disc_form()
    small = ink(Group((FormMark(disc, scaling(0.25)),), transform=translation(20, 20)))
    large = ink(Group((FormMark(disc, scaling(0.5)),), transform=translation(20, 20) @ scaling(2)))
    grey = math.pi * DOT_SCREEN.radius**2 / (DOT_SCREEN.pitch_x * DOT_SCREEN.pitch_y)
    assert coverage(large, Box(20 + 50, 20 + 26, 15, 12)) == pytest.approx(grey, rel=0.05)
    assert coverage(small, Box(20 + 12.5, 20 + 6.5, 3.75, 3)) == pytest.approx(grey, rel=0.15)


@pytest.mark.parametrize("scale", [1, 4])
def test_dots_stand_where_the_units_of_their_group_put_them(scale):
    dots = type(DOT_SCREEN)(radius=1, pitch_x=4, pitch_y=4, colour="#000000")
    box = PathMark(rectangle(Box(0, 0, 20, 20)), fill=dots)
    page = ink(Group((box,), transform=translation(50, 50) @ scaling(scale)))
    for x, y, is_dot in [(2, 2, True), (6, 2, True), (4, 6, True), (4, 2, False), (2, 6, False)]:
        assert (at(page, 50 + scale * x, 50 + scale * y) > 0.5) == is_dot


def test_dots_stand_on_their_own_paper():
    yellow = PathMark(rectangle(Box(20, 20, 40, 40)), fill=type(DOT_SCREEN)(0.5, 4, 4, "#000000", "#FFFF00"))
    pdf = paint_pdf(sheet_of(yellow))
    picture = pypdfium2.PdfDocument(pdf)[0].render(scale=DOTS_PER_MM * 25.4 / 72).to_pil()
    colours = {colour for _, colour in picture.crop((210, 210, 590, 590)).getcolors(10000)}
    assert {(255, 255, 0), (0, 0, 0)} <= colours
    assert (255, 255, 255) not in colours


def test_a_clip_cuts_what_lies_outside():
    black = PathMark(rectangle(Box(0, 0, 60, 60)), fill="#000000")
    page = ink(Group((black,), transform=translation(50, 50), clip=circle(30, 30, 10)))
    assert float(page.sum()) == pytest.approx(math.pi * 100 * DOTS_PER_MM**2, rel=0.01)
    assert at(page, 80, 80) == 1


def test_a_colour_ends_with_its_group():
    grey = "#808080"
    inside = Group((PathMark(rectangle(Box(0, 0, 5, 5)), fill=grey),), transform=translation(1, 1))
    first = PathMark(rectangle(Box(20, 20, 10, 10)), fill="#000000")
    last = PathMark(rectangle(Box(40, 20, 10, 10)), fill=grey)
    page = ink(first, inside, last)
    assert at(page, 25, 25) == 1
    assert at(page, 45, 25) == pytest.approx(0.5, abs=0.01)


def test_a_mirrored_form_is_mirrored():
    disc = disc_form()
    plain = ink(FormMark(disc, translation(20, 20) @ scaling(0.5)))
    flipped = ink(FormMark(disc, mirroring(44) @ translation(20, 20) @ scaling(0.5)))
    assert at(plain, 20 + 0.5 * 26, 20 + 0.5 * 26) < 1
    assert np.abs(plain[200:680, 200:680] - flipped[200:680, 200:680][:, ::-1]).mean() < 0.04
    assert np.abs(plain - flipped).max() > 0.5


def test_text_turns_clockwise_about_its_pivot():
    page = ink(text_mark("IIIIIIIIII", "en", x=100, y=100, size=10, rotation=90))
    rows, columns = np.nonzero(page > 0.5)
    assert columns.min() / DOTS_PER_MM >= 100
    assert columns.max() / DOTS_PER_MM < 110
    assert rows.min() / DOTS_PER_MM >= 100
    assert rows.max() / DOTS_PER_MM < 140


def test_a_form_is_painted_once_a_document():
    pikepdf = outside("pikepdf")
    with pikepdf.open(BytesIO(paint_pdf(poster("en", pages=3)))) as opened:
        forms = [
            value
            for value in opened.objects
            if isinstance(value, pikepdf.Stream) and value.get("/Subtype") == "/Form"
        ]
        placed = [
            operands[0]
            for page in opened.pages
            for operands, operator in pikepdf.parse_content_stream(page)
            if str(operator) == "Do"
        ]
    assert len(forms) == 1
    assert len(placed) == 9


def test_drawings_of_the_same_marks_are_painted_once_a_run():
    resources._form_content.cache_clear()
    first = paint_pdf(sheet_of(figure(20, 20, 20, form=disc_form())))
    assert paint_pdf(sheet_of(figure(20, 20, 20, form=disc_form()))) == first
    assert resources._form_content.cache_info()[:2] == (1, 1)


def test_forms_with_other_keys_are_kept_apart():
    first = figure(20, 20, 20, form=disc_form("one"))
    second = figure(60, 20, 20, form=disc_form("two"))
    with outside("pikepdf").open(BytesIO(paint_pdf(sheet_of(first, second)))) as opened:
        assert len(opened.pages[0].Resources.XObject) == 2


def test_a_ruler_of_50_mm_is_50_mm_long():
    """Read by pdfminer, in points of 25.4 / 72 mm."""
    outside("pdfminer")
    from pdfminer.high_level import extract_pages
    from pdfminer.layout import LTCurve

    line = PathMark(polygon([(12.345, 280), (62.345, 280)], closed=False), stroke="#000000", width=0.2)
    moved = Group((line,), transform=translation(3, 1))
    (layout,) = extract_pages(BytesIO(paint_pdf(sheet_of(moved))))
    (found,) = [item for item in layout if isinstance(item, LTCurve)]
    assert (found.x1 - found.x0) * 25.4 / 72 == pytest.approx(50, abs=0.05)
