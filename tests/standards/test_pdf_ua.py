"""Sheets against PDF/UA-1 (ISO 14289-1:2014), by a checker that has nothing to do with the painter.

What the checker misses (measured by removing it) is asserted here with the clause beside it.
"""

import subprocess
from io import BytesIO

import pytest
from outside_readers import outside
from sheet_samples import poster

from signage.paint.pdf.document import paint_pdf


@pytest.fixture(scope="module")
def pdf():
    return paint_pdf(poster("en", pages=2))


def failures(pdf, folder):
    page = outside("page")
    path = folder / "sheet.pdf"
    path.write_bytes(pdf)
    report = page.validate_pdf(path, profile=page.ValidationProfile.PDF_UA_1)
    assert report.is_compliant == (not report.failures)
    return [f"{failure.rule_id}: {failure.message}" for failure in report.failures]


def changed(pdf, change):
    """The file after a change to its objects."""
    with outside("pikepdf").open(BytesIO(pdf)) as opened:
        change(opened)
        stream = BytesIO()
        opened.save(stream)
    return stream.getvalue()


@pytest.mark.parametrize("language", ["en", "ar", "he", "hi", "bn", "th", "am"])
def test_a_sheet_is_compliant(language, tmp_path):
    assert failures(paint_pdf(poster(language)), tmp_path) == []


def drop_mark_info(opened):
    del opened.Root.MarkInfo


def drop_title_display(opened):
    del opened.Root.ViewerPreferences


def drop_metadata(opened):
    del opened.Root.Metadata


def drop_alternatives(opened):
    for value in opened.objects:
        if isinstance(value, outside("pikepdf").Dictionary) and "/Alt" in value:
            del value["/Alt"]


def drop_to_unicode(opened):
    for font in opened.pages[0].Resources.Font.values():
        del font["/ToUnicode"]


def add_unmarked_content(opened):
    page = opened.pages[0]
    page.contents_add(opened.make_stream(b"0 0 10 10 re f"))


@pytest.mark.parametrize(
    "fault",
    [
        drop_mark_info,
        drop_title_display,
        drop_metadata,
        drop_alternatives,
        drop_to_unicode,
        add_unmarked_content,
    ],
)
def test_the_checker_finds_a_fault(fault, pdf, tmp_path):
    assert failures(changed(pdf, lambda _opened: None), tmp_path) == []
    assert failures(changed(pdf, fault), tmp_path) != []


def test_pages_name_their_row_of_the_parent_tree(pdf):
    """ISO 32000-1, 14.7.4.4: StructParents is the key of the page in the parent tree."""
    with outside("pikepdf").open(BytesIO(pdf)) as opened:
        rows = list(opened.Root.StructTreeRoot.ParentTree.Nums)
        keys = [int(page.StructParents) for page in opened.pages]
        assert keys == [int(key) for key in rows[0::2]] == [0, 1]
        assert int(opened.Root.StructTreeRoot.ParentTreeNextKey) == 2


def test_tab_order_follows_the_structure(pdf):
    """ISO 14289-1, 7.18.3: Tabs is S."""
    with outside("pikepdf").open(BytesIO(pdf)) as opened:
        assert [str(page.Tabs) for page in opened.pages] == ["/S", "/S"]


def test_parent_tree_and_structure_tree_agree(pdf):
    """ISO 32000-1, 14.7.4.4: the entry at index MCID is the element whose K holds that MCID on that page."""
    with outside("pikepdf").open(BytesIO(pdf)) as opened:
        rows = opened.Root.StructTreeRoot.ParentTree.Nums
        for page, row in zip(opened.pages, list(rows)[1::2], strict=True):
            for identifier, element in enumerate(row):
                kids = element.K
                numbers = (
                    [int(kids)] if isinstance(kids, int) else [int(k) for k in kids if isinstance(k, int)]
                )
                assert identifier in numbers
                assert element.Pg.objgen == page.objgen


def test_every_marked_content_of_the_page_is_in_the_parent_tree(pdf):
    """ISO 32000-1, 14.7.4.2: identifiers of a page are unique and each belongs to an element."""
    pikepdf = outside("pikepdf")
    with pikepdf.open(BytesIO(pdf)) as opened:
        rows = list(opened.Root.StructTreeRoot.ParentTree.Nums)[1::2]
        for page, row in zip(opened.pages, rows, strict=True):
            marked = [
                int(operands[1].MCID)
                for operands, operator in pikepdf.parse_content_stream(page)
                if str(operator) == "BDC"
            ]
            assert marked == list(range(len(row)))


def test_the_metadata_says_what_the_file_is(pdf):
    """ISO 14289-1, 5 and 7.1: part 1, a title, and its display in the window."""
    with outside("pikepdf").open(BytesIO(pdf)) as opened:
        metadata = opened.open_metadata()
        assert metadata["pdfuaid:part"] == "1"
        assert metadata["dc:title"] == poster("en").title
        assert str(opened.Root.Lang) == "en"
        assert bool(opened.Root.ViewerPreferences.DisplayDocTitle)


def test_poppler_reads_the_structure(pdf, tmp_path):
    path = tmp_path / "sheet.pdf"
    path.write_bytes(pdf)
    run = subprocess.run([outside("pdfinfo"), "-struct", path], check=True, capture_output=True, text=True)
    kinds = [
        line.strip().split()[0].strip(":")
        for line in run.stdout.splitlines()
        if line.strip() and line.strip()[0] != "/"
    ]
    assert kinds[:8] == ["Document", "H1", "L", "LI", "Lbl", "LBody", "Figure", "P"]
    assert run.stderr == ""


def test_qpdf_finds_no_error(pdf, tmp_path):
    path = tmp_path / "sheet.pdf"
    path.write_bytes(pdf)
    run = subprocess.run([outside("qpdf"), "--check", path], check=False, capture_output=True, text=True)
    assert (run.returncode, run.stderr) == (0, "")
