"""Glyphs made of glyphs, read by fontTools and compared with what HarfBuzz draws."""

from io import BytesIO

import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.ttLib import TTFont
from outside_readers import outside
from sheet_samples import SENTENCES, sheet_of, text_mark

from signage.ground.errors import RefusedError
from signage.ground.glyphs import FontKey
from signage.paint.pdf.composites import ClusterShape, Part, add_composites
from signage.paint.pdf.document import paint_pdf
from signage.text.fonts import face


def embedded(text, language, weight=400):
    """The font program, the CIDs' glyphs and widths, and the texts of a painted line."""
    pikepdf = outside("pikepdf")
    pdf = pikepdf.open(BytesIO(paint_pdf(sheet_of(text_mark(text, language, weight=weight)))))
    (font,) = pdf.pages[0].Resources.Font.values()
    descendant = font.DescendantFonts[0]
    program = TTFont(BytesIO(descendant.FontDescriptor.FontFile2.read_bytes()))
    glyph_map = descendant.CIDToGIDMap.read_bytes()
    glyphs = [int.from_bytes(glyph_map[i : i + 2], "big") for i in range(2, len(glyph_map), 2)]
    widths = [float(width) for width in descendant.W[1]]
    return program, glyphs, widths


def outline(glyph_set, name):
    pen = DecomposingRecordingPen(glyph_set)
    glyph_set[name].draw(pen)
    return pen.value


@pytest.mark.parametrize("language", ["hi", "ta", "km", "my", "ar", "si", "ml"])
def test_every_glyph_of_the_embedded_font_can_be_drawn(language):
    program, glyphs, widths = embedded(SENTENCES[language], language)
    names = program.getGlyphOrder()
    assert program["maxp"].numGlyphs == len(names)
    assert max(glyphs) < len(names)
    composites = [glyph for glyph in glyphs if program["glyf"][names[glyph]].isComposite()]
    assert composites
    for glyph, width in zip(glyphs, widths, strict=True):
        name = names[glyph]
        outline(program.getGlyphSet(), name)
        advance, _ = program["hmtx"][name]
        assert width == pytest.approx(advance * 1000 / program["head"].unitsPerEm, abs=0.5)


@pytest.mark.parametrize("language", ["hi", "ta", "km", "my", "ar"])
def test_boxes_and_bearings_of_composites_are_those_of_their_ink(language):
    program, glyphs, _ = embedded(SENTENCES[language], language)
    glyph_set = program.getGlyphSet()
    for glyph in glyphs:
        name = program.getGlyphOrder()[glyph]
        record = program["glyf"][name]
        if not record.isComposite():
            continue
        box = (record.xMin, record.yMin, record.xMax, record.yMax)
        pen = BoundsPen(glyph_set)
        glyph_set[name].draw(pen)
        left, bottom, right, top = pen.bounds
        # the box of a part is that of its points in TrueType, so it may exceed the ink by its curves
        assert box[0] <= left + 1
        assert box[1] <= bottom + 1
        assert box[2] >= right - 1
        assert box[3] >= top - 1
        assert program["hmtx"][name][1] == record.xMin
    assert program["maxp"].maxComponentDepth >= 2


def test_parts_stand_where_harfbuzz_puts_them():
    """Tamil ko: the sign stands on both sides of its letter, so one cluster is three glyphs in a row."""
    text = "கொ"
    program, glyphs, widths = embedded(text, "ta")
    (glyph,) = glyphs
    record = program["glyf"][program.getGlyphOrder()[glyph]]
    mark = text_mark(text, "ta")
    (run,) = mark.lines[0].runs
    units = face(FontKey("NotoSansTamil[wght].ttf", 400)).units_per_em
    pen, expected = 0.0, []
    for part in run.glyphs:
        expected.append((round((pen + part.x_offset) * units), round(part.y_offset * units)))
        pen += part.advance
    assert [(component.x, component.y) for component in record.components] == expected
    assert len(expected) == 3
    assert widths == [pytest.approx(pen * 1000, abs=0.5)]


def test_a_bold_line_embeds_bold_outlines():
    regular, glyphs, _ = embedded("I", "en", 400)
    bold, bold_glyphs, _ = embedded("I", "en", 700)

    def ink_width(program, glyph):
        pen = BoundsPen(program.getGlyphSet())
        program.getGlyphSet()[program.getGlyphOrder()[glyph]].draw(pen)
        return pen.bounds[2] - pen.bounds[0]

    assert "fvar" not in bold
    assert ink_width(bold, bold_glyphs[0]) > 1.2 * ink_width(regular, glyphs[0])


def test_a_letter_too_high_for_the_table_is_refused():
    program, (glyph,), _ = embedded("I", "en")
    font = BytesIO()
    program.save(font)
    piled = ClusterShape((Part(glyph, 0, 0), Part(glyph, 0, 0x7FFF)), 500)
    with pytest.raises(RefusedError, match="too many marks stand on it"):
        add_composites(font.getvalue(), [piled], {glyph: glyph})
