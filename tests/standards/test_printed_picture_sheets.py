"""The sheets about pictures, read by other people's readers."""

import io
import re

import demo
import pytest
from conftest import outside
from picture_sheet_samples import picture_sheet

from signage.drawing.marks import groups_of
from signage.paint.pdf.document import paint_pdf
from signage.pictograms.scenes import scene_of


@pytest.mark.parametrize("tag", ["en", "ar", "hi", "am"])
@pytest.mark.parametrize("kind", ["pictures", "picture-trial"])
def test_sheets_about_pictures_are_pdf_ua_1(kind, tag, tmp_path):
    # ISO 14289-1 by the checker page-validation
    page = outside("page")
    path = tmp_path / "sheet.pdf"
    path.write_bytes(paint_pdf(picture_sheet(kind, tag)))
    result = page.validate_pdf(str(path), profile=page.ValidationProfile.PDF_UA_1)
    assert result.is_compliant, [(failure.rule_id, failure.message) for failure in result.failures[:5]]


def squeezed(text):
    return re.sub(r"[\s\u200b-\u200f\u2066-\u2069\u00ad\xa0\u202f]+", "", text)


def test_the_printed_form_names_no_picture_and_says_none():
    # pages that readers get, by pypdf; what is spoken of all figures, by pikepdf
    pypdf, pikepdf = outside("pypdf"), outside("pikepdf")
    sheet = picture_sheet("picture-trial")
    data = paint_pdf(sheet)
    reader = pypdf.PdfReader(io.BytesIO(data))
    context = demo.project().picture_context("layered-protection", "en")
    for index, page in enumerate(sheet.pages):
        if not groups_of(page, "question"):
            continue
        text = reader.pages[index].extract_text()
        for name in context.pictures:
            assert name not in text
            assert squeezed(scene_of(name).alternative) not in squeezed(text)
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
        assert squeezed(scene_of(name).alternative) in text
