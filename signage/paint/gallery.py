"""All pictures side by side as one small PNG file, for documents about the project."""

from __future__ import annotations

import math
from collections.abc import Sequence
from io import BytesIO

import pypdfium2

from signage.drawing.marks import Sheet
from signage.paint.pdf.document import paint_pdf
from signage.pictograms.contact import contact_page
from signage.pictograms.picture_set import PictureSet

_SIDE = 20.0
_GAP = 2.0
_WIDTH = 1100
"""Pixels across, whatever the number of pictures."""

_COLOURS = 48
"""Few inks and their edges: a palette of this many keeps the file small."""


def paint_gallery(pictures: PictureSet, names: Sequence[str]) -> bytes:
    """The pictures of the names in rows, each in the colours of its theme, as PNG."""
    columns = max(1, math.ceil(math.sqrt(1.3 * len(names))))
    page = contact_page(pictures, names, side=_SIDE, columns=columns, gap=_GAP)
    sheet = Sheet("gallery", "", "en", "Pictures", "", "", False, (page,), "gallery")
    document = pypdfium2.PdfDocument(paint_pdf(sheet))
    try:
        bitmap = document[0].render(scale=_WIDTH / document[0].get_width())
        image = bitmap.to_pil().convert("RGB").quantize(_COLOURS)
    finally:
        document.close()
    stream = BytesIO()
    image.save(stream, "PNG", optimize=True)
    return stream.getvalue()
