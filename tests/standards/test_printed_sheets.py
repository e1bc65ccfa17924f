"""Whole sheets of the demo, read by other people's readers."""

import io
import re

import demo
import pytest
from conftest import outside

from signage.paint.pdf.document import paint_pdf

SHEETS = [
    ("poster", "put-on", "A3"),
    ("poster", "take-off", "A3-landscape"),
    ("poster", "take-off", "A4"),
    ("step-cards", "", "A4"),
    ("pocket-checklist", "", "A4"),
]
EVERY = [(tag, *sheet) for tag in demo.LANGUAGES for sheet in SHEETS]


def printed(tag, kind, phase, paper, protocol="layered-protection"):
    return paint_pdf(demo.sheet(kind, tag, phase, paper, protocol))


@pytest.mark.parametrize(("tag", "kind", "phase", "paper"), EVERY)
def test_sheets_are_pdf_ua_1(tag, kind, phase, paper, tmp_path):
    # ISO 14289-1 by the checker page-validation
    page = outside("page")
    path = tmp_path / "sheet.pdf"
    path.write_bytes(printed(tag, kind, phase, paper))
    result = page.validate_pdf(str(path), profile=page.ValidationProfile.PDF_UA_1)
    assert result.is_compliant, [(failure.rule_id, failure.message) for failure in result.failures[:5]]


@pytest.mark.parametrize("tag", ["en", "ar"])
@pytest.mark.parametrize(("phase", "paper"), [("rub", "A4"), ("wash", "A3")])
def test_hand_posters_are_pdf_ua_1(tag, phase, paper, tmp_path):
    page = outside("page")
    path = tmp_path / "sheet.pdf"
    path.write_bytes(printed(tag, "poster", phase, paper, "clean-hands"))
    assert page.validate_pdf(str(path), profile=page.ValidationProfile.PDF_UA_1).is_compliant


@pytest.mark.parametrize(("tag", "kind", "phase", "paper"), EVERY)
def test_language_direction_boxes_and_order_of_tabs(tag, kind, phase, paper):
    # what the checker above does not look at; ISO 32000-1, 14.8 and table 30
    pikepdf = outside("pikepdf")
    with pikepdf.open(io.BytesIO(printed(tag, kind, phase, paper))) as pdf:
        assert str(pdf.Root.Lang) == tag
        assert pdf.Root.ViewerPreferences.DisplayDocTitle
        assert str(pdf.Root.ViewerPreferences.get("/Direction", "/L2R")) == (
            "/R2L" if tag == "ar" else "/L2R"
        )
        for number, page in enumerate(pdf.pages):
            assert page.StructParents == number
            assert page.Tabs == "/S"
            assert [float(v) for v in page.TrimBox] == [float(v) for v in page.MediaBox]


def squeezed(text):
    return re.sub(r"[\s\u200b-\u200f\u2066-\u2069\u00ad\xa0\u202f]+", "", text)


@pytest.mark.parametrize("tag", ["en", "fr", "am", "hi"])
@pytest.mark.parametrize("phase", ["put-on", "take-off"])
def test_every_headline_is_found_in_the_text_of_the_page(tag, phase):
    # step blocks found in the printed text = steps of the protocol, by pypdf
    pypdf = outside("pypdf")
    reader = pypdf.PdfReader(io.BytesIO(printed(tag, "poster", phase, "A3")))
    text = squeezed("".join(page.extract_text() for page in reader.pages))
    context = demo.context(tag)
    steps = next(p for p in context.protocol.phases if p.id == phase).steps
    for step in steps:
        assert squeezed(context.wording.step_text(context.protocol, step, "text")) in text


def structure_elements(element, pikepdf):
    yield element
    kids = element.get("/K", [])
    for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
            yield from structure_elements(kid, pikepdf)


@pytest.mark.parametrize("tag", demo.LANGUAGES)
def test_a_screen_reader_meets_the_steps_in_order(tag):
    # reading order is the order of the structure tree (ISO 32000-1, 14.8.2.3); pictures speak their language
    pikepdf = outside("pikepdf")
    sheet = demo.sheet("poster", tag, "take-off", "A3")
    context = demo.context(tag)
    steps = next(p for p in context.protocol.phases if p.id == "take-off").steps
    with pikepdf.open(io.BytesIO(paint_pdf(sheet))) as pdf:
        document = pdf.Root.StructTreeRoot.K[0]
        spoken = [
            str(element.Alt)
            for element in structure_elements(document, pikepdf)
            if element.get("/S") == "/Figure" and "/Alt" in element
        ]
    pictured = [context.picture_words(step) for step in steps]
    positions = []
    start = 0
    for words in pictured:
        if words in spoken[start:]:
            start = spoken.index(words, start)
            positions.append(start)
    assert len(positions) >= 12  # every big step; the signs of strips repeat the words beside them
    assert positions == sorted(positions)


def test_built_twice_the_bytes_are_the_same():
    for arguments in EVERY[:3]:
        assert printed(*arguments) == printed(*arguments)
