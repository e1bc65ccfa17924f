"""The pocket checklist: eight panels of a quarter by a half sheet, to be folded with one slit.

1 cover · 2–6 the steps, phase by phase · 7 the stop rule and what goes where · 8 code and control text.
Panels that no step needs become lines for notes.
"""

from __future__ import annotations

from dataclasses import dataclass

from signage.compose import parts
from signage.compose.arrangement import Kind, NumberedStep, numbered_steps
from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext, container_message
from signage.compose.pocket_covers import back_panel, cover_panel, rule_panel
from signage.compose.step_card import draw_band
from signage.compose.theme import style_of
from signage.compose.typesetting import line_width
from signage.compose.zones import draw_pattern, pattern_of
from signage.drawing.marks import Sheet, Structure
from signage.ground.errors import RefusedError
from signage.model.library import Fixture, Phase

MARGIN = 5.0
HEAD = 9.0
ROW = 8.3
ZONE_ROW = 5.8
STEP_PANELS = 5
"""Panels 2 to 6."""


@dataclass(frozen=True)
class PanelRows:
    """The steps of one panel, and whether each zone row above a step repeats a zone begun before."""

    phase: Phase
    steps: tuple[NumberedStep, ...]
    begins_phase: bool


def compose_pocket(context: SheetContext, width: float = 74.25, height: float = 105.0) -> Sheet:
    """Eight panels as pages in reading order; ``impose.fold`` lays them on paper."""
    rows = _panel_rows(context, height)
    canvases = [cover_panel(_canvas(context, "plain", width, height), context)]
    canvases += [_steps_panel(context, panel, width, height) for panel in rows]
    while len(canvases) < 6:
        canvases.append(_notes_panel(context, width, height))
    rule = next(
        (phase for phase in context.protocol.phases if phase.rule_kind == "stop" and phase.rule), None
    )
    if rule is None:
        canvases.append(_notes_panel(context, width, height))
    else:
        canvases.append(rule_panel(_canvas(context, "doff", width, height), context, rule))
    canvases.append(back_panel(_canvas(context, "plain", width, height), context))
    wording = context.wording
    return Sheet(
        kind="pocket-checklist",
        protocol=context.protocol.id,
        locale=wording.tag,
        title=f"{context.protocol.code} {wording.content(f'{context.protocol.id}/title')}",
        paper="",
        revision=context.revision,
        is_right_to_left=wording.is_right_to_left,
        pages=tuple(canvas.page() for canvas in canvases),
        file_stem=f"{context.protocol.id}-pocket-checklist-{wording.tag}",
        mark=context.mark.value,
        fit=tuple(step for canvas in canvases for step in canvas.fit_steps),
        overflows=tuple(overflow for canvas in canvases for overflow in canvas.overflows),
    )


def _canvas(context: SheetContext, theme: str, width: float, height: float) -> Canvas:
    return Canvas(width, height, context.wording, style_of(theme, context.tone), 1.0, MARGIN)


