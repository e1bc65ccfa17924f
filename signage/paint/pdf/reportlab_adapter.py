"""The one place that knows reportlab: objects in, the bytes of a PDF file out.

The library keeps object numbers, cross-reference table, trailer and identifier. Its canvas and its
streams are passed by, for six reasons that are named where they are met:

1. the canvas puts an unembedded Helvetica into every page, which PDF/UA forbids;
2. fonts of one's own have no door but the dictionary of basic fonts;
3. a page drops the keys StructParents and Tabs without a word;
4. the catalogue has the keys of tagged PDF but no value for true and false;
5. streams without a filter get an empty filter array, and none gets a line end before ``endstream``;
6. page streams go through ASCII85, which costs time and an eighth of the size.
"""

import zlib
from collections.abc import Mapping
from datetime import datetime

from reportlab.pdfbase import pdfdoc

from signage.paint.pdf import syntax

COMPRESSION_LEVEL = 4
"""Level 6 takes two and a half times as long and saves three bytes in a hundred (measured on posters)."""

PRODUCER = "signage"


class _Plain(pdfdoc.PDFObject):  # type: ignore[misc]
    """An object whose notation is ready; reasons 4 and 5."""

    __RefOnly__ = 1

    def __init__(self, notation: bytes = b"") -> None:
        self.notation = notation

    def format(self, _document: pdfdoc.PDFDocument) -> bytes:
        return self.notation


class _TaggedPage(pdfdoc.PDFPage):  # type: ignore[misc]
    """A page that keeps the keys of tagged PDF (reason 3) and brings its own resources (reason 1)."""

    Override_default_compilation = 1
    __NoDefault__ = (*pdfdoc.PDFPage.__NoDefault__, "StructParents", "Tabs")


class _Information(pdfdoc.PDFInfo):  # type: ignore[misc]
    """The information dictionary without the library's empty author, subject and keywords."""

    def __init__(self, title: str, date: datetime) -> None:
        super().__init__()
        self.title = title
        self._date = syntax.text_string(date.strftime("D:%Y%m%d%H%M%SZ"))

    def format(self, _document: pdfdoc.PDFDocument) -> bytes:
        entries = {
            "Title": syntax.text_string(self.title),
            "Producer": syntax.text_string(PRODUCER),
            "CreationDate": self._date,
            "ModDate": self._date,
        }
        return syntax.dictionary(entries).encode()


class PdfFile:
    """A PDF 1.7 file in the making. Objects are known by their numbers; values are in PDF notation."""

    def __init__(self, title: str, language: str, date: datetime) -> None:
        self._document = pdfdoc.PDFDocument(invariant=1, pdfVersion=(1, 7), lang=language)
        self._document.info = _Information(title, date)
        self._pages: list[_TaggedPage] = []

    def reserve(self) -> int:
        """The number of an object that is filled later."""
        return self._register(_Plain())

    def fill(self, object_number: int, notation: str) -> None:
        """Give a reserved object its value."""
        name = self._document.numberToId[object_number]
        self._document.idToObject[name].notation = notation.encode()

    def add(self, notation: str) -> int:
        """A new object; returns its number."""
        return self._register(_Plain(notation.encode()))

    def add_stream(
        self, data: bytes, entries: Mapping[str, str] | None = None, is_packed: bool = False
    ) -> int:
        """A stream, compressed; ``is_packed`` says that the data went through ``pack`` before."""
        packed = data if is_packed else pack(data)
        return self._add_raw_stream(packed, {**(entries or {}), "Filter": "/FlateDecode"})

    def add_page(self, entries: Mapping[str, str]) -> int:
        """A page with its entries (all but Type and Parent); returns its number."""
        page = _TaggedPage()
        for key, value in entries.items():
            setattr(page, key, value.encode())
        page.Parent = self._document.Reference(self._document.Pages)
        self._document.addPage(page)
        self._pages.append(page)
        return int(self._document.idToObjectNumberAndVersion[page.__InternalName__][0])

    def set_fonts(self, fonts: Mapping[str, int]) -> None:
        """The font resources of all pages, name to object number (reason 2)."""
        basic_fonts = self._document.idToObject[pdfdoc.BasicFonts]
        basic_fonts.dict.update({key: syntax.reference(value).encode() for key, value in fonts.items()})

    @property
    def fonts(self) -> int:
        """The object number of the font resources."""
        return int(self._document.idToObjectNumberAndVersion[pdfdoc.BasicFonts][0])

    def set_catalogue(self, entries: Mapping[str, str]) -> None:
        """Entries of the document catalogue, in PDF notation (reason 4)."""
        for key, value in entries.items():
            setattr(self._document.Catalog, key, value.encode())

    def add_metadata(self, packet: bytes) -> int:
        """The XMP packet, uncompressed so that programmes find it without reading PDF (reason 5)."""
        return self._add_raw_stream(packet, {"Type": "/Metadata", "Subtype": "/XML"})

    def finish(self) -> bytes:
        """The whole file."""
        return bytes(self._document.GetPDFData(None))

    def _add_raw_stream(self, data: bytes, entries: Mapping[str, str]) -> int:
        head = syntax.dictionary({**entries, "Length": str(len(data))}).encode()
        self._document.updateSignature(data)
        return self._register(_Plain(b"".join((head, b"\nstream\n", data, b"\nendstream\n"))))

    def _register(self, value: _Plain) -> int:
        reference = self._document.Reference(value)
        return int(self._document.idToObjectNumberAndVersion[reference.name][0])


def pack(data: bytes) -> bytes:
    """Deflate, straight to binary (reason 6)."""
    return zlib.compress(data, COMPRESSION_LEVEL)
