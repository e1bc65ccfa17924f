"""The first page of a trial: how to run it, which pages are which, and how to score it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.lettering import Anchor, Lettering, TextPlace
from signage.compose.papers import Paper
from signage.compose.pictures.context import PictureContext
from signage.compose.pictures.page import (
    MARGIN,
    PageCount,
    PageWords,
    draw_band,
    draw_foot,
    picture_canvas,
)
from signage.compose.typesetting import Face, Room, fit
from signage.drawing.marks import Structure
from signage.drawing.roles import TypeRole
from signage.words.wording import Wording

_RULES = ("readers", "forms", "number", "help", "write", "rate", "type", "audit")
_POINTS = 13.0
_NUMBER = 10.0


@dataclass(frozen=True)
class PageRange:
    """Pages of a document, first and last counted from 1."""

    first: int
    last: int

    def words(self, wording: Wording) -> str:
        """Such as ``2–7``, or one number."""
        if self.first == self.last:
            return wording.number(self.first)
        return f"{wording.number(self.first)}–{wording.number(self.last)}"


def draw_guide(
    context: PictureContext, paper: Paper, ranges: Mapping[str, PageRange], file: str, total: int
) -> Canvas:
    """``ranges`` are the pages of each form and of the key, ``file`` the table beside the document."""
    wording = context.wording
    canvas = picture_canvas(context, paper)
    words = PageWords(wording.fixed("trial-guide-title"))
    y = draw_band(canvas, context, words) + 7
    with canvas.group(structure=Structure.LIST):
        codes = {"type": file, "audit": f"signage audit pictures {file}"}
        for number, rule in enumerate(_RULES, start=1):
            y = _draw_rule(canvas, context, number, rule, codes.get(rule, ""), y) + 3.4
    _draw_pages(canvas, context, ranges, y + 3)
    draw_foot(canvas, context, words, PageCount(1, total))
    return canvas


def _draw_rule(canvas: Canvas, context: PictureContext, number: int, rule: str, code: str, y: float) -> float:
    """A numbered rule, and where one belongs to it a file name or command on a line of its own."""
    wording = context.wording
    x, width = MARGIN + _NUMBER, canvas.width - 2 * MARGIN - _NUMBER
    with canvas.group(structure=Structure.ITEM):
        with canvas.group(structure=Structure.LABEL):
            canvas.text(
                wording.number(number),
                Lettering(TypeRole.RULE_NUMBER, canvas.face(700), _POINTS),
                TextPlace(MARGIN, y, _NUMBER, lines=1),
            )
        with canvas.group(structure=Structure.BODY):
            face = canvas.face(is_body=True)
            text = wording.fixed(f"trial-guide-{rule}")
            y = canvas.text(
                text, Lettering(TypeRole.RULE, face, _POINTS, floor=10), TextPlace(x, y, width, lines=3)
            )
            if code:
                face = Face.of(context.source, 600)
                y = canvas.text(
                    wording.code(code),
                    Lettering(TypeRole.CODE, face, 11, floor=8),
                    TextPlace(x, y + 1.4, width, lines=1),
                )
    return y


def _draw_pages(canvas: Canvas, context: PictureContext, ranges: Mapping[str, PageRange], y: float) -> None:
    """A small table: form A, form B, key, each with its pages."""
    wording, bold, face = context.wording, canvas.face(700), canvas.face(400)
    width = canvas.width - 2 * MARGIN
    with canvas.group(structure=Structure.HEADING_2):
        y = (
            canvas.text(
                wording.fixed("trial-pages"),
                Lettering(TypeRole.ZONE, bold, 12),
                TextPlace(MARGIN, y, width, lines=1),
            )
            + 2
        )
    for name, pages in ranges.items():
        label = (
            wording.fixed("trial-key")
            if name == "key"
            else wording.fixed("trial-form", form=wording.code(name))
        )
        with canvas.artefact():
            canvas.line(MARGIN, y, MARGIN + width, y, canvas.style.line, canvas.style.line_width(0.25))
        with canvas.group(structure=Structure.PARAGRAPH):
            canvas.text(
                label,
                Lettering(TypeRole.RULE, face, 12),
                TextPlace(MARGIN, y + 4, 44, lines=1, anchor=Anchor.MIDDLE),
            )
            canvas.text(
                pages.words(wording),
                Lettering(TypeRole.RULE, bold, 12),
                TextPlace(MARGIN + 46, y + 4, 24, lines=1, anchor=Anchor.MIDDLE),
            )
            if name == "key":
                _draw_key_note(canvas, wording.fixed("trial-key-only"), y, width - 72)
        y += 8


def _draw_key_note(canvas: Canvas, text: str, y: float, width: float) -> None:
    """In the middle of its row; two lines stand lower, clear of the rule above them."""
    face = canvas.face(400)
    height = fit(text, face, 10.5, 9, Room(width, lines=2)).measured.height
    middle = y + max(4.0, height / 2 + 1.2)
    canvas.text(
        text,
        Lettering(TypeRole.NOTE, face, 10.5, floor=9),
        TextPlace(MARGIN + 72, middle, width, lines=2, anchor=Anchor.MIDDLE),
    )
