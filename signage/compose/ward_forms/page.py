"""The pages of the ward's forms: margins, title, fields to write in, columns, foot."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.papers import Paper
from signage.compose.parts import packed, ruler
from signage.compose.theme import style_of
from signage.compose.typesetting import Room, fit, line_width
from signage.compose.ward_forms.context import FormContext
from signage.drawing.marks import Structure
from signage.drawing.roles import TypeRole
from signage.model.choices import PhaseTheme

MARGIN = 12.0
FOOT = 14.0
HEAD_ROW = 9.0
"""Heights in millimetres: of the foot, and of the row that names the columns."""

_TITLE, _PURPOSE, _FIELD = 9.0, 10.0, 10.0


@dataclass(frozen=True)
class Column:
    """A column of a table: its head, where it begins and how wide it is, in millimetres."""

    head: str
    x: float
    width: float
    is_box: bool = False


def columns_of(width: float, parts: Sequence[tuple[str, float, bool]]) -> tuple[Column, ...]:
    """Columns one beside the other; each has a share of the width, by its weight."""
    total = sum(weight for _, weight, _ in parts)
    columns, x = [], MARGIN
    for head, weight, is_box in parts:
        share = width * weight / total
        columns.append(Column(head, x, share, is_box))
        x += share
    return tuple(columns)


def form_canvas(context: FormContext, paper: Paper) -> Canvas:
    """An empty page."""
    style = style_of(PhaseTheme.PLAIN, context.tone)
    return Canvas(paper.width, paper.height, context, style, 0.85, MARGIN)


def draw_title(canvas: Canvas, context: FormContext, title: str, purpose: str, message: str) -> float:
    """The title with what it is about at its end, and a sentence below; returns the y below them."""
    width = canvas.width - 2 * MARGIN
    room = min(width * 0.5, line_width(context.about, canvas.face(600), 12) + 1) if context.about else 0.0
    with canvas.group(structure=Structure.HEADING_1):
        canvas.ink_line(
            title,
            Lettering(TypeRole.TITLE, canvas.face(700), 21, floor=13),
            TextPlace(MARGIN, MARGIN + _TITLE / 2, width - room - 3, height=_TITLE),
        )
    if context.about:
        canvas.text(
            context.about,
            Lettering(TypeRole.OVER, canvas.face(600), 12, floor=8),
            TextPlace(
                MARGIN + width - room,
                MARGIN + _TITLE / 2,
                room,
                height=_TITLE,
                lines=2,
                align=Align.END,
                anchor=Anchor.MIDDLE,
            ),
        )
    canvas.text(
        purpose,
        Lettering(TypeRole.NOTE, canvas.face(is_body=True), 10.5, floor=8.5),
        TextPlace(MARGIN, MARGIN + _TITLE + 1.8, width, height=_PURPOSE),
        message=message,
    )
    return MARGIN + _TITLE + _PURPOSE + 1.5


def draw_fields(canvas: Canvas, labels: Sequence[str], y: float) -> float:
    """Labels with lines to write on, side by side; returns the y below them."""
    whole = canvas.width - 2 * MARGIN
    share = whole / len(labels)
    for index, label in enumerate(labels):
        x = MARGIN + index * share
        draw_field(canvas, label, x, y + _FIELD - 2.5, share - 5)
    return y + _FIELD


def draw_field(canvas: Canvas, label: str, x: float, baseline: float, width: float) -> None:
    """A label and a line to write on, as wide as both together."""
    face = canvas.face(600)
    found = fit(label, face, 9.5, 7.5, Room(width * 0.6, lines=1))
    room = line_width(label, face, found.points) + 0.6
    canvas.text(
        label,
        Lettering(TypeRole.FIELD, face, 9.5, floor=7.5),
        TextPlace(x, baseline + 0.4, room, lines=1, anchor=Anchor.BOTTOM),
    )
    with canvas.artefact():
        canvas.line(x + room + 1.5, baseline, x + width, baseline, None, 0.3, has_butt_caps=True)


def draw_heads(canvas: Canvas, columns: Sequence[Column], y: float) -> float:
    """The names of the columns over a rule; returns the y of the rule."""
    for column in columns:
        if column.head:
            canvas.text(
                column.head,
                Lettering(TypeRole.CONTROL_HEAD, canvas.face(700), 9, floor=7),
                TextPlace(
                    column.x,
                    y + HEAD_ROW - 1.4,
                    column.width - 1.5,
                    height=HEAD_ROW - 0.5,
                    lines=2,
                    align=Align.CENTRE if column.is_box else Align.START,
                    anchor=Anchor.BOTTOM,
                ),
            )
    canvas.line(MARGIN, y + HEAD_ROW, canvas.width - MARGIN, y + HEAD_ROW, None, 0.5, has_butt_caps=True)
    return y + HEAD_ROW


def draw_cell(
    canvas: Canvas, text: str, column: Column, y: float, height: float, *, weight: int = 400
) -> None:
    """A text in a row, on at most two lines."""
    if text:
        canvas.text(
            text,
            Lettering(TypeRole.ROW, canvas.face(weight), 10, floor=7.5),
            TextPlace(
                column.x, y + height / 2, column.width - 3, height=height - 1, lines=2, anchor=Anchor.MIDDLE
            ),
        )


def draw_form_foot(
    canvas: Canvas, context: FormContext, title: str, page: int, pages: int, *, is_written_on: bool = True
) -> None:
    """What it is, of which day, which page, and the ruler; on what is written on, what must not be."""
    wording = context.wording
    top = canvas.height - MARGIN - FOOT + 3
    canvas.line(MARGIN, top, canvas.width - MARGIN, top, None, 0.4, has_butt_caps=True)
    items = [
        title,
        context.ward,
        wording.date(context.made_on),
        wording.fixed("page-of", page=wording.number(page), pages=wording.number(pages)),
        wording.name,
        wording.fixed("form-no-names") if is_written_on else "",
    ]
    width = canvas.width - 2 * MARGIN - 72
    face = canvas.face()
    y = top + 1.6
    for line in packed([item for item in items if item], face, 7.5, width)[:3]:
        y = canvas.text(
            line, Lettering(TypeRole.CONTROL, face, 7.5, floor=7), TextPlace(MARGIN, y, width, lines=1)
        )
    ruler(canvas, context, canvas.width - MARGIN - 66, top + 6, "after")
