"""Pictures of pages, read by Pillow."""

from io import BytesIO

import pytest
from PIL import Image
from sheet_samples import poster, sheet_of

from signage.drawing.marks import PathMark
from signage.ground.geometry import Box, rectangle
from signage.paint.pdf.document import paint_pdf
from signage.paint.png import paint_png


def test_every_page_becomes_a_picture_of_its_size():
    pictures = [Image.open(BytesIO(data)) for data in paint_png(paint_pdf(poster("en", pages=2)), 100)]
    assert [picture.format for picture in pictures] == ["PNG", "PNG"]
    width, height = pictures[0].size
    assert width == pytest.approx(210 / 25.4 * 100, abs=1)
    assert height == pytest.approx(297 / 25.4 * 100, abs=1)


def test_the_picture_tells_its_resolution_and_no_date():
    (data,) = paint_png(paint_pdf(poster()), 150)
    picture = Image.open(BytesIO(data))
    assert picture.info["dpi"] == pytest.approx((150, 150), abs=0.1)
    assert b"tIME" not in data
    assert set(picture.info) == {"dpi"}


def test_colours_are_those_of_the_sheet():
    blue = PathMark(rectangle(Box(0, 0, 210, 297)), fill="#0A4A7E")
    picture = Image.open(BytesIO(paint_png(paint_pdf(sheet_of(blue)), 40)[0])).convert("RGB")
    assert picture.getpixel((100, 200)) == (0x0A, 0x4A, 0x7E)
    assert (
        Image.open(BytesIO(paint_png(paint_pdf(sheet_of()), 40)[0])).convert("RGB").getpixel((5, 5))
        == (255,) * 3
    )
