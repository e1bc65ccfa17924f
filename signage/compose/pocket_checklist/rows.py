"""The rows of a pocket checklist: a band for each phase that shares a panel, zones, steps to tick.

A row is as high as its words need, and never lower than the pitch of the sheet.
"""

from __future__ import annotations

from dataclasses import dataclass

from signage.compose import parts
from signage.compose.arrangement import Kind, NumberedStep
from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext, container_message
from signage.compose.furniture.band_form import draw_head_band
from signage.compose.hand_technique.layout import shared_seconds
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.theme import style_of
from signage.compose.typesetting import Face, Fitted, Room, fit, line_width
from signage.compose.word_stack import dashed_frame
from signage.compose.zones import Pattern, draw_pattern, pattern_of
from signage.drawing.marks import Structure
from signage.drawing.roles import GroupRole, TypeRole
from signage.model.choices import ActionVerb
from signage.model.library import Fixture, Phase, Step

MARGIN = 5.0
WORDS_X = MARGIN + 14.6
ROW_POINTS, LEAST_ROW_POINTS = 9.5, 9.0
_CONDITION_POINTS = 9.0
_FRAME_PAD, _FRAME_SCALE = 1.0, 0.5
_NAME_POINTS, _WIDEST_NAME = 9.0, 17.0
_AIR = 1.5
"""Above and below the ink of a row together."""

_TIMED = frozenset(
    {ActionVerb.HYGIENE, ActionVerb.MAT, ActionVerb.WAIT, ActionVerb.DISINFECT, ActionVerb.WIPE}
)


@dataclass(frozen=True)
class StepRow:
    """A step to tick."""

    phase: Phase
    numbered: NumberedStep
    height: float


@dataclass(frozen=True)
class ZoneRow:
    """Where the steps below it are done. ``name`` says so if the zone began on an earlier panel."""

    zone: str
    name: str
    height: float


@dataclass(frozen=True)
class PhaseRow:
    """The head of a phase that begins in the middle of a panel."""

    phase: Phase
    height: float


Row = StepRow | ZoneRow | PhaseRow


def phase_message(context: SheetContext, phase: Phase) -> str:
    """The context of the title of a phase."""
    return f"{context.protocol.id}/phase/{phase.id}/title"


def phase_title(context: SheetContext, phase: Phase) -> str:
    """The title of a phase, with the time that its movements share."""
    title = context.wording.content(phase_message(context, phase))
    seconds = shared_seconds(context.protocol, phase)
    return title if seconds is None else f"{title} · {context.wording.seconds(seconds)}"


def zone_face(context: SheetContext) -> Face:
    """The face of the names of zones."""
    return Face.of(context.wording, 700, leading=1.08)


def zone_fit(context: SheetContext, zone: str, name: str, width: float) -> Fitted:
    """One line, smaller before two."""
    room = width - _zone_x(context, zone) + MARGIN - 1
    face = zone_face(context)
    one = fit(name, face, 9.5, 8, Room(room, lines=1))
    return fit(name, face, 9.5, 8, Room(room, lines=3)) if one.excess else one


def _zone_x(context: SheetContext, zone: str) -> float:
    """Where the name begins: a blank zone has no swatch, which would look like a box to tick."""
    is_blank = pattern_of(context.ward.zones[zone]) is Pattern.BLANK
    return MARGIN + (1.2 if is_blank else 11.0)


def row_face(context: SheetContext, numbered: NumberedStep) -> Face:
    """Rubbing hands between two acts is lighter than the acts."""
    wording = context.wording
    leading = 1.08 if wording.script == "Latn" else 1.14
    return Face.of(wording, 400 if _is_rub(numbered) else 600, leading=leading)


def _is_rub(numbered: NumberedStep) -> bool:
    return numbered.is_hygiene and numbered.kind is not Kind.BIG


def time_of(context: SheetContext, step: Step) -> str | None:
    """The time at the end of a row, unless its words say it."""
    time = context.seconds(step.action)
    return time if time and step.action.verb in _TIMED and "{time}" not in step.text else None


def _time_face(context: SheetContext) -> Face:
    return Face.of(context.wording, 600)


def _name_face(context: SheetContext) -> Face:
    return Face.of(context.wording, leading=1.0)


def words_width(context: SheetContext, step: Step, width: float) -> float:
    """What containers, their names and the time leave for the words of a row."""
    taken = 0.0
    for container in context.containers(step):
        name = context.container_name(container)
        taken += 7.4 + (_name_width(context, name) + 1.2 if name else 0.0)
    time = time_of(context, step)
    if time:
        taken += line_width(time, _time_face(context), ROW_POINTS) + 1.6
    return width - WORDS_X + MARGIN - 1 - taken


