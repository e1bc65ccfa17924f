"""Text on painted pages is found again by readers that have nothing in common with the painter."""

import subprocess
from io import BytesIO

import pypdfium2
import pytest
from outside_readers import outside
from sheet_samples import LEFT_TO_RIGHT, RIGHT_TO_LEFT, SENTENCES, sheet_of, text_mark

from signage.paint.pdf.document import paint_pdf


def pdfium_text(pdf, _folder):
    return pypdfium2.PdfDocument(pdf)[0].get_textpage().get_text_range()


def pypdf_text(pdf, _folder):
    return outside("pypdf").PdfReader(BytesIO(pdf)).pages[0].extract_text()


def pdfminer_text(pdf, _folder):
    outside("pdfminer")
    from pdfminer.high_level import extract_text

    return extract_text(BytesIO(pdf))


def poppler_text(pdf, folder):
    programme = outside("pdftotext")
    path = folder / "sheet.pdf"
    path.write_bytes(pdf)
    run = subprocess.run([programme, "-enc", "UTF-8", path, "-"], check=True, capture_output=True)
    return run.stdout.decode()


READERS = [pdfium_text, pypdf_text, pdfminer_text, poppler_text]


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("language", LEFT_TO_RIGHT)
def test_a_line_is_read_exactly(language, reader, tmp_path):
    sentence = SENTENCES[language]
    pdf = paint_pdf(sheet_of(text_mark(sentence, language, size=4), language=language))
    assert reader(pdf, tmp_path).strip() == sentence


@pytest.mark.parametrize("reader", READERS)
def test_a_line_of_chinese_is_read_exactly(reader, tmp_path):
    outside("justmytype_intl_cjk")
    pdf = paint_pdf(sheet_of(text_mark(SENTENCES["zh"], "zh"), language="zh"))
    assert reader(pdf, tmp_path).strip() == SENTENCES["zh"]


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("language", LEFT_TO_RIGHT)
def test_words_stay_apart_at_line_ends(language, reader, tmp_path):
    text = " ".join([SENTENCES[language]] * 3)
    mark = text_mark(text, language, width=60)
    assert len(mark.lines) > 2
    words = reader(paint_pdf(sheet_of(mark, language=language)), tmp_path)
    if language in {"km", "my", "th"}:  # written without blanks: a reader may put one at a line end
        assert "".join(words.split()) == "".join(text.split())
    else:
        assert words.split() == text.split()


@pytest.mark.parametrize("language", RIGHT_TO_LEFT)
def test_words_of_right_to_left_lines_are_found(language, tmp_path):
    pdf = paint_pdf(sheet_of(text_mark(SENTENCES[language], language), language=language))
    found = pdfium_text(pdf, tmp_path)
    words = [word.strip(".,،۔") for word in SENTENCES[language].split()]
    assert [word for word in words if word not in found] == []


@pytest.mark.parametrize("reader", READERS)
def test_wide_conjuncts_do_not_fall_apart_into_words(reader, tmp_path):
    """The Bengali font widens some conjuncts by a fifth of an em in GPOS, which looks like a blank."""
    text = "রক্তের মুগ্ধতা আনন্দের"
    pdf = paint_pdf(sheet_of(text_mark(text, "bn"), language="bn"))
    assert reader(pdf, tmp_path).strip() == text


def test_runs_stand_in_the_file_in_the_order_of_reading(tmp_path):
    """pypdf takes text in the order of the file."""
    text = "\u05e8\u05d7\u05e6\u05d5 20 \u05e9\u05e0\u05d9\u05d5\u05ea Wash \u05d9\u05d3\u05d9\u05d9\u05dd"
    found = pypdf_text(paint_pdf(sheet_of(text_mark(text, "he"), language="he")), tmp_path)
    places = [found.find(word) for word in text.split()]
    assert -1 not in places
    assert places == sorted(places)


@pytest.mark.parametrize("reader", READERS)
def test_isolates_do_not_stand_in_the_text(reader, tmp_path):
    mark = text_mark("Rub for \u206820\u00a0s\u2069, then dry.", "en")
    pdf = paint_pdf(sheet_of(mark))
    assert reader(pdf, tmp_path).strip().replace("\u00a0", " ") == "Rub for 20 s, then dry."


@pytest.mark.parametrize("reader", [pdfium_text, pypdf_text, poppler_text])  # pdfminer stacks turned letters
def test_turned_text_is_read(reader, tmp_path):
    pdf = paint_pdf(sheet_of(text_mark("DRAFT COPY", "en", rotation=90)))
    assert "DRAFT COPY" in " ".join(reader(pdf, tmp_path).split())


def test_the_same_glyph_is_read_as_what_each_place_means():
    """Noto draws Latin A, Greek Alpha and Cyrillic A alike; each must come back as itself."""
    text = "A Α А"
    assert pdfium_text(paint_pdf(sheet_of(text_mark(text, "en"))), None).strip() == text
