"""Codes are read back from painted pages by an independent reader, zxing-cpp."""

import random

import pytest
from outside_readers import outside

from signage.compose import qr
from signage.drawing.marks import Page, PathMark, Sheet
from signage.ground.geometry import Box, rectangle
from signage.paint.pdf.document import paint_pdf
from signage.paint.png import paint_png

PAYLOAD = "http://lantern-bay.internal:8080/ar/p1/rub-after-coverall/?r=K7M2"


@pytest.fixture(scope="module")
def image():
    """A card-sized page with a code at its floor size, at 150 dpi."""
    import io

    from PIL import Image

    side = qr.smallest_side_mm(PAYLOAD)
    box = Box(20, 20, side, side)
    marks = (PathMark(rectangle(box), "#FFFFFF"), PathMark(qr.qr_path(PAYLOAD, box), "#14202C"))
    page = Page(105, 148, marks, 7)
    pdf = paint_pdf(Sheet("card", "p", "en", "t", "A6", "K7M2", False, (page,), "stem"))
    return Image.open(io.BytesIO(paint_png(pdf, 150)[0])).convert("L")


def decoded(image):
    zxing = outside("zxingcpp")
    return [code.text for code in zxing.read_barcodes(image)]


def test_read_at_150_dpi(image):
    assert decoded(image) == [PAYLOAD]


def test_read_when_blurred(image):
    from PIL import ImageFilter

    assert decoded(image.filter(ImageFilter.GaussianBlur(1.0))) == [PAYLOAD]


def test_read_with_a_tenth_of_its_area_wiped_off(image):
    from PIL import ImageDraw

    damaged = image.copy()
    draw = ImageDraw.Draw(damaged)
    scale = 150 / 25.4
    side = qr.smallest_side_mm(PAYLOAD)
    module = qr.module_mm(PAYLOAD, side)
    inner = side - 8 * module
    chance = random.Random(7)
    patch = inner * (0.10 / 10) ** 0.5
    for _ in range(10):
        # error correction repairs data, not the three finder patterns: damage falls on the lower right half
        x = 20 + 4 * module + inner * 0.35 + chance.random() * (inner * 0.6 - patch)
        y = 20 + 4 * module + inner * 0.35 + chance.random() * (inner * 0.6 - patch)
        draw.rectangle([x * scale, y * scale, (x + patch) * scale, (y + patch) * scale], fill=255)
    assert decoded(damaged) == [PAYLOAD]
