"""A sheet to a tagged PDF file."""

from signage.drawing.marks import Sheet
from signage.ground.edition import edition_date
from signage.ground.length import POINTS_PER_MM
from signage.paint.pdf import syntax
from signage.paint.pdf.content import PagePainter
from signage.paint.pdf.reportlab_adapter import PRODUCER, PdfFile
from signage.paint.pdf.resources import Resources
from signage.paint.pdf.structure import StructureTree
from signage.paint.pdf.xmp import metadata_packet


def paint_pdf(sheet: Sheet) -> bytes:
    """The PDF file of a sheet, tagged as PDF/UA-1; the same sheet gives the same bytes.

    Raises MissingFromMachineError when a font of the sheet is not installed.
    """
    date = edition_date()
    file = PdfFile(sheet.title, sheet.locale, date)
    resources = Resources(file)
    tree = StructureTree(sheet.locale)
    pages: list[int] = []
    for page in sheet.pages:
        key = tree.begin_page()
        content = file.add_stream(PagePainter(page, tree, resources).paint())
        box = syntax.array([syntax.numbers((0, 0, page.width * POINTS_PER_MM, page.height * POINTS_PER_MM))])
        entries = {
            "MediaBox": box,
            "TrimBox": box,
            "Contents": syntax.reference(content),
            "Resources": syntax.reference(resources.number),
            "StructParents": str(key),
            "Tabs": "/S",
        }
        pages.append(file.add_page(entries))
    resources.finish()
    metadata = file.add_metadata(metadata_packet(sheet.title, sheet.locale, PRODUCER, date))
    file.set_catalogue(
        {
            "StructTreeRoot": syntax.reference(tree.write(file, pages)),
            "MarkInfo": "<</Marked true>>",
            "Metadata": syntax.reference(metadata),
            "ViewerPreferences": _viewer_preferences(sheet.is_right_to_left),
        }
    )
    return file.finish()


def _viewer_preferences(is_right_to_left: bool) -> str:
    """Show the title, turn pages rightly, and offer to print at full size: rulers are measured on paper."""
    direction = "R2L" if is_right_to_left else "L2R"
    return f"<</DisplayDocTitle true /PrintScaling /None /Direction /{direction}>>"