def _panel_rows(context: SheetContext, height: float) -> list[PanelRows]:
    """Steps dealt to panels: each phase starts a new panel, its panels are filled evenly."""
    room = height - 2 * MARGIN - HEAD - 2
    panels: list[PanelRows] = []
    for phase in context.protocol.phases:
        steps = numbered_steps(context.protocol, phase)
        count = _panels_needed(steps, room)
        even = -(-len(steps) // count)
        share = _largest_share(steps, room, even)
        for start in range(0, len(steps), share):
            panels.append(PanelRows(phase, steps[start : start + share], start == 0))  # noqa: PERF401 - reads better
    if len(panels) > STEP_PANELS:
        raise RefusedError(
            f"The pocket checklist of {context.protocol.id} needs {len(panels)} panels of steps "
            f"and has {STEP_PANELS}. Print step cards for this protocol, or divide it."
        )
    return panels


def _height_of(steps: tuple[NumberedStep, ...], is_first: bool) -> float:
    zones = sum(
        1 for index, step in enumerate(steps) if (step.zone != steps[index - 1].zone if index else is_first)
    )
    return len(steps) * ROW + zones * ZONE_ROW


def _largest_share(steps: tuple[NumberedStep, ...], room: float, at_least: int) -> int:
    share = at_least
    while share < len(steps) and all(
        _height_of(steps[start : start + share + 1], start == 0) <= room
        for start in range(0, len(steps), share + 1)
    ):
        share += 1
    return share


def _panels_needed(steps: tuple[NumberedStep, ...], room: float) -> int:
    count = 1
    while True:
        share = -(-len(steps) // count)
        if all(
            _height_of(steps[start : start + share], start == 0) <= room
            for start in range(0, len(steps), share)
        ):
            return count
        count += 1


def _steps_panel(context: SheetContext, panel: PanelRows, width: float, height: float) -> Canvas:
    canvas = _canvas(context, panel.phase.theme, width, height)
    title = context.wording.content(f"{context.protocol.id}/phase/{panel.phase.id}/title")
    y = panel_head(canvas, context, title)
    inner = width - 2 * MARGIN
    before = None if panel.begins_phase else panel.steps[0].zone
    with canvas.group(structure=Structure.LIST):
        for numbered in panel.steps:
            if numbered.zone != before:
                _zone_row(canvas, context, numbered.zone, y, inner)
                y += ZONE_ROW
                before = numbered.zone
            _step_row(canvas, context, numbered, y, inner)
            y += ROW
    return canvas


def panel_head(canvas: Canvas, context: SheetContext, title: str) -> float:
    """The band at the head of a panel with title and draft tag; returns where the rows begin."""
    inner = canvas.width - 2 * MARGIN
    middle = MARGIN + HEAD / 2
    colour = draw_band(canvas, canvas.style, MARGIN, MARGIN, inner, HEAD)
    tag = parts.draft_tag(
        canvas, context, MARGIN + inner - 2, middle, HEAD - 4.6, 7.5, colour, is_at_end=True
    )
    with canvas.group(structure=Structure.HEADING_2):
        canvas.text(
            title,
            MARGIN + 2.4,
            middle,
            inner - tag - 6,
            13,
            "panel-title",
            canvas.face(700),
            floor=9,
            lines=1,
            valign="middle",
            colour=colour,
        )
    return MARGIN + HEAD + 2


def _zone_row(canvas: Canvas, context: SheetContext, zone: str, y: float, width: float) -> None:
    style = canvas.style
    pattern = pattern_of(context.ward.zones[zone])
    draw_pattern(canvas, pattern, MARGIN, y, 9, ZONE_ROW, 0.7)
    with canvas.artefact():
        canvas.rect(MARGIN, y, 9, ZONE_ROW, None, style.ink, 0.3)
        canvas.line(MARGIN, y, MARGIN + width, y, style.ink, 0.5)
    canvas.text(
        context.zone_name(zone),
        MARGIN + 11,
        y + ZONE_ROW / 2 + 0.2,
        width - 12,
        9.5,
        "zone",
        canvas.face(700),
        floor=8,
        lines=1,
        valign="middle",
    )


def _step_row(canvas: Canvas, context: SheetContext, numbered: NumberedStep, y: float, width: float) -> None:
    style, step, wording = canvas.style, numbered.step, context.wording
    is_rub = numbered.is_hygiene and numbered.kind is not Kind.BIG
    with canvas.group(
        "step",
        step.id,
        structure=Structure.ITEM,
        box=canvas.box(MARGIN, y, width, ROW),
        number=numbered.number,
        zone=numbered.zone,
        kind="row",
    ):
        if is_rub:
            with canvas.artefact():
                canvas.rect(MARGIN, y, width, ROW, style.care_tint)
        parts.tick_box(canvas, MARGIN + 1.2, y + (ROW - 4) / 2, 4)
        _row_number(canvas, context, numbered, y)
        x = MARGIN + 14.6
        end = MARGIN + width - 1
        for container in context.containers(step):
            parts.container_tag(canvas, context, container, end - 5.4, y + 1.3, 5, ROW - 2.6, with_word=False)
            end -= 7.4
            name = context.container_name(container)
            if name:
                end -= _container_name(canvas, context, container, name, end, y)
        words = wording.step_text(context.protocol, step, "text") or ""
        time = context.seconds(step.action)
        if time and step.action.verb in {"hygiene", "mat", "wait", "disinfect"} and "{time}" not in step.text:
            face = canvas.face(600)
            time_width = line_width(time, face, 9.5) + 0.4
            canvas.text(
                time,
                end - time_width,
                y + ROW / 2,
                time_width,
                9.5,
                "time",
                face,
                lines=1,
                valign="middle",
                align="end",
                colour=style.care_deep,
            )
            end -= time_width + 1.2
        canvas.text(
            words,
            x,
            y + ROW / 2,
            end - x,
            9.5,
            "row",
            canvas.face(400 if is_rub else 600, leading=1.08 if wording.script == "Latn" else 1.14),
            floor=9,
            lines=2,
            valign="middle",
            message=f"{context.protocol.id}/{step.id}/text",
        )
        with canvas.artefact():
            canvas.line(MARGIN, y + ROW, MARGIN + width, y + ROW, style.line, 0.2)


def _container_name(
    canvas: Canvas, context: SheetContext, container: Fixture, name: str, end: float, y: float
) -> float:
    """The name of a bin without a letter, before its silhouette; returns the width it takes."""
    face, widest = canvas.face(400, leading=1.0), 15.0
    width = min(line_width(name, face, 8.0) + 0.4, widest)
    canvas.text(
        name,
        end - width,
        y + ROW / 2,
        width,
        8.0,
        "container-name",
        face,
        floor=7,
        lines=2,
        valign="middle",
        align="end",
        message=container_message(context.ward, container),
    )
    return width + 1.2


def _row_number(canvas: Canvas, context: SheetContext, numbered: NumberedStep, y: float) -> None:
    number = context.wording.number(numbered.number)
    colour = canvas.style.ink
    if numbered.step.critical:
        with canvas.group("critical", numbered.step.id, structure=Structure.ARTEFACT):
            canvas.rect(MARGIN + 6.4, y + 1, 7, ROW - 2, canvas.style.ink, radius=0.6)
        colour = canvas.style.paper
    canvas.ink_line(
        number, MARGIN + 6.4, 7, y + ROW / 2, 11, "number", canvas.face(700), colour=colour, align="center"
    )


def _notes_panel(context: SheetContext, width: float, height: float) -> Canvas:
    canvas = _canvas(context, "plain", width, height)
    y = panel_head(canvas, context, context.wording.fixed("notes")) + ROW
    with canvas.artefact():
        while y <= height - MARGIN - 1:
            canvas.line(MARGIN, y, width - MARGIN, y, canvas.style.line, 0.2)
            y += ROW
    return canvas
