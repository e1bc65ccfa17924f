"""The file as a whole: the same bytes each time, its boxes, its data about itself."""

import os
import subprocess
import sys
from io import BytesIO
from pathlib import Path

import pytest
from demo import ROOT
from outside_readers import outside
from sheet_samples import poster, sheet_of, text_mark

from signage.paint.pdf.document import paint_pdf

DIGESTS = """
import hashlib
from sheet_samples import poster
from signage.paint.pdf.document import paint_pdf
from signage.paint.png import paint_png
from signage.paint.svg import paint_svg
pdf = paint_pdf(poster("ar", pages=2))
paints = [pdf, paint_svg(poster("hi").pages[0], "Title", "hi").encode(), *paint_png(pdf, 50)]
print([hashlib.sha256(paint).hexdigest() for paint in paints])
"""


def digests(seed):
    environment = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT / "tests" / "support")}
    environment.pop("SOURCE_DATE_EPOCH", None)
    run = subprocess.run(
        [sys.executable, "-c", DIGESTS], env=environment, cwd=ROOT, check=True, capture_output=True, text=True
    )
    return run.stdout


def test_other_processes_paint_the_same_bytes():
    assert digests("1") == digests("2")


def test_painting_twice_gives_the_same_bytes():
    assert paint_pdf(poster("hi")) == paint_pdf(poster("hi"))


def test_other_words_give_another_identifier():
    def identifier(text):
        with outside("pikepdf").open(BytesIO(paint_pdf(sheet_of(text_mark(text, "en"))))) as opened:
            return bytes(opened.trailer.ID[0])

    assert identifier("Wash") != identifier("Rub")


def test_boxes_are_the_trimmed_page():
    with outside("pikepdf").open(BytesIO(paint_pdf(poster("en", pages=2)))) as opened:
        for page in opened.pages:
            assert list(page.TrimBox) == list(page.MediaBox)
            assert [float(edge) for edge in page.MediaBox] == pytest.approx(
                [0, 0, 595.276, 841.890], abs=0.001
            )


def test_the_file_tells_its_title_its_maker_and_the_pinned_date(monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1700000000")  # 2023-11-14 22:13:20 UTC
    sheet = sheet_of(text_mark("Text", "en"), title="Put on & take off <1>")
    with outside("pikepdf").open(BytesIO(paint_pdf(sheet))) as opened:
        assert str(opened.docinfo.Title) == "Put on & take off <1>"
        assert str(opened.docinfo.Producer) == "signage"
        assert str(opened.docinfo.CreationDate) == "D:20231114221320Z"
        metadata = opened.open_metadata()
        assert metadata["dc:title"] == "Put on & take off <1>"
        assert metadata["xmp:CreateDate"] == "2023-11-14T22:13:20+00:00"


def test_viewers_print_at_full_size_and_turn_pages_rightly():
    for language, direction in (("en", "/L2R"), ("he", "/R2L")):
        with outside("pikepdf").open(BytesIO(paint_pdf(poster(language)))) as opened:
            preferences = opened.Root.ViewerPreferences
            assert str(preferences.PrintScaling) == "/None"
            assert str(preferences.Direction) == direction


def test_all_fonts_are_embedded(tmp_path):
    path = Path(tmp_path) / "sheet.pdf"
    path.write_bytes(paint_pdf(poster("am")))
    run = subprocess.run([outside("pdffonts"), path], check=True, capture_output=True, text=True)
    rows = run.stdout.splitlines()[2:]
    assert len(rows) >= 3
    assert all(" yes yes yes " in " ".join(row.split()) + " " for row in rows), run.stdout


def test_no_page_asks_for_a_font_of_the_machine():
    assert b"Helvetica" not in paint_pdf(poster())


def test_compression_leaves_small_files():
    """A poster of three steps with a picture is a file to send by mail."""
    assert len(paint_pdf(poster())) < 40_000
