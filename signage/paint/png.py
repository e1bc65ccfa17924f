"""Pages of a PDF file to PNG pictures."""

from io import BytesIO

import pypdfium2

_POINTS_PER_INCH = 72


def paint_png(pdf: bytes, dots_per_inch: int) -> list[bytes]:
    """One PNG a page, which carries its resolution (chunk pHYs) and no date.

    Raises pypdfium2.PdfiumError when the bytes are no PDF file.
    """
    document = pypdfium2.PdfDocument(pdf)
    try:
        return [_paint_page(page, dots_per_inch) for page in document]
    finally:
        document.close()


def _paint_page(page: pypdfium2.PdfPage, dots_per_inch: int) -> bytes:
    bitmap = page.render(scale=dots_per_inch / _POINTS_PER_INCH, may_draw_forms=False)
    stream = BytesIO()
    bitmap.to_pil().save(stream, "PNG", dpi=(dots_per_inch, dots_per_inch))
    bitmap.close()
    page.close()
    return stream.getvalue()
