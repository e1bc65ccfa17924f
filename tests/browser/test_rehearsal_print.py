"""The report of a rehearsal in a real browser: printed on A3, on a phone, and as axe judges it."""

from dataclasses import replace
from datetime import date
from io import BytesIO

import pypdfium2 as pdfium
import pypdfium2.raw as pdfium_c
import pytest
from outside_readers import outside
from rehearsal_edits import demo_library, layered_protection, new_step, with_step_after, without_steps

from signage.pages.rehearsal.page import rehearsal_page
from signage.rehearse.report import report_on
from signage.rehearse.variations.study import study_protocol

A3_ON_ITS_SIDE = (420 / 25.4 * 72, 297 / 25.4 * 72)
"""ISO 216, in points."""

SMALLEST = 5.5
"""Points; common practice for reference tables read at arm's length, no source."""


def html(protocol):
    library = demo_library()
    report = report_on(library, protocol, study_protocol(library, protocol), date(2026, 11, 26))
    return rehearsal_page(library, report)


def sixty_steps():
    extra = [replace(new_step(f"extra-{n}", "say"), rationale="x", text=f"Say number {n}") for n in range(18)]
    return with_step_after(layered_protection(), "stand-on-mat", *extra)


PRINTED = {
    **demo_library().protocols,
    "sixty steps": sixty_steps(),
    "with findings": without_steps(layered_protection(), "rub-after-outer", "boot-covers-off"),
}


def text_and_sizes(printed):
    """All text of a PDF without spaces, and the sizes of its letters in points, by PDFium.

    PDFium writes U+FFFE for a hyphen at the end of a line, which falls elsewhere with other fonts.
    """
    text, sizes = "", set()
    with pdfium.PdfDocument(printed) as document:
        for page in document:
            letters = page.get_textpage()
            text += letters.get_text_range()
            for index in range(letters.count_chars()):
                if not pdfium_c.FPDFText_IsGenerated(letters, index):
                    matrix = pdfium_c.FS_MATRIX()
                    pdfium_c.FPDFText_GetMatrix(letters, index, matrix)
                    sizes.add(pdfium_c.FPDFText_GetFontSize(letters, index) * abs(matrix.d))
    return "".join(text.split()).replace("\ufffe", "-"), sizes


@pytest.fixture
def sheet(browser):
    page = browser.new_page()
    asked = []
    page.on("request", lambda request: asked.append(request.url))

    def print_page(text):
        page.set_content(text)
        return page.pdf(prefer_css_page_size=True)

    yield print_page
    assert [url for url in asked if not url.startswith(("about:", "data:"))] == []
    page.close()


@pytest.mark.parametrize("name", PRINTED)
def test_the_report_is_one_sheet_of_a3_that_can_be_read(sheet, name):
    pikepdf = outside("pikepdf")
    printed = sheet(html(PRINTED[name]))
    with pikepdf.open(BytesIO(printed)) as document:
        assert len(document.pages) == 1
        size = [float(value) for value in document.pages[0].mediabox]
        assert (size[2], size[3]) == pytest.approx(A3_ON_ITS_SIDE, abs=1.5)
    assert len(printed) < 1_500_000  # patterns are lines, not pictures

    text, sizes = text_and_sizes(printed)
    assert min(sizes) >= SMALLEST
    assert all(step.text.split("{")[0].replace(" ", "") in text for step in PRINTED[name].steps)


def test_a_very_long_protocol_flows_over_sheets_and_loses_no_step(sheet):
    pikepdf = outside("pikepdf")
    extra = [
        replace(new_step(f"extra-{n}", "say"), rationale="x", text=f"Say number {n}.") for n in range(60)
    ]
    printed = sheet(html(with_step_after(layered_protection(), "zip-close", *extra)))
    with pikepdf.open(BytesIO(printed)) as document:
        assert len(document.pages) > 1
    text, sizes = text_and_sizes(printed)
    assert min(sizes) >= SMALLEST
    assert all(f"Saynumber{n}." in text for n in range(60))


def test_a_narrow_phone_needs_no_sideways_scrolling(browser):
    page = browser.new_page(viewport={"width": 320, "height": 700})
    page.set_content(html(PRINTED["with findings"]))
    assert page.evaluate("document.documentElement.scrollWidth") == 320
    page.close()


def test_contaminated_is_darkest_and_clean_is_blank_without_colour(browser):
    """The swatches of the key as grey values: what a photocopy and a colour-blind reader see."""
    pictures = outside("PIL.Image")
    page = browser.new_page(device_scale_factor=4)
    page.set_content(html(layered_protection()))
    swatches = page.locator(".key .swatch")
    shades = []
    for index in range(3):
        grey = pictures.open(BytesIO(swatches.nth(index).screenshot())).convert("L")
        inner = grey.crop((12, 12, grey.width - 12, grey.height - 12))
        values = inner.get_flattened_data() if hasattr(inner, "get_flattened_data") else inner.getdata()
        shades.append(sum(values) / len(list(values)))
    clean, reduced, contaminated = shades
    assert clean > 254
    assert clean - reduced > 20
    assert reduced - contaminated > 60
    page.close()


def test_axe_finds_nothing_wrong(browser, violations):
    page = browser.new_page()
    page.set_content(html(PRINTED["with findings"]))
    assert violations(page) == []
    page.close()