def _name_width(context: SheetContext, name: str) -> float:
    return min(line_width(name, _name_face(context), _NAME_POINTS) + 0.4, _WIDEST_NAME)


def words_fit(context: SheetContext, numbered: NumberedStep, width: float) -> Fitted:
    """The words of a step in two lines of a readable size, or in as many as they need."""
    words = context.wording.step_text(context.protocol, numbered.step, "text") or ""
    room = words_width(context, numbered.step, width)
    face = row_face(context, numbered)
    found = fit(words, face, ROW_POINTS, LEAST_ROW_POINTS, Room(room, lines=2))
    return fit(words, face, LEAST_ROW_POINTS, LEAST_ROW_POINTS, Room(room)) if found.excess else found


def condition_fit(context: SheetContext, numbered: NumberedStep, width: float) -> Fitted | None:
    """When a conditional step is done: in a dashed frame above its words, as on other sheets."""
    words = context.condition_words(numbered.step)
    if words is None:
        return None
    room = Room(words_width(context, numbered.step, width) - 2 * _FRAME_PAD)
    return fit(words, _time_face(context), _CONDITION_POINTS, _CONDITION_POINTS, room)


def step_need(context: SheetContext, numbered: NumberedStep, width: float) -> float:
    """The height that the words of a row need."""
    words = words_fit(context, numbered, width).measured
    height = max(words.ink_height + _AIR, words.height + 0.6)
    condition = condition_fit(context, numbered, width)
    if condition is not None:
        height += condition.measured.height + 3.2
    for container in context.containers(numbered.step):
        name = context.container_name(container)
        if name:
            height = max(height, _fit_name(context, name).measured.ink_height + 0.8)
    return height


def zone_need(context: SheetContext, zone: str, name: str, width: float) -> float:
    """The height that the name of a zone needs."""
    found = zone_fit(context, zone, name, width).measured
    return max(found.ink_height + _AIR, found.height + 0.9)


def _fit_name(context: SheetContext, name: str) -> Fitted:
    return fit(name, _name_face(context), _NAME_POINTS, _NAME_POINTS, Room(_WIDEST_NAME))


def draw_row(canvas: Canvas, context: SheetContext, row: Row, y: float, width: float) -> None:
    """One row without the line below it."""
    if isinstance(row, StepRow):
        _draw_step(canvas, context, row, y, width)
    elif isinstance(row, ZoneRow):
        _draw_zone(canvas, context, row, y, width)
    else:
        _draw_phase(canvas, context, row, y, width)


def draw_ground(canvas: Canvas, row: Row, y: float, width: float) -> None:
    """The tint of hand hygiene: painted before all lines, which it would half cover."""
    if isinstance(row, StepRow) and _is_rub(row.numbered):
        with canvas.artefact():
            canvas.rect(MARGIN, y, width, row.height, canvas.style.care_tint)


def _draw_phase(canvas: Canvas, context: SheetContext, row: PhaseRow, y: float, width: float) -> None:
    style = style_of(row.phase.theme, context.tone)
    height = row.height - 1.6
    colour = draw_head_band(canvas, style, MARGIN, y + 1.0, width, height)
    message = phase_message(context, row.phase)
    with canvas.group(structure=Structure.HEADING_2):
        canvas.text(
            phase_title(context, row.phase),
            Lettering(TypeRole.PANEL_TITLE, canvas.face(700), 11, floor=7, colour=colour),
            TextPlace(
                MARGIN + 2.4,
                y + 1.0 + height / 2,
                width - 4.8,
                height=height - 2.4,
                lines=1,
                anchor=Anchor.MIDDLE,
            ),
            message=message,
        )


def _draw_zone(canvas: Canvas, context: SheetContext, row: ZoneRow, y: float, width: float) -> None:
    style, pattern = canvas.style, pattern_of(context.ward.zones[row.zone])
    if pattern is not Pattern.BLANK:
        draw_pattern(canvas, pattern, MARGIN, y, 9, row.height, 0.7)
        with canvas.artefact():
            canvas.rect(MARGIN, y, 9, row.height, None, style.ink, 0.3)
    with canvas.artefact():
        canvas.line(MARGIN, y, MARGIN + width, y, style.ink, 0.5)
    found = zone_fit(context, row.zone, row.name, width)
    x = _zone_x(context, row.zone)
    canvas.text(
        row.name,
        Lettering(TypeRole.ZONE, zone_face(context), found.points, wanted=9.5),
        TextPlace(
            x,
            y + row.height / 2 + 0.2,
            width - x + MARGIN - 1,
            height=row.height - 0.9,
            lines=3,
            anchor=Anchor.MIDDLE,
        ),
        message=f"ward/{context.ward.id}/zone/{row.zone}",
    )


