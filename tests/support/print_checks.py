"""What must hold of a printed sheet of the demo, by other people's readers."""

import io
import re

import demo
from outside_readers import outside

from signage.drawing.marks import groups_of
from signage.drawing.roles import GroupRole
from signage.paint.png import paint_png

SHEETS = [
    ("poster", "put-on", "A3"),
    ("poster", "take-off", "A3-landscape"),
    ("poster", "take-off", "A4"),
    ("step-cards", "", "A4"),
    ("pocket-checklist", "", "A4"),
]
EVERY_SHEET = [(tag, *sheet) for tag in demo.LANGUAGES for sheet in SHEETS]
SAMPLED_SHEETS = [(tag, *sheet) for tag, sheet in zip(demo.LANGUAGES, SHEETS, strict=True)]
"""Every language and every sheet once; tests/whole looks at every sheet in every language."""

HAND_POSTERS = [("poster", "rub", "A4"), ("poster", "wash", "A3")]
CODED_SHEETS = [
    ("poster", "put-on", "A3", "layered-protection"),
    ("poster", "take-off", "A4", "layered-protection"),
    ("poster", "rub", "A4", "clean-hands"),
    ("step-cards", "", "A4", "layered-protection"),
    ("pocket-checklist", "", "A4", "layered-protection"),
]


def squeezed(text):
    """The text without spaces, joiners and marks of direction, which readers of PDF files give or not."""
    return re.sub(r"[\s\u200b-\u200f\u2066-\u2069\u00ad\xa0\u202f]+", "", text)


def assert_pdf_ua_1(data, folder):
    """ISO 14289-1 by the checker page-validation."""
    page = outside("page")
    path = folder / "sheet.pdf"
    path.write_bytes(data)
    result = page.validate_pdf(str(path), profile=page.ValidationProfile.PDF_UA_1)
    assert result.is_compliant, [(failure.rule_id, failure.message) for failure in result.failures[:5]]


def assert_language_direction_boxes_and_tabs(data, tag):
    """What the checker above does not look at; ISO 32000-1, 14.8 and table 30."""
    pikepdf = outside("pikepdf")
    with pikepdf.open(io.BytesIO(data)) as pdf:
        assert str(pdf.Root.Lang) == tag
        assert pdf.Root.ViewerPreferences.DisplayDocTitle
        assert str(pdf.Root.ViewerPreferences.get("/Direction", "/L2R")) == (
            "/R2L" if tag == "ar" else "/L2R"
        )
        for number, page in enumerate(pdf.pages):
            assert page.StructParents == number
            assert page.Tabs == "/S"
            assert [float(v) for v in page.TrimBox] == [float(v) for v in page.MediaBox]


def assert_headlines_can_be_found(tag, phase):
    """Step blocks found in the printed text are the steps of the protocol, by pypdf."""
    pypdf = outside("pypdf")
    reader = pypdf.PdfReader(io.BytesIO(demo.printed("poster", tag, phase, "A3")))
    text = squeezed("".join(page.extract_text() for page in reader.pages))
    context = demo.context(tag)
    steps = next(p for p in context.protocol.phases if p.id == phase).steps
    for step in steps:
        assert squeezed(context.wording.step_text(context.protocol, step, "text")) in text


def _structure_elements(element, pikepdf):
    yield element
    kids = element.get("/K", [])
    for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
            yield from _structure_elements(kid, pikepdf)


def assert_steps_are_spoken_in_order(tag):
    """Reading order is that of the structure tree (ISO 32000-1, 14.8.2.3); pictures speak their language."""
    pikepdf = outside("pikepdf")
    context = demo.context(tag)
    steps = next(p for p in context.protocol.phases if p.id == "take-off").steps
    with pikepdf.open(io.BytesIO(demo.printed("poster", tag, "take-off", "A3"))) as pdf:
        document = pdf.Root.StructTreeRoot.K[0]
        spoken = [
            str(element.Alt)
            for element in _structure_elements(document, pikepdf)
            if element.get("/S") == "/Figure" and "/Alt" in element
        ]
    positions = []
    start = 0
    for words in [context.picture_words(step) for step in steps]:
        if words in spoken[start:]:
            start = spoken.index(words, start)
            positions.append(start)
    assert len(positions) >= 12  # every big step; the signs of strips repeat the words beside them
    assert positions == sorted(positions)


def assert_codes_lead_where_they_say(tag, kind, phase, paper, protocol):
    """Codes of the first pages, read by zxing-cpp at 150 dpi."""
    from PIL import Image

    zxing = outside("zxingcpp")
    sheet = demo.sheet(kind, tag, phase, paper, protocol)
    images = paint_png(demo.printed(kind, tag, phase, paper, protocol), 150)
    for page, image in list(zip(sheet.pages, images, strict=True))[:3]:
        wanted = sorted(group.name for group, _ in groups_of(page, GroupRole.QR))
        found = sorted(code.text for code in zxing.read_barcodes(Image.open(io.BytesIO(image)).convert("L")))
        assert found == wanted
        assert wanted
        for payload in wanted:
            assert payload.startswith(f"http://lantern-bay.internal:8080/{tag}/p")
            assert payload.endswith(f"/?r={sheet.revision}")
