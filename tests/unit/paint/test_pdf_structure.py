"""The structure tree as pdfium and pikepdf see it."""

import ctypes
from io import BytesIO

import pypdfium2
import pytest
from outside_readers import outside
from pypdfium2 import raw
from sheet_samples import RIGHT_TO_LEFT, SENTENCES, figure, poster, sheet_of, text_mark

from signage.drawing.marks import Group, PathMark, Structure
from signage.ground.geometry import Box, rectangle, translation
from signage.paint.pdf.document import paint_pdf


def pdfium_string(read, element):
    length = read(element, None, 0)
    if not length:
        return None
    buffer = ctypes.create_string_buffer(length)
    read(element, buffer, length)
    return buffer.raw.decode("utf-16-le").rstrip("\0")


def pdfium_elements(pdf):
    """Type, actual text, alternative and language of all elements of the first page, in order."""
    page = pypdfium2.PdfDocument(pdf)[0]
    tree = raw.FPDF_StructTree_GetForPage(page)
    found = []

    def visit(element):
        readers = (
            raw.FPDF_StructElement_GetType,
            raw.FPDF_StructElement_GetActualText,
            raw.FPDF_StructElement_GetAltText,
            raw.FPDF_StructElement_GetLang,
        )
        found.append(tuple(pdfium_string(read, element) for read in readers))
        for index in range(raw.FPDF_StructElement_CountChildren(element)):
            child = raw.FPDF_StructElement_GetChildAtIndex(element, index)
            if child:
                visit(child)

    for index in range(raw.FPDF_StructTree_CountChildren(tree)):
        visit(raw.FPDF_StructTree_GetChildAtIndex(tree, index))
    raw.FPDF_StructTree_Close(tree)
    return found


def kinds(sheet):
    return [kind for kind, *_ in pdfium_elements(paint_pdf(sheet))]


def texts_by_kind(sheet, kind):
    return [actual for found, actual, *_ in pdfium_elements(paint_pdf(sheet)) if found == kind]


@pytest.mark.parametrize("language", RIGHT_TO_LEFT)
def test_right_to_left_paragraphs_carry_their_words_in_reading_order(language):
    text = f"{SENTENCES[language]} \u2068P1\u2069 (20)"
    assert texts_by_kind(sheet_of(text_mark(text, language), language=language), "P") == [text]


def test_left_to_right_paragraphs_speak_from_the_page():
    pdf = paint_pdf(sheet_of(text_mark(SENTENCES["hi"], "hi"), language="hi"))
    assert b"ActualText" not in pdf


def test_actual_text_never_stands_in_a_content_stream():
    with outside("pikepdf").open(BytesIO(paint_pdf(poster("ar")))) as opened:
        assert b"ActualText" not in opened.pages[0].Contents.read_bytes()


def test_a_list_has_labels_and_bodies_with_paragraphs_of_their_own():
    found = kinds(poster())
    assert found[:9] == ["Document", "H1", "L", "LI", "Lbl", "LBody", "Figure", "P", "P"]
    assert found[-1] == "P"


def test_bare_texts_and_figures_of_a_list_get_the_body_that_the_standard_asks_for():
    """ISO 32000-1, table 336: L holds LI, and LI holds Lbl and LBody."""
    label = Group((text_mark("1", "en"),), structure=Structure.LABEL)
    row = Group((label, text_mark("Rub", "en", y=50), figure(60, 50, 10)), structure=Structure.ITEM)
    bare = text_mark("Corridor", "en", y=70)
    found = kinds(sheet_of(Group((row, bare), structure=Structure.LIST)))
    assert found == ["Document", "L", "LI", "Lbl", "LBody", "P", "Figure", "LI", "LBody", "P"]


def test_a_figure_tells_its_alternative_and_its_place():
    pdf = paint_pdf(sheet_of(Group((figure(30, 40, 20, "Two hands"),), transform=translation(10, 5))))
    assert ("Figure", None, "Two hands", None) in pdfium_elements(pdf)
    with outside("pikepdf").open(BytesIO(pdf)) as opened:
        (figure_element,) = [
            value
            for value in opened.objects
            if isinstance(value, dict | outside("pikepdf").Dictionary) and value.get("/S") == "/Figure"
        ]
        box = [float(edge) * 25.4 / 72 for edge in figure_element.A.BBox]
        assert box == pytest.approx([40, 297 - 65, 60, 297 - 45], abs=0.01)


def test_a_language_is_named_where_it_changes():
    sheet = sheet_of(text_mark(SENTENCES["en"], "en"), text_mark(SENTENCES["hi"], "hi", y=50))
    assert pdfium_elements(paint_pdf(sheet))[1:] == [("P", None, None, None), ("P", None, None, "hi")]


def test_texts_of_two_languages_in_one_paragraph_keep_theirs():
    both = Group(
        (text_mark(SENTENCES["en"], "en"), text_mark(SENTENCES["ar"], "ar", y=50)),
        structure=Structure.PARAGRAPH,
    )
    assert pdfium_elements(paint_pdf(sheet_of(both)))[1:] == [
        ("P", None, None, None),
        ("Span", SENTENCES["ar"], None, "ar"),
    ]


def test_what_is_an_artefact_is_not_in_the_tree():
    unread = Group((text_mark("page 1", "en"), figure(10, 40, 20)), structure=Structure.ARTEFACT)
    assert kinds(sheet_of(text_mark("Read", "en", y=60), unread)) == ["Document", "P"]


def test_lines_outside_figures_are_artefacts():
    pikepdf = outside("pikepdf")
    bar = PathMark(rectangle(Box(10, 10, 50, 1)), fill="#000000")
    with pikepdf.open(BytesIO(paint_pdf(sheet_of(bar, text_mark("Text", "en"))))) as opened:
        operators = [
            (str(operator), str(operands[0]) if operands else "")
            for operands, operator in pikepdf.parse_content_stream(opened.pages[0])
            if str(operator) in {"BMC", "BDC", "EMC", "f"}
        ]
    assert operators == [("BMC", "/Artifact"), ("f", ""), ("EMC", ""), ("BDC", "/P"), ("EMC", "")]


def test_groups_without_content_leave_no_element():
    empty = Group((Group((), structure=Structure.BODY),), structure=Structure.SECTION)
    assert kinds(sheet_of(empty, text_mark("Text", "en"))) == ["Document", "P"]


def test_a_figure_is_one_piece_whatever_stands_in_it():
    inner = Group((text_mark("20", "en"),), structure=Structure.PARAGRAPH, transform=translation(1, 1))
    drawing = Group((inner,), structure=Structure.FIGURE, alternative="Number", box=Box(0, 0, 10, 10))
    assert kinds(sheet_of(drawing)) == ["Document", "Figure"]
