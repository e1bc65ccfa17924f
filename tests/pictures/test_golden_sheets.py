"""A few small pictures of sheets that somebody has looked at; a sheet that changes must be looked at again.

To renew one, delete it, run this test and open the new picture before it is committed.
"""

import io
from pathlib import Path

import demo
import pytest
from PIL import Image, ImageChops, ImageStat

from signage.ground.files import write_whole
from signage.paint.pdf.document import paint_pdf
from signage.paint.png import paint_png
from signage.produce.requests import SheetRequest, compose_request
from signage.project import Project

FOLDER = Path(__file__).parent / "golden"
DOTS_PER_INCH = 36
BLOCK = 12
"""Side in pixels of the squares that are compared: 8.5 mm on paper."""

PROTOCOL = "layered-protection"
SHEETS = {
    "poster-take-off-en-a3": SheetRequest(PROTOCOL, "en", "poster", "take-off", "A3"),
    "poster-put-on-ar-a3": SheetRequest(PROTOCOL, "ar", "poster", "put-on", "A3"),
    "pocket-hi-a4": SheetRequest(PROTOCOL, "hi", "pocket-checklist", "", "A4"),
    "cards-am-a4": SheetRequest(PROTOCOL, "am", "step-cards", "", "A4"),
}


@pytest.mark.parametrize("name", SHEETS)
def test_a_sheet_looks_as_it_did_when_somebody_looked_at_it(name, monkeypatch):
    monkeypatch.setattr(Project, "revision", lambda *_: "2345-6789")  # and with it the QR codes
    first = paint_png(paint_pdf(compose_request(demo.project(), SHEETS[name])), DOTS_PER_INCH)[0]
    golden = FOLDER / f"{name}.png"
    if not golden.exists():
        write_whole(golden, first)
        pytest.fail(f"{golden.name} was missing and has been made: open it, and commit it if it is right")
    now, then = (Image.open(io.BytesIO(data)).convert("L") for data in (first, golden.read_bytes()))
    assert now.size == then.size
    difference = ImageChops.difference(now, then)
    worst = max(
        ImageStat.Stat(difference.crop((x, y, x + BLOCK, y + BLOCK))).mean[0]
        for y in range(0, now.height, BLOCK)
        for x in range(0, now.width, BLOCK)
    )
    assert worst < 16, f"{name} differs by {worst:.0f} of 255 in one square of {BLOCK} pixels"
