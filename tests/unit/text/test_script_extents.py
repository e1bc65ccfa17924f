import pytest
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen

from signage.ground.glyphs import FontKey
from signage.text.font_set import open_font_set
from signage.text.metrics import metrics_of
from signage.text.script_extents import measure_letters

KA, SUBJOINED, ABOVE = 0x0F40, 0x0F90, 0x0F7A
LETTERS = range(KA, KA + 8)
INK = {
    **dict.fromkeys(LETTERS, (0, 680)),
    **dict.fromkeys(range(SUBJOINED, SUBJOINED + 8), (-740, 0)),
    ABOVE: (700, 1090),
}


def write_font(path, ink, name="Ours"):
    """A font whose glyphs are boxes between the given heights, in thousandths of the em."""
    glyphs = {".notdef": (0, 0), "space": (0, 0), **{f"uni{code:04X}": box for code, box in ink.items()}}
    outlines = {}
    for glyph, (bottom, top) in glyphs.items():
        pen = TTGlyphPen(None)
        if top != bottom:
            pen.moveTo((50, bottom))
            for point in ((50, top), (450, top), (450, bottom)):
                pen.lineTo(point)
            pen.closePath()
        outlines[glyph] = pen.glyph()
    builder = FontBuilder(1000, isTTF=True)
    builder.setupGlyphOrder(list(glyphs))
    builder.setupCharacterMap({0x20: "space", **{code: f"uni{code:04X}" for code in ink}})
    builder.setupGlyf(outlines)
    builder.setupHorizontalMetrics(dict.fromkeys(glyphs, (500, 50)))
    builder.setupHorizontalHeader(ascent=1000, descent=-300)
    builder.setupNameTable({"familyName": name, "styleName": "Regular"})
    builder.setupOS2()
    builder.setupPost()
    path.parent.mkdir(exist_ok=True)
    builder.save(path)


def test_a_script_is_measured_in_the_font_that_the_library_brings(tmp_path):
    write_font(tmp_path / "fonts" / "stacks.ttf", INK)
    metrics = metrics_of("Tibt", open_font_set(tmp_path / "fonts"))
    assert (metrics.ascent, metrics.descent) == (1.09, 0.74)
    assert metrics.headline_leading == pytest.approx(1.09 + 0.74 + 0.02)
    assert metrics.reference_height == 0.62


def test_the_font_with_most_letters_of_a_script_is_measured(tmp_path):
    write_font(tmp_path / "fonts" / "a-few.ttf", {KA: (0, 300)})
    write_font(tmp_path / "fonts" / "b-all.ttf", dict.fromkeys(LETTERS, (-100, 600)))
    metrics = metrics_of("Tibt", open_font_set(tmp_path / "fonts"))
    assert (metrics.ascent, metrics.descent) == (0.6, 0.1)


def test_a_sign_that_reaches_far_beyond_all_others_does_not_count(tmp_path):
    write_font(
        tmp_path / "fonts" / "stacks.ttf",
        {**dict.fromkeys(range(KA, KA + 40), (0, 680)), 0x0F00: (-900, 1900)},
    )
    metrics = metrics_of("Tibt", open_font_set(tmp_path / "fonts"))
    assert (metrics.ascent, metrics.descent) == (0.68, 0.0)


def test_a_font_without_letters_of_the_script_changes_nothing(tmp_path):
    write_font(tmp_path / "fonts" / "other.ttf", {0x07CA: (0, 700)})
    fonts = open_font_set(tmp_path / "fonts")
    assert metrics_of("Tibt", fonts) == metrics_of("Tibt")
    assert metrics_of("Nkoo", fonts) != metrics_of("Nkoo")
    with pytest.raises(ValueError, match="Tibt"):
        measure_letters(FontKey("other.ttf", 400, fonts.own[0]), "Tibt")