def _draw_step(canvas: Canvas, context: SheetContext, row: StepRow, y: float, width: float) -> None:
    numbered, step = row.numbered, row.numbered.step
    with canvas.group(
        GroupRole.STEP,
        step.id,
        structure=Structure.ITEM,
        box=canvas.box(MARGIN, y, width, row.height),
        number=numbered.number,
        zone=numbered.zone,
        kind="row",
    ):
        middle = y + row.height / 2
        parts.tick_box(canvas, MARGIN + 1.2, middle - 2, 4)
        _draw_number(canvas, context, numbered, y, row.height)
        _draw_end(canvas, context, step, middle, MARGIN + width - 1)
        _draw_words(canvas, context, row, y, width)


def _draw_end(canvas: Canvas, context: SheetContext, step: Step, middle: float, end: float) -> None:
    """Containers with their names, and the time before them."""
    for container in context.containers(step):
        parts.container_tag(canvas, context, container, end - 5.4, middle - 2.8, 5, 5.6, with_word=False)
        end -= 7.4
        name = context.container_name(container)
        if name:
            end -= _draw_container_name(canvas, context, container, name, end, middle)
    time = time_of(context, step)
    if time:
        face = _time_face(context)
        width = line_width(time, face, ROW_POINTS) + 0.4
        canvas.text(
            time,
            Lettering(TypeRole.TIME, face, ROW_POINTS, colour=canvas.style.care_deep),
            TextPlace(end - width, middle, width, lines=1, align=Align.END, anchor=Anchor.MIDDLE),
        )


def _draw_container_name(
    canvas: Canvas, context: SheetContext, container: Fixture, name: str, end: float, middle: float
) -> float:
    """The name of a bin without a letter, before its silhouette; returns the width it takes."""
    width = _name_width(context, name)
    canvas.text(
        name,
        Lettering(
            TypeRole.CONTAINER_NAME, _name_face(context), _fit_name(context, name).points, wanted=_NAME_POINTS
        ),
        TextPlace(end - width, middle, width, lines=3, align=Align.END, anchor=Anchor.MIDDLE),
        message=container_message(context.ward, container),
    )
    return width + 1.2


def _draw_words(canvas: Canvas, context: SheetContext, row: StepRow, y: float, width: float) -> None:
    numbered, room = row.numbered, words_width(context, row.numbered.step, width)
    top, height = y, row.height
    condition = condition_fit(context, numbered, width)
    if condition is not None:
        measured = condition.measured
        dashed_frame(
            canvas, WORDS_X, y + 0.9, measured.width + 2 * _FRAME_PAD, measured.height + 1.6, _FRAME_SCALE
        )
        foot = canvas.text(
            condition.text,
            Lettering(TypeRole.CONDITION, _time_face(context), condition.points, wanted=_CONDITION_POINTS),
            TextPlace(WORDS_X + _FRAME_PAD, y + 1.9, room - 2 * _FRAME_PAD),
            message=f"interface/{numbered.step.when}",
        )
        top = foot + 1.0
        height -= top - y
    found = words_fit(context, numbered, width)
    canvas.text(
        context.wording.step_text(context.protocol, numbered.step, "text") or "",
        Lettering(TypeRole.ROW, row_face(context, numbered), found.points, wanted=ROW_POINTS),
        TextPlace(
            WORDS_X,
            top + height / 2,
            room,
            height=height - 0.6,
            lines=max(2, len(found.measured.lines)),
            anchor=Anchor.MIDDLE,
        ),
        message=f"{context.protocol.id}/{numbered.step.told_as}/text",
    )


def _draw_number(
    canvas: Canvas, context: SheetContext, numbered: NumberedStep, y: float, height: float
) -> None:
    number = context.wording.number(numbered.number)
    colour = canvas.style.ink
    if numbered.step.critical:
        block = min(6.3, height - 1.2)
        with canvas.group(GroupRole.CRITICAL, numbered.step.id, structure=Structure.ARTEFACT):
            canvas.rect(MARGIN + 6.4, y + (height - block) / 2, 7, block, canvas.style.ink, radius=0.6)
        colour = canvas.style.paper
    canvas.ink_line(
        number,
        Lettering(TypeRole.NUMBER, canvas.face(700), 11, floor=9, colour=colour),
        TextPlace(MARGIN + 6.4, y + height / 2, 7, align=Align.CENTRE),
    )
