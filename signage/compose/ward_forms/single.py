"""Forms of one page: the notice in the place of a sheet, and the slip after an incident."""

from __future__ import annotations

from signage.compose.canvas import Canvas
from signage.compose.envelope import finished_sheet
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.papers import Paper
from signage.compose.parts import tick_box
from signage.compose.typesetting import line_width
from signage.compose.ward_forms.context import FormContext
from signage.compose.ward_forms.page import (
    MARGIN,
    draw_field,
    draw_fields,
    draw_form_foot,
    draw_title,
    form_canvas,
)
from signage.drawing.marks import Sheet, Structure
from signage.drawing.roles import TypeRole

_FRAME = 3.0
_ANSWERS = ("yes", "no", "unsure")


def compose_notice(context: FormContext, paper: Paper) -> Sheet:
    """Withdrawn, ask: in the language of the sheet that hung there, and in that of its authors below."""
    canvas = form_canvas(context, paper)
    style, width = canvas.style, paper.width - 2 * MARGIN
    with canvas.artefact():
        canvas.rect(
            MARGIN, MARGIN, width, paper.height - 2 * MARGIN - 16, style.paper, style.ink, _FRAME, radius=4
        )
    _draw_notice(canvas, context, paper.height * 0.27, 72, is_source=False)
    if not context.is_source_language:
        _draw_notice(canvas, context, paper.height * 0.62, 40, is_source=True)
    canvas.text(
        context.about,
        Lettering(TypeRole.OVER, canvas.face(600), 14, floor=9),
        TextPlace(MARGIN + 8, MARGIN + 12, width - 16, lines=2, height=14, align=Align.CENTRE),
    )
    draw_form_foot(canvas, context, context.wording.fixed("notice-title"), 1, 1, is_written_on=False)
    title = f"{context.about}: {context.wording.fixed('notice-title')}"
    return finished_sheet(
        context, "withdrawn-notice", title, [canvas], protocol=context.protocol, paper=paper.name
    )


def _draw_notice(canvas: Canvas, context: FormContext, y: float, points: float, *, is_source: bool) -> None:
    wording = context.source if is_source else context.wording
    width = canvas.width - 2 * MARGIN - 16
    role = wording.content(f"{context.protocol.id}/owner") if context.protocol else context.by_role
    language = wording.tag if is_source else None
    with canvas.group(structure=Structure.HEADING_1, language=language):
        below = canvas.text(
            wording.fixed("notice-title"),
            Lettering(TypeRole.HEADLINE, canvas.face(700, wording=wording), points, floor=points * 0.45),
            TextPlace(MARGIN + 8, y, width, lines=2, align=Align.CENTRE),
        )
    with canvas.group(structure=Structure.PARAGRAPH, language=language):
        canvas.text(
            wording.fixed("notice-why", role=role),
            Lettering(TypeRole.DETAIL, canvas.face(wording=wording), points * 0.3, floor=11),
            TextPlace(MARGIN + 12, below + 6, width - 8, align=Align.CENTRE),
        )


def compose_incident(context: FormContext, paper: Paper) -> Sheet:
    """Which step of which copy, whether the sheet was part of the cause, and what it should say."""
    canvas = form_canvas(context, paper)
    word, width = context.wording.fixed, paper.width - 2 * MARGIN
    title = word("incident-title")
    y = draw_title(canvas, context, title, word("incident-first"), "interface/incident-first")
    y = draw_fields(canvas, [word("form-day"), word("form-role")], y)
    y = draw_fields(canvas, [word("form-number"), word("form-language")], y)
    y = draw_fields(canvas, [word("incident-step")], y) + 6
    _draw_answers(canvas, context, y)
    y += 14
    canvas.text(
        word("incident-mend"),
        Lettering(TypeRole.FIELD, canvas.face(600), 9.5, floor=8),
        TextPlace(MARGIN, y, width, lines=1),
    )
    with canvas.artefact():
        for line in range(1, 5):
            level = y + 4 + line * 10
            canvas.line(MARGIN, level, MARGIN + width, level, None, 0.3, has_butt_caps=True)
    draw_field(canvas, word("incident-fixed"), MARGIN, y + 60, width)
    draw_form_foot(canvas, context, title, 1, 1)
    return finished_sheet(
        context, "incident-slip", title, [canvas], protocol=context.protocol, paper=paper.name
    )


def _draw_answers(canvas: Canvas, context: FormContext, y: float) -> None:
    """The question and three boxes, each with its word."""
    face = canvas.face(600)
    label = context.wording.fixed("incident-part")
    place = TextPlace(MARGIN, y + 3.5, 60, lines=1, anchor=Anchor.MIDDLE)
    canvas.text(label, Lettering(TypeRole.FIELD, face, 9.5, floor=7.5), place)
    x = MARGIN + max(48.0, line_width(label, face, 9.5) + 8)
    for answer in _ANSWERS:
        word = context.wording.fixed(f"incident-{answer}")
        tick_box(canvas, x, y, 7)
        room = line_width(word, canvas.face(), 10) + 1
        canvas.text(
            word,
            Lettering(TypeRole.FIELD, canvas.face(), 10),
            TextPlace(x + 9, y + 3.5, room, lines=1, anchor=Anchor.MIDDLE),
        )
        x += 9 + room + 10
