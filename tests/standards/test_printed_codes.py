"""Every code of every kind of sheet is decoded from the rendered page by zxing-cpp."""

import io

import demo
import pytest
from conftest import outside

from signage.drawing.marks import groups_of
from signage.paint.pdf.document import paint_pdf
from signage.paint.png import paint_png

KINDS = [
    ("poster", "put-on", "A3", "layered-protection"),
    ("poster", "take-off", "A4", "layered-protection"),
    ("poster", "rub", "A4", "clean-hands"),
    ("step-cards", "", "A4", "layered-protection"),
    ("pocket-checklist", "", "A4", "layered-protection"),
]


@pytest.mark.parametrize("tag", ["en", "ar", "hi", "am"])
@pytest.mark.parametrize(("kind", "phase", "paper", "protocol"), KINDS)
def test_codes_read_at_150_dpi_lead_where_they_say(tag, kind, phase, paper, protocol):
    from PIL import Image

    zxing = outside("zxingcpp")
    sheet = demo.sheet(kind, tag, phase, paper, protocol)
    images = paint_png(paint_pdf(sheet), 150)
    for page, image in list(zip(sheet.pages, images, strict=True))[:3]:
        wanted = sorted(group.name for group, _ in groups_of(page, "qr"))
        found = sorted(code.text for code in zxing.read_barcodes(Image.open(io.BytesIO(image)).convert("L")))
        assert found == wanted
        assert wanted
        for payload in wanted:
            assert payload.startswith(f"http://lantern-bay.internal:8080/{tag}/p")
            assert payload.endswith(f"/?r={sheet.revision}")
