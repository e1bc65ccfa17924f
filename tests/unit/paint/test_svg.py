"""The SVG, read as XML and seen through a browser."""

import re
import subprocess
import xml.etree.ElementTree as ET
from io import BytesIO

import numpy as np
import pypdfium2
import pytest
from outside_readers import outside
from PIL import Image
from sheet_samples import LEFT_TO_RIGHT, SENTENCES, figure, poster, sheet_of, text_mark

from signage.drawing.marks import Dots, Group, PathMark, Structure
from signage.ground.geometry import Box, circle, polygon, rectangle, translation
from signage.paint.pdf.document import paint_pdf
from signage.paint.svg import paint_svg

SVG = "{http://www.w3.org/2000/svg}"


def parsed(sheet, title="Title", language="en"):
    return ET.fromstring(paint_svg(sheet.pages[0], title, language))  # noqa: S314  our own text


def test_one_unit_is_one_millimetre():
    root = parsed(poster())
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("210mm", "297mm", "0 0 210 297")


def test_it_tells_its_title_and_its_language():
    root = parsed(poster(), 'Put on <1> & "2"', "pt-BR")
    title = root.find(f"{SVG}title")
    assert title.text == 'Put on <1> & "2"'
    assert root.get("aria-labelledby") == title.get("id")
    assert root.get("lang") == "pt-BR"


def test_texts_and_figures_are_labelled_for_who_cannot_see_them():
    root = parsed(sheet_of(text_mark(SENTENCES["ar"], "ar"), figure(20, 60, 30, 'A "disc" & a bar')))
    labels = [(item.get("role"), item.get("aria-label"), item.get("lang")) for item in root.iter(f"{SVG}g")]
    assert ("img", SENTENCES["ar"], "ar") in labels
    assert ("img", 'A "disc" & a bar', None) in labels


def test_artefacts_are_hidden_from_readers():
    root = parsed(sheet_of(Group((text_mark("page 1", "en"),), structure=Structure.ARTEFACT)))
    hidden = [item for item in root.iter(f"{SVG}g") if item.get("aria-hidden") == "true"]
    assert len(hidden) == 1


def test_references_lead_to_definitions():
    text = paint_svg(poster("hi").pages[0], "Title", "hi")
    names = re.findall(r'\bid="([^"]+)"', text)
    assert len(names) == len(set(names))
    asked = set(re.findall(r'href="#([^"]+)"', text)) | set(re.findall(r"url\(#([^)]+)\)", text))
    assert asked <= set(names)
    assert "http" not in text.replace("http://www.w3.org/2000/svg", "")


def test_a_form_is_drawn_once_and_placed_often():
    root = parsed(poster())
    assert len(list(root.iter(f"{SVG}symbol"))) == 1
    (name,) = [symbol.get("id") for symbol in root.iter(f"{SVG}symbol")]
    assert len([use for use in root.iter(f"{SVG}use") if use.get("href") == f"#{name}"]) == 3


def test_names_come_from_content_so_that_pictures_can_share_a_page():
    def names(*marks):
        return set(re.findall(r'\bid="([^"]+)"', paint_svg(sheet_of(*marks).pages[0], "T", "en")))

    dots = PathMark(circle(50, 50, 20), fill=Dots(1, 4, 3, "#000000"))
    other = PathMark(circle(50, 50, 20), fill=Dots(1.5, 4, 3, "#000000"))
    assert names(dots) == names(dots)
    assert len(names(dots) & names(other)) == 1  # the title


def test_coordinates_have_three_decimals_at_most():
    marks = PathMark(polygon([(1 / 3, 2 / 3), (10.00004, 5)]), fill="#000000")
    data = parsed(sheet_of(marks)).find(f"{SVG}path").get("d")
    assert data == "M0.333 0.667L10 5Z"


def test_svg_and_pdf_paint_the_same_shapes():
    """Fills and strokes of the page in the PDF against paths in the SVG, text and forms left out."""
    pikepdf = outside("pikepdf")
    marks = [
        PathMark(rectangle(Box(10, 10, 20, 20)), fill="#000000"),
        PathMark(circle(60, 60, 10), fill="#C00000", stroke="#000000", width=1),
        PathMark(polygon([(10, 90), (60, 90)], closed=False), stroke="#000000", width=1, dash=(2, 1)),
        PathMark(circle(60, 120, 10), fill=Dots(1, 4, 3, "#000000")),
        PathMark(circle(60, 150, 10)),
        Group((PathMark(circle(5, 5, 5), fill="#00C000"),), transform=translation(100, 100)),
    ]
    with pikepdf.open(BytesIO(paint_pdf(sheet_of(*marks)))) as opened:
        painted = [
            str(op) for _, op in pikepdf.parse_content_stream(opened.pages[0]) if str(op) in {"f", "S", "B"}
        ]
    assert len(painted) == len(list(parsed(sheet_of(*marks)).iter(f"{SVG}path"))) == 6


def grown(ink):
    """The ink with one dot more all round."""
    padded = np.pad(ink, 1)
    height, width = ink.shape
    return np.any([padded[y : y + height, x : x + width] for y in range(3) for x in range(3)], axis=0)


def test_a_browser_and_pdfium_show_the_same_page(tmp_path):
    """SVG glyphs are drawn one by one, those of the PDF as composites: both must give one picture."""
    browser = outside("chromium")
    lines = [
        text_mark(SENTENCES[lang], lang, 15, 20 + 14 * i, 5)
        for i, lang in enumerate([*LEFT_TO_RIGHT, "ar", "he"])
    ]
    sheet = sheet_of(*lines, *poster().pages[0].marks[1:4], figure(20, 200, 60))
    source, target = tmp_path / "page.svg", tmp_path / "page.png"
    source.write_text(paint_svg(sheet.pages[0], "Title", "en"), encoding="utf-8")
    subprocess.run(
        [
            browser, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars",
            "--force-device-scale-factor=2", "--window-size=800,1130",
            f"--screenshot={target}", source.as_uri(),
        ],
        check=True, capture_output=True, timeout=60,
    )  # fmt: skip
    seen = np.asarray(Image.open(target).convert("L"))[:2240, :1580] < 128
    page = pypdfium2.PdfDocument(paint_pdf(sheet))[0].render(scale=2 * 96 / 72, grayscale=True).to_numpy()
    painted = page.reshape(page.shape[:2])[:2240, :1580] < 128
    strange = (seen & ~grown(painted)) | (painted & ~grown(seen))
    assert seen.sum() > 100_000
    assert strange.sum() / seen.sum() < 0.002


@pytest.mark.parametrize("language", ["en", "ar", "ta"])
def test_the_same_page_gives_the_same_text(language):
    page = poster(language).pages[0]
    assert paint_svg(page, "Title", language) == paint_svg(page, "Title", language)
