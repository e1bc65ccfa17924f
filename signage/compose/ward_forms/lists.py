"""Lists of copies with boxes: what to take down, and what to look at."""

from __future__ import annotations

from collections.abc import Sequence

from signage.compose.canvas import Canvas
from signage.compose.envelope import finished_sheet
from signage.compose.lettering import Lettering, TextPlace
from signage.compose.papers import Paper
from signage.compose.parts import tick_box
from signage.compose.ward_forms.context import Entry, FormContext
from signage.compose.ward_forms.page import (
    FOOT,
    HEAD_ROW,
    MARGIN,
    Column,
    columns_of,
    draw_cell,
    draw_fields,
    draw_form_foot,
    draw_heads,
    draw_title,
    form_canvas,
)
from signage.drawing.marks import Sheet, Structure
from signage.drawing.roles import TypeRole

_ROW = 12.0
_BOX = 6.0
_OTHERS = 26.0
"""Heights: a row, a box to tick, and the lines for what is on no list."""

AUDIT_BOXES = ("present", "revision", "readable", "clean", "place")
"""What is looked at on each copy; columns of the form and of its table are called so."""


def compose_recall(context: FormContext, paper: Paper) -> Sheet:
    """A row and a box for each copy that must come down, in walking order."""
    word = context.wording.fixed
    parts = (
        ("", 0.5, True),
        (word("form-number"), 1.5, False),
        (word("form-where"), 2.7, False),
        (word("form-sheet"), 3.1, False),
        ("", 2.0, False),
        (word("form-remark"), 2.2, False),
    )
    return _compose_list(context, paper, "recall", parts)


def compose_audit(context: FormContext, paper: Paper) -> Sheet:
    """A row for each mounted copy with a box for each thing to look at; below, lines for other sheets."""
    word = context.wording.fixed
    parts = (
        (word("form-number"), 2.3, False),
        (word("form-where"), 3.6, False),
        (word("form-sheet"), 4.6, False),
        (word("page-code"), 2.3, False),
        *((word(f"audit-{name}"), 1.5, True) for name in AUDIT_BOXES),
        (word("form-remark"), 4.0, False),
    )
    return _compose_list(context, paper, "audit", parts, has_others=True)


def _compose_list(
    context: FormContext,
    paper: Paper,
    name: str,
    parts: Sequence[tuple[str, float, bool]],
    *,
    has_others: bool = False,
) -> Sheet:
    columns = columns_of(paper.width - 2 * MARGIN, parts)
    title = context.wording.fixed(f"{name}-title")
    first = MARGIN + 30.5 + HEAD_ROW
    bottom = paper.height - MARGIN - FOOT
    per_page = int((bottom - first) / _ROW)
    kept_free = -(-_OTHERS // _ROW) if has_others else 0
    pages = _pages(context.entries, per_page, int(kept_free))
    canvases = []
    for number, entries in enumerate(pages, start=1):
        canvas = form_canvas(context, paper)
        y = draw_title(
            canvas, context, title, context.wording.fixed(f"{name}-purpose"), f"interface/{name}-purpose"
        )
        y = draw_fields(canvas, [context.wording.fixed("form-day"), context.wording.fixed("form-role")], y)
        y = draw_heads(canvas, columns, y)
        with canvas.group(structure=Structure.LIST):
            for entry in entries:
                _draw_row(canvas, context, entry, columns, y)
                y += _ROW
        if has_others and number == len(pages):
            _draw_others(canvas, context, bottom - _OTHERS)
        draw_form_foot(canvas, context, title, number, len(pages))
        canvases.append(canvas)
    kind = f"{name}-list" if name == "recall" else f"{name}-form"
    return finished_sheet(context, kind, title, canvases, protocol=context.protocol, paper=paper.name)


def _pages(entries: Sequence[Entry], per_page: int, kept_free: int) -> list[Sequence[Entry]]:
    """The rows of each page; the last one leaves room for what is kept free."""
    pages = [entries[start : start + per_page] for start in range(0, len(entries), per_page)] or [()]
    if len(pages[-1]) > per_page - kept_free:
        pages[-1:] = [pages[-1][: per_page - kept_free], pages[-1][per_page - kept_free :]]
    return pages


def _draw_row(
    canvas: Canvas, context: FormContext, entry: Entry, columns: Sequence[Column], y: float
) -> None:
    texts = iter((context.wording.code(entry.number), entry.where, entry.sheet, entry.told, ""))
    with canvas.group(structure=Structure.ITEM):
        for column in columns:
            if column.is_box:
                tick_box(canvas, column.x + (column.width - 1.5 - _BOX) / 2, y + (_ROW - _BOX) / 2, _BOX)
                continue
            text = next(texts)
            draw_cell(canvas, text, column, y, _ROW, weight=700 if text and entry.number in text else 400)
    with canvas.artefact():
        canvas.line(
            MARGIN,
            y + _ROW,
            canvas.width - MARGIN,
            y + _ROW,
            canvas.style.line,
            canvas.style.line_width(0.25),
            has_butt_caps=True,
        )


def _draw_others(canvas: Canvas, context: FormContext, y: float) -> None:
    canvas.text(
        context.wording.fixed("audit-others"),
        Lettering(TypeRole.CONTROL_HEAD, canvas.face(700), 9.5, floor=8),
        TextPlace(MARGIN, y, canvas.width - 2 * MARGIN, lines=1),
        message="interface/audit-others",
    )
    with canvas.artefact():
        for line in (1, 2):
            level = y + 3 + line * 9.5
            canvas.line(MARGIN, level, canvas.width - MARGIN, level, None, 0.3, has_butt_caps=True)
