"""The pocket checklist: eight panels of a quarter by a half sheet, to be folded with one slit.

1 cover · 2 to 7 the steps, phase by phase, then the rules and what goes where · 8 code and control text.
Panels that nothing needs become lines for notes. What one folded sheet cannot hold goes on a second:
each has its own cover, and all rules.
"""

from __future__ import annotations

from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.envelope import finished_sheet
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.pocket_checklist.covers import Fold, back_panel, cover_panel
from signage.compose.pocket_checklist.plan import INNER_PANELS, PanelRows, plan_folds
from signage.compose.pocket_checklist.rows import (
    MARGIN,
    StepRow,
    draw_ground,
    draw_row,
    phase_message,
    phase_title,
)
from signage.compose.pocket_checklist.rules import HEAD, HEAD_AIR, fewest_rule_panels, panel_head, rule_panels
from signage.compose.theme import style_of
from signage.drawing.marks import Sheet, Structure
from signage.drawing.roles import TypeRole
from signage.model.choices import PhaseTheme

_FOOT = 3.6
"""Room for the line that says which of several sheets it is."""

_NOTE_PITCH = 8.3


def compose_pocket(context: SheetContext, width: float = 74.25, height: float = 105.0) -> Sheet:
    """Eight panels a folded sheet, as pages in reading order; ``impose.fold`` lays them on paper."""
    inner = width - 2 * MARGIN

    def room(sheets: int) -> float:
        return height - 2 * MARGIN - HEAD - HEAD_AIR - (_FOOT if sheets > 1 else 0.0)

    on_back = _has_room_on_back(context, width, height)
    fewest = fewest_rule_panels(context, room(2), inner, with_pointers=not on_back)
    folds = plan_folds(context, room, inner, fewest)
    canvases: list[Canvas] = []
    for number, panels in enumerate(folds, start=1):
        fold = Fold(number, len(folds))
        canvases.append(cover_panel(_canvas(context, PhaseTheme.PLAIN, width, height), context, fold))
        inside = [_steps_panel(context, panel, width, height) for panel in panels]
        left = INNER_PANELS - len(inside)
        rules = rule_panels(context, room(len(folds)), inner, left, with_pointers=not on_back)
        drawn = [draw(_canvas(context, theme, width, height)) for theme, draw in rules]
        notes = INNER_PANELS - len(inside) - len(drawn)
        inside += [_notes_panel(context, width, height) for _ in range(notes)] + drawn
        for canvas in inside:
            _foot(canvas, context, fold)
        canvases += inside
        back = _canvas(context, PhaseTheme.PLAIN, width, height)
        canvases.append(back_panel(back, context, fold, with_pointers=on_back))
    protocol = context.protocol
    title = f"{protocol.code} {context.wording.content(f'{protocol.id}/title')}"
    return finished_sheet(context, "pocket-checklist", title, canvases, protocol=protocol)


def _has_room_on_back(context: SheetContext, width: float, height: float) -> bool:
    """Whether the lines on local documents, if there are any, leave room for the control text."""
    if not context.protocol.pointers:
        return True
    trial = _canvas(context, PhaseTheme.PLAIN, width, height)
    return not back_panel(trial, context, Fold(1, 1), with_pointers=True).overflows


def _canvas(context: SheetContext, theme: PhaseTheme, width: float, height: float) -> Canvas:
    return Canvas(width, height, context, style_of(theme, context.tone), 1.0, MARGIN)


def _steps_panel(context: SheetContext, panel: PanelRows, width: float, height: float) -> Canvas:
    canvas = _canvas(context, panel.phase.theme, width, height)
    message = phase_message(context, panel.phase)
    top = panel_head(canvas, context, phase_title(context, panel.phase), message)
    inner = width - 2 * MARGIN
    tops: list[float] = []
    y = top
    for row in panel.rows:
        tops.append(y)
        draw_ground(canvas, row, y, inner)
        y += row.height
    with canvas.group(structure=Structure.LIST):
        for row, row_top in zip(panel.rows, tops, strict=True):
            draw_row(canvas, context, row, row_top, inner)
    with canvas.artefact():
        for row, below, foot in zip(panel.rows, (*panel.rows[1:], None), (*tops[1:], y), strict=True):
            if isinstance(row, StepRow) and (below is None or isinstance(below, StepRow)):
                canvas.line(MARGIN, foot, MARGIN + inner, foot, canvas.style.line, 0.2)
    return canvas


def _notes_panel(context: SheetContext, width: float, height: float) -> Canvas:
    canvas = _canvas(context, PhaseTheme.PLAIN, width, height)
    y = panel_head(canvas, context, context.wording.fixed("notes")) + _NOTE_PITCH
    with canvas.artefact():
        while y <= height - MARGIN - _FOOT:
            canvas.line(MARGIN, y, width - MARGIN, y, canvas.style.line, 0.2)
            y += _NOTE_PITCH
    return canvas


def _foot(canvas: Canvas, context: SheetContext, fold: Fold) -> None:
    """Which of several sheets a panel belongs to."""
    if fold.count == 1:
        return
    code = context.wording.code(context.protocol.code)
    canvas.text(
        f"{code} · {fold.words(context)}",
        Lettering(TypeRole.CONTROL, canvas.face(600), 8, floor=7),
        TextPlace(
            MARGIN,
            canvas.height - MARGIN,
            canvas.width - 2 * MARGIN,
            lines=1,
            align=Align.END,
            anchor=Anchor.BOTTOM,
        ),
    )
