"""The ruled rows at the foot of a step card: reason, caution, and the rule that stops the work."""

from __future__ import annotations

from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.lettering import Anchor, Lettering, TextPlace
from signage.compose.step_card.card_words import LEAST_RULED, RuledRow, row_face
from signage.compose.step_card.measures import MARGIN, CardSet
from signage.drawing.marks import Structure
from signage.drawing.roles import GroupRole, TypeRole


def draw_ruled_row(canvas: Canvas, context: SheetContext, row: RuledRow, y: float, cards: CardSet) -> None:
    """The rule that stops the work has its word on a block of ink, as on every other sheet."""
    width, middle = cards.inner_width, y + row.height / 2
    is_stop = row.label == "stop"
    with canvas.artefact():
        canvas.line(MARGIN, y, MARGIN + width, y, canvas.style.line, canvas.style.line_width(0.3))
        if is_stop:
            canvas.rect(
                MARGIN, y + 0.5, row.label_width - 1.5, row.height - 1.0, canvas.style.ink, radius=0.8
            )
    with canvas.group(GroupRole.LABELLED, row.role.value, structure=Structure.PARAGRAPH):
        canvas.text(
            context.wording.fixed(row.label),
            Lettering(
                TypeRole.LABEL, canvas.face(700), 9.5, floor=7, colour=canvas.style.paper if is_stop else None
            ),
            TextPlace(
                MARGIN + (1.5 if is_stop else 0.0),
                middle,
                row.label_width - (4.5 if is_stop else 1.0),
                height=row.height - 0.6,
                lines=1,
                anchor=Anchor.MIDDLE,
            ),
            message=f"interface/{row.label}",
        )
        canvas.text(
            row.text,
            Lettering(row.role, row_face(context, row.role), 10, floor=LEAST_RULED),
            TextPlace(
                MARGIN + row.label_width,
                middle,
                width - row.label_width,
                height=row.height - 0.6,
                lines=row.lines,
                anchor=Anchor.MIDDLE,
            ),
            message=row.message,
        )
