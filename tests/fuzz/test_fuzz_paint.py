"""Any text that can be set can be painted, into files that other readers open."""

import xml.etree.ElementTree as ET
from io import BytesIO

from hypothesis import given, settings
from hypothesis import strategies as st
from outside_readers import outside
from sheet_samples import SENTENCES, sheet_of, text_mark

from signage.ground.errors import RefusedError
from signage.paint.pdf.document import paint_pdf
from signage.paint.svg import paint_svg

known = sorted({character for sentence in SENTENCES.values() for character in sentence})
controls = list("\u200b\u200c\u200d\u200e\u200f\u2066\u2067\u2068\u2069\u00ad\u00a0\n")
words = st.text(
    st.one_of(st.sampled_from(known + controls), st.characters(codec="utf-8")), min_size=1, max_size=40
)


@settings(max_examples=60)
@given(words, st.sampled_from(["en", "ar", "hi", "km"]), st.sampled_from([20.0, 170.0]))
def test_any_text_is_painted(text, language, width):
    try:
        mark = text_mark(text, language, width=width)
    except RefusedError:
        return
    sheet = sheet_of(mark, language=language, title=text)
    with outside("pikepdf").open(BytesIO(paint_pdf(sheet))) as opened:
        check = getattr(opened, "check_pdf_syntax", None) or opened.check  # the name before pikepdf 10
        assert check() == []
    ET.fromstring(paint_svg(sheet.pages[0], text, language))  # noqa: S314  our own text
