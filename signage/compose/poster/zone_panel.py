"""The ground of a zone on a poster: tint, patterned rail, name, gates, note and cards."""

from __future__ import annotations

from collections.abc import Sequence

from signage.compose.lettering import Anchor, Lettering, TextPlace
from signage.compose.parts import chevron
from signage.compose.poster.layout import Panel, PosterPage, Slot
from signage.compose.poster.sizes import SizeFinder, note_face
from signage.compose.poster.tile import Drawing, draw_gate, draw_module
from signage.compose.zones import draw_rail, tint_of
from signage.drawing.marks import Structure
from signage.drawing.roles import GroupRole, TypeRole

_LINE = 1.2
"""The floor line between two zones."""


def draw_panels(drawing: Drawing, page: PosterPage, finder: SizeFinder) -> None:
    """All panels of a page in reading order, with the floor lines between zones."""
    for index, band in enumerate(page.bands):
        if index:
            _floor_line(drawing, page.bands[index - 1], band)
        for panel in band:
            _draw_panel(drawing, panel, finder)


def _floor_line(drawing: Drawing, above: Sequence[Panel], below: Sequence[Panel]) -> None:
    """Across the sheet, where no zone goes on below the line."""
    if {panel.zone for panel in above} & {panel.zone for panel in below}:
        return
    measures = drawing.measures
    y = below[0].y - measures.panel_gap / 2
    drawing.canvas.line(
        measures.margin, y, measures.width - measures.margin, y, None, _LINE * drawing.k, has_butt_caps=True
    )


def _draw_panel(drawing: Drawing, panel: Panel, finder: SizeFinder) -> None:
    canvas = drawing.canvas
    with canvas.group(
        GroupRole.ZONE,
        panel.zone,
        structure=Structure.SECTION,
        box=canvas.box(panel.x, panel.y, panel.width, panel.height),
        continued=panel.is_continued,
    ):
        _ground(drawing, panel)
        _name(drawing, panel, finder)
        _note(drawing, panel, finder)
        with canvas.group(structure=Structure.LIST):
            for numbered, slot in zip(panel.gates, panel.head.gates, strict=True):
                x, y = _corner(drawing, panel, slot)
                draw_gate(drawing, numbered, x, y, slot.height)
            _cards(drawing, panel)


def _ground(drawing: Drawing, panel: Panel) -> None:
    canvas, k = drawing.canvas, drawing.k
    zone = drawing.context.ward.zones[panel.zone]
    box = (panel.x, panel.y, panel.width, panel.height)
    canvas.rect(*box, tint_of(canvas, zone))
    rail = drawing.measures.rail_inside if panel.is_inside_row else drawing.measures.rail
    draw_rail(canvas, zone, panel.x, panel.y, rail, panel.height, k, 0.45 * k)
    canvas.rect(*box, None, canvas.style.ink, 0.45 * k)
    if panel.is_inside_row:
        x, beyond = panel.x - _LINE * k / 2, 1.5 * k
        canvas.line(
            x, panel.y - beyond, x, panel.y + panel.height + beyond, None, _LINE * k, has_butt_caps=True
        )


def _corner(drawing: Drawing, panel: Panel, slot: Slot) -> tuple[float, float]:
    """The start top corner of a slot of the head."""
    x = drawing.grid.starts[panel.first_column + slot.column]
    return x, panel.y + drawing.measures.pad + slot.y


def _name(drawing: Drawing, panel: Panel, finder: SizeFinder) -> None:
    canvas, k, slot = drawing.canvas, drawing.k, panel.head.name
    x, y = _corner(drawing, panel, slot)
    room = finder.zone_room(panel)
    with canvas.group(structure=Structure.HEADING_2):
        canvas.text(
            finder.zone_text(panel),
            Lettering(
                TypeRole.ZONE,
                canvas.face(700, leading=1.05 if canvas.wording.script == "Latn" else None),
                drawing.sizes.zone,
                wanted=19 * k,
            ),
            TextPlace(
                x + (1.5 * k if panel.is_inside_row else 0.0),
                y + slot.height / 2,
                room.width,
                lines=room.lines,
                anchor=Anchor.MIDDLE,
            ),
            message=f"ward/{drawing.context.ward.id}/zone/{panel.zone}",
        )


def _note(drawing: Drawing, panel: Panel, finder: SizeFinder) -> None:
    text, slot = finder.note_text(panel), panel.head.note
    if text is None or slot is None:
        return
    x, y = _corner(drawing, panel, slot)
    room = finder.note_room(panel)
    drawing.canvas.text(
        text,
        Lettering(
            TypeRole.NOTE, note_face(drawing.context.wording), drawing.sizes.note, wanted=12.5 * drawing.k
        ),
        TextPlace(
            x, y + slot.height / 2, room.width, height=room.height, lines=room.lines, anchor=Anchor.MIDDLE
        ),
    )


def _cards(drawing: Drawing, panel: Panel) -> None:
    measures, grid = drawing.measures, drawing.grid
    y = panel.y + 2 * measures.pad + panel.head_height
    for segment in panel.segments:
        for index, module in enumerate(segment.modules):
            x = grid.starts[segment.first_column + index]
            draw_module(drawing, module, x, y, segment.row_hanging)
            if index + 1 < len(segment.modules):
                chevron(
                    drawing.canvas,
                    x + grid.width + grid.gutter / 2 - drawing.k,
                    y + drawing.tile * 0.36,
                    drawing.k,
                )
        y += drawing.tile + segment.row_hanging + measures.gutter
