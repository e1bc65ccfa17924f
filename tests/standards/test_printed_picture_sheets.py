"""The sheets about pictures, read by other people's readers."""

import io
import re

import demo
import pytest
from outside_readers import outside
from picture_sheet_samples import picture_sheet
from print_checks import assert_pdf_ua_1, squeezed

from signage.drawing.marks import groups_of
from signage.drawing.roles import GroupRole
from signage.paint.pdf.document import paint_pdf
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES


@pytest.mark.parametrize(("kind", "tag"), [("pictures", "hi"), ("picture-trial", "ar")])
def test_sheets_about_pictures_are_pdf_ua_1(kind, tag, tmp_path):
    assert_pdf_ua_1(paint_pdf(picture_sheet(kind, tag)), tmp_path)


def test_the_printed_form_names_no_picture_and_says_none():
    # pages that readers get, by pypdf; what is spoken of all figures, by pikepdf
    pypdf, pikepdf = outside("pypdf"), outside("pikepdf")
    sheet = picture_sheet("picture-trial")
    data = paint_pdf(sheet)
    reader = pypdf.PdfReader(io.BytesIO(data))
    context = demo.project().picture_context("layered-protection", "en")
    for index, page in enumerate(sheet.pages):
        if not groups_of(page, GroupRole.QUESTION):
            continue
        text = reader.pages[index].extract_text()
        for name in context.pictures:
            assert name not in text
            assert squeezed(PICTURES.scene(name).alternative) not in squeezed(text)
    with pikepdf.open(io.BytesIO(data)) as pdf:
        objects = [each for each in pdf.objects if isinstance(each, pikepdf.Dictionary)]
        spoken = {str(each.Alt) for each in objects if "/Alt" in each}
    assert spoken
    assert all(re.fullmatch(r"Picture \d+", squeezed_marks(words)) for words in spoken)


def squeezed_marks(text):
    return re.sub("[\u2066-\u2069]", "", text).replace("\xa0", " ")


def test_the_names_and_sentences_of_the_sheet_of_all_pictures_can_be_searched():
    pypdf = outside("pypdf")
    sheet = picture_sheet("pictures")
    reader = pypdf.PdfReader(io.BytesIO(paint_pdf(sheet)))
    text = squeezed("".join(page.extract_text() for page in reader.pages))
    for name in demo.project().picture_context("layered-protection", "en").pictures:
        assert squeezed(name) in text
        assert squeezed(PICTURES.scene(name).alternative) in text
