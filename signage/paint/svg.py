"""A page to a picture in SVG 2 that stands alone: no fonts, no styles, no links to elsewhere."""

from __future__ import annotations

import hashlib

from signage.drawing.marks import (
    Dots,
    Form,
    FormMark,
    Group,
    Mark,
    Page,
    PathMark,
    PlacedLine,
    Structure,
    TextMark,
)
from signage.drawing.svg_path import path_data, svg_number
from signage.ground.geometry import IDENTITY, Affine, Path
from signage.ground.glyphs import GlyphRun
from signage.paint.glyph_outlines import glyph_outline
from signage.paint.xml_text import xml_attribute, xml_text
from signage.text.fonts import face


def paint_svg(page: Page, title: str, language: str) -> str:
    """The SVG of a page, in millimetres. The same page gives the same text.

    Text is drawn as outlines and told to readers as labels. Identifiers are made from what they name,
    so that several pictures can stand in one HTML page.
    """
    painter = _SvgPainter()
    painter.paint_all(page.marks)
    width, height = svg_number(page.width), svg_number(page.height)
    title_id = _identifier("t", title)
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" role="graphics-document document" '
        f'aria-labelledby="{title_id}" lang={xml_attribute(language)} xml:lang={xml_attribute(language)}>'
    )
    definitions = f"<defs>{''.join(painter.definitions.values())}</defs>" if painter.definitions else ""
    parts = [head, f'<title id="{title_id}">{xml_text(title)}</title>', definitions, *painter.body, "</svg>"]
    return "\n".join([part for part in parts if part]) + "\n"


class _SvgPainter:
    """Elements in painting order, and the definitions that they refer to by identifier."""

    def __init__(self) -> None:
        self.definitions: dict[str, str] = {}
        self.body: list[str] = []

    def paint_all(self, marks: tuple[Mark, ...]) -> None:
        """Paint marks one above the other."""
        for mark in marks:
            if isinstance(mark, PathMark):
                self.body.extend(self._path_elements(mark))
            elif isinstance(mark, TextMark):
                self._paint_text(mark)
            elif isinstance(mark, FormMark):
                self.body.append(f'<use href="#{self._define_form(mark.form)}"{_transform(mark.transform)}/>')
            else:
                self._paint_group(mark)

    def _paint_group(self, group: Group) -> None:
        attributes = _transform(group.transform) + _meaning(group)
        if group.clip is not None:
            attributes += f' clip-path="url(#{self._define_clip(group.clip)})"'
        if attributes:
            self.body.append(f"<g{attributes}>")
        self.paint_all(group.marks)
        if attributes:
            self.body.append("</g>")

    def _path_elements(self, mark: PathMark) -> list[str]:
        """One element, or two for dots: the paper, then the dots over it."""
        data = f'<path d="{path_data(mark.path)}"'
        stroke = _stroke(mark)
        if isinstance(mark.fill, Dots):
            dots = self._define_dots(mark.fill)
            return [f'{data} fill="{mark.fill.paper}"/>', f'{data} fill="url(#{dots})"{stroke}/>']
        if mark.fill is None and not stroke:
            return []
        return [f'{data} fill="{mark.fill or "none"}"{stroke}/>']

    def _paint_text(self, mark: TextMark) -> None:
        turn = ""
        if mark.rotation:
            angle, x, y = (svg_number(value) for value in (mark.rotation, *mark.pivot))
            turn = f' transform="rotate({angle} {x} {y})"'
        language = xml_attribute(mark.language)
        label = xml_attribute(" ".join(mark.text.split()))
        self.body.append(
            f'<g role="img" aria-label={label} lang={language} xml:lang={language} '
            f'fill="{mark.colour}"{turn}>'
        )
        for line in mark.lines:
            self._paint_line(line, mark.size)
        self.body.append("</g>")

    def _paint_line(self, line: PlacedLine, size: float) -> None:
        x = line.x
        for run in line.runs:
            uses = self._glyph_uses(run)
            if uses:
                scale = size / face(run.font).units_per_em
                place = Affine(scale, 0, 0, -scale, x, line.baseline)
                self.body.append(f"<g{_transform(place)}>{uses}</g>")
            x += run.advance * size

    def _glyph_uses(self, run: GlyphRun) -> str:
        """References to the glyphs of a run, in font units."""
        units = face(run.font).units_per_em
        uses: list[str] = []
        pen = 0.0
        for glyph in run.glyphs:
            outline = glyph_outline(run.font, glyph.id)
            if outline:
                name = self._define("g", outline, f'<path id="{{}}" d="{outline}"/>')
                x, y = round((pen + glyph.x_offset) * units), round(glyph.y_offset * units)
                uses.append(f'<use href="#{name}" x="{x}"{f" y={chr(34)}{y}{chr(34)}" if y else ""}/>')
            pen += glyph.advance
        return "".join(uses)

    def _define_form(self, form: Form) -> str:
        content = "".join([element for mark in form.marks for element in self._path_elements(mark)])
        return self._define("f", content, f'<symbol id="{{}}" overflow="visible">{content}</symbol>')

    def _define_clip(self, path: Path) -> str:
        data = path_data(path)
        return self._define("c", data, f'<clipPath id="{{}}"><path d="{data}"/></clipPath>')

    def _define_dots(self, dots: Dots) -> str:
        """Two rows of dots, the second shifted by half a pitch and so cut by the edges of the tile."""
        across, down = dots.pitch_x, dots.pitch_y
        centres = [(across / 2, down / 2), (0.0, down * 3 / 2), (across, down * 3 / 2)]
        radius = svg_number(dots.radius)
        circles = "".join(
            f'<circle cx="{svg_number(x)}" cy="{svg_number(y)}" r="{radius}"/>' for x, y in centres
        )
        body = (
            f'patternUnits="userSpaceOnUse" width="{svg_number(across)}" height="{svg_number(2 * down)}" '
            f'fill="{dots.colour}">{circles}'
        )
        return self._define("d", body, f'<pattern id="{{}}" {body}</pattern>')

    def _define(self, kind: str, content: str, element: str) -> str:
        name = _identifier(kind, content)
        if name not in self.definitions:
            self.definitions[name] = element.replace("{}", name, 1)
        return name


def _meaning(group: Group) -> str:
    """What a group is to a reader who cannot see it."""
    if group.structure is Structure.ARTEFACT:
        return ' aria-hidden="true"'
    language = (
        f" lang={xml_attribute(group.language)} xml:lang={xml_attribute(group.language)}"
        if group.language
        else ""
    )
    if group.structure is Structure.FIGURE:
        return f' role="img" aria-label={xml_attribute(group.alternative or "")}{language}'
    return language


def _stroke(mark: PathMark) -> str:
    if mark.stroke is None or mark.width <= 0:
        return ""
    cap = "" if mark.butt_caps else ' stroke-linecap="round"'
    dash = f' stroke-dasharray="{" ".join(map(svg_number, mark.dash))}"' if mark.dash else ""
    return (
        f' stroke="{mark.stroke}" stroke-width="{svg_number(mark.width)}"{cap} stroke-linejoin="round"{dash}'
    )


def _transform(affine: Affine) -> str:
    if affine == IDENTITY:
        return ""
    linear = [f"{value:.6f}".rstrip("0").rstrip(".") for value in (affine.a, affine.b, affine.c, affine.d)]
    return f' transform="matrix({" ".join([*linear, svg_number(affine.e), svg_number(affine.f)])})"'


def _identifier(kind: str, content: str) -> str:
    return kind + hashlib.sha256(content.encode()).hexdigest()[:12]
