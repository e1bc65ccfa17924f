"""What the pages of a document share: fonts, forms painted once, and tiling patterns."""

from __future__ import annotations

from functools import lru_cache

from signage.drawing.marks import Dots, Form
from signage.ground.geometry import IDENTITY, Affine, circle
from signage.ground.glyphs import FontKey
from signage.paint.pdf import syntax
from signage.paint.pdf.fonts import EmbeddedFont
from signage.paint.pdf.operators import OperatorList, path_operators
from signage.paint.pdf.reportlab_adapter import PdfFile, pack

_FORM_DECIMALS = 2
"""A hundredth of a form's unit is five micrometres on the largest picture."""


class Resources:
    """Fonts, forms and patterns of one document, each written once and named in order of first use."""

    def __init__(self, file: PdfFile) -> None:
        self.number = file.reserve()
        self._file = file
        self._fonts: dict[FontKey, EmbeddedFont] = {}
        self._forms: dict[str, tuple[str, int]] = {}
        self._patterns: dict[tuple[Dots, str], tuple[str, int]] = {}

    def font(self, key: FontKey) -> EmbeddedFont:
        """The embedded font of a key."""
        found = self._fonts.get(key)
        if found is None:
            found = self._fonts[key] = EmbeddedFont(key, f"F{len(self._fonts) + 1}")
        return found

    def form(self, form: Form) -> str:
        """The name of a form; painted where it is met for the first time."""
        found = self._forms.get(form.key)
        if found is None:
            found = self._forms[form.key] = (f"X{len(self._forms) + 1}", self._add_form(form))
        return found[0]

    def pattern(self, dots: Dots, transform: Affine) -> str:
        """The name of the tiling pattern of a dot fill.

        ``transform`` maps the units of the dots to the first coordinates of the stream that uses them:
        patterns are fixed there, not to the units in force (ISO 32000-1, section 8.7.3.1).
        """
        key = (dots, syntax.matrix(transform))
        found = self._patterns.get(key)
        if found is None:
            number = self._file.add_stream(_dot_operators(dots), _pattern_entries(dots, key[1]))
            found = self._patterns[key] = (f"P{len(self._patterns) + 1}", number)
        return found[0]

    def finish(self) -> None:
        """Embed the fonts and write the dictionary of resources."""
        fonts = {font.resource: font.embed(self._file) for font in self._fonts.values()}
        self._file.set_fonts(fonts)
        entries = {"Font": syntax.reference(self._file.fonts)}
        for kind, used in (("XObject", self._forms), ("Pattern", self._patterns)):
            if used:
                entries[kind] = syntax.dictionary(
                    {name: syntax.reference(number) for name, number in used.values()}
                )
        self._file.fill(self.number, syntax.dictionary(entries))

    def _add_form(self, form: Form) -> int:
        """A form XObject. The box leaves room for strokes that reach over the edge of the square."""
        packed, dots_used = _form_content(form)
        edge = form.size
        entries = {
            "Type": "/XObject",
            "Subtype": "/Form",
            "BBox": syntax.array([syntax.numbers((-edge, -edge, 2 * edge, 2 * edge))]),
            "Resources": "<<>>",
        }
        if dots_used:
            patterns = {name: syntax.reference(self._patterns_number(dots)) for dots, name in dots_used}
            entries["Resources"] = syntax.dictionary({"Pattern": syntax.dictionary(patterns)})
        return self._file.add_stream(packed, entries, is_packed=True)

    def _patterns_number(self, dots: Dots) -> int:
        self.pattern(dots, IDENTITY)
        return self._patterns[dots, syntax.matrix(IDENTITY)][1]


@lru_cache(maxsize=512)
def _form_content(form: Form) -> tuple[bytes, tuple[tuple[Dots, str], ...]]:
    """The packed operators of a form, and its patterns with their names inside it."""
    names: dict[Dots, str] = {}
    operators = OperatorList(lambda dots: names.setdefault(dots, f"P{len(names) + 1}"), _FORM_DECIMALS)
    for mark in form.marks:
        operators.paint(mark)
    return pack("\n".join([*operators.code, ""]).encode()), tuple(names.items())


def _dot_operators(dots: Dots) -> bytes:
    """Two whole dots: a row, and the next row shifted by half a pitch."""
    first = circle(dots.pitch_x / 2, dots.pitch_y / 2, dots.radius)
    second = circle(dots.pitch_x, dots.pitch_y * 3 / 2, dots.radius)
    colour = syntax.colour_numbers(dots.colour)
    return f"{colour} rg\n{path_operators(first)} {path_operators(second)} f\n".encode()


def _pattern_entries(dots: Dots, matrix: str) -> dict[str, str]:
    """A coloured tiling pattern whose box holds both dots whole, though it is wider than its step."""
    left, top = dots.pitch_x / 2 - dots.radius, dots.pitch_y / 2 - dots.radius
    right, bottom = dots.pitch_x + dots.radius, dots.pitch_y * 3 / 2 + dots.radius
    return {
        "Type": "/Pattern",
        "PatternType": "1",
        "PaintType": "1",
        "TilingType": "1",
        "BBox": syntax.array([syntax.numbers((left, top, right, bottom))]),
        "XStep": syntax.number(dots.pitch_x),
        "YStep": syntax.number(2 * dots.pitch_y),
        "Matrix": f"[{matrix}]",
        "Resources": "<<>>",
    }
