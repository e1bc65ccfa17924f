"""The key of a trial, for the assessors: the number of each picture on both forms, and what it says."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.lettering import Anchor, Lettering, TextPlace
from signage.compose.papers import Paper
from signage.compose.pictures.context import PictureContext
from signage.compose.pictures.page import (
    BAND,
    FOOT,
    MARGIN,
    PageCount,
    PageWords,
    draw_band,
    draw_foot,
    picture_canvas,
)
from signage.compose.theme import Tone, style_of
from signage.compose.typesetting import Face, measure
from signage.drawing.marks import Structure
from signage.drawing.roles import GroupRole, TypeRole
from signage.model.choices import PhaseTheme
from signage.model.picture_trial import FORMS, Category
from signage.pictograms.palette import MONO

_PICTURE = 15.0
_PITCH = 17.0
_COLUMNS = 2
_GUTTER = 6.0
_NUMBER = 9.0
_WARNING = 8.0
_HEADS = 5.0
_CATEGORIES = 44.0


@dataclass(frozen=True)
class KeyRow:
    """A picture with its number on each form."""

    name: str
    numbers: tuple[int, ...]


@dataclass(frozen=True)
class KeyPages:
    """A planned key; the first page says how to rate, and holds fewer pictures for it."""

    context: PictureContext
    paper: Paper
    pages: tuple[tuple[KeyRow, ...], ...]

    def draw(self, number: int, count: PageCount) -> Canvas:
        """The page with a number from 0, marked so that nobody hands it to readers."""
        wording = self.context.wording
        canvas = picture_canvas(self.context, self.paper)
        words = PageWords(wording.fixed("trial-key"))
        y = draw_band(canvas, self.context, words, is_filled=True)
        width = canvas.width - 2 * MARGIN
        canvas.text(
            wording.fixed("trial-key-only"),
            Lettering(TypeRole.KEY_RULE, canvas.face(700), 11, floor=9),
            TextPlace(MARGIN, y + 1.8, width, lines=1),
        )
        y += _WARNING
        if number == 0:
            _draw_categories(canvas, self.context, y)
            y += _CATEGORIES
        _draw_heads(canvas, self.context, y + _HEADS - 1)
        rows = _rows_a_column(self.paper, is_first=number == 0)
        with canvas.group(structure=Structure.LIST):
            for place, row in enumerate(self.pages[number]):
                x = MARGIN + place // rows * (_column(self.paper) + _GUTTER)
                _draw_row(
                    canvas, self.context, row, x, y + _HEADS + place % rows * _PITCH, _column(self.paper)
                )
        draw_foot(canvas, self.context, words, count)
        return canvas


def plan_key(context: PictureContext, forms: Mapping[str, tuple[str, ...]], paper: Paper) -> KeyPages:
    """The rows in the order of the first form, as many a page as fit."""
    rows = [KeyRow(name, tuple(forms[form].index(name) + 1 for form in FORMS)) for name in forms[FORMS[0]]]
    pages: list[tuple[KeyRow, ...]] = []
    while rows or not pages:
        fitting = _rows_a_column(paper, is_first=not pages) * _COLUMNS
        pages.append(tuple(rows[:fitting]))
        rows = rows[fitting:]
    return KeyPages(context, paper, tuple(pages))


def _rows_a_column(paper: Paper, *, is_first: bool) -> int:
    head = MARGIN + BAND + _WARNING + _HEADS + (_CATEGORIES if is_first else 0.0)
    return int((paper.height - head - FOOT - MARGIN) / _PITCH)


def _column(paper: Paper) -> float:
    return (paper.width - 2 * MARGIN - _GUTTER) / _COLUMNS


def _draw_categories(canvas: Canvas, context: PictureContext, y: float) -> None:
    """The five categories as they are typed, each with what it means."""
    wording = context.wording
    width = canvas.width - 2 * MARGIN
    with canvas.group(structure=Structure.HEADING_2):
        y = canvas.text(
            wording.fixed("trial-how-to-rate"),
            Lettering(TypeRole.ZONE, canvas.face(700), 11),
            TextPlace(MARGIN, y, width, lines=1),
        )
    y += 1.4
    code_face = Face.of(context.source, 700)
    for category in Category:
        with canvas.artefact():
            canvas.line(MARGIN, y, MARGIN + width, y, canvas.style.line, canvas.style.line_width(0.25))
        with canvas.group(structure=Structure.PARAGRAPH):
            canvas.text(
                wording.code(category.value),
                Lettering(TypeRole.CATEGORY, code_face, 9.5),
                TextPlace(MARGIN, y + 3.4, 24, lines=1, anchor=Anchor.MIDDLE),
            )
            canvas.text(
                wording.fixed(f"trial-{category.value}"),
                Lettering(TypeRole.MEANING, canvas.face(), 9.5, floor=8),
                TextPlace(MARGIN + 26, y + 3.4, width - 26, lines=1, anchor=Anchor.MIDDLE),
                message=f"interface/trial-{category.value}",
            )
        y += 6.8


def _draw_heads(canvas: Canvas, context: PictureContext, y: float) -> None:
    wording, face = context.wording, canvas.face(600)
    for column in range(_COLUMNS):
        x = MARGIN + column * (canvas.width - 2 * MARGIN + _GUTTER) / _COLUMNS
        for index, form in enumerate(FORMS):
            canvas.text(
                wording.code(form),
                Lettering(TypeRole.HEAD, face, 8),
                TextPlace(x + index * _NUMBER, y, _NUMBER, lines=1, anchor=Anchor.BOTTOM),
            )
        start = x + len(FORMS) * _NUMBER + _PICTURE + 2
        room = x + (canvas.width - 2 * MARGIN - _GUTTER) / _COLUMNS - start
        canvas.text(
            wording.fixed("trial-meaning"),
            Lettering(TypeRole.HEAD, face, 8, floor=7),
            TextPlace(start, y, room, lines=1, anchor=Anchor.BOTTOM),
        )


def _draw_row(canvas: Canvas, context: PictureContext, row: KeyRow, x: float, y: float, width: float) -> None:
    wording, style = context.wording, canvas.style
    with canvas.artefact():
        canvas.line(x, y, x + width, y, style.line, style.line_width(0.25))
    with canvas.group(
        GroupRole.KEY_ROW, row.name, structure=Structure.ITEM, box=canvas.box(x, y, width, _PITCH)
    ):
        with canvas.group(structure=Structure.LABEL):
            for index, number in enumerate(row.numbers):
                canvas.ink_line(
                    wording.number(number),
                    Lettering(TypeRole.KEY_NUMBER, canvas.face(700 if index == 0 else 400), 11),
                    TextPlace(x + index * _NUMBER, y + _PITCH / 2, _NUMBER - 1),
                )
        with canvas.group(structure=Structure.BODY):
            left = x + len(FORMS) * _NUMBER
            theme = context.picture_set.scene(row.name).theme
            palette = MONO if context.tone is Tone.MONO else style_of(PhaseTheme(theme)).palette
            canvas.picture(row.name, left, y + 1, _PICTURE, None, palette)
            start = left + _PICTURE + 2
            _draw_meaning(canvas, context, row, start, y, x + width - start)


def _draw_meaning(
    canvas: Canvas, context: PictureContext, row: KeyRow, x: float, y: float, width: float
) -> None:
    """Name, marks, and the sentence of the picture."""
    meaning, wording = context.meaning(row.name), context.wording
    face = Face.of(context.source, 400)
    bottom = canvas.text(
        wording.code(row.name),
        Lettering(TypeRole.SCENE_NAME, face, 7, colour=canvas.style.ink_2),
        TextPlace(x, y + 1.2, width, lines=1),
    )
    marks = []
    if row.name in context.critical_pictures:
        marks.append(wording.fixed("critical"))
    if not meaning.is_translated:
        marks.append(wording.fixed("pictures-untranslated"))
    if marks:
        mark, bold = " · ".join(marks), canvas.face(700)
        bottom = canvas.text(
            mark,
            Lettering(TypeRole.MARK, bold, 7),
            TextPlace(x, bottom + max(0.2, _overshoot(mark, bold, 7)), width, lines=1),
        )
    canvas.text(
        meaning.text,
        Lettering(TypeRole.SENTENCE, meaning.face(), 8, floor=7),
        TextPlace(x, bottom + 0.8, width, height=y + _PITCH - bottom - 0.8),
        message=f"picture/{row.name}",
    )


def _overshoot(text: str, face: Face, points: float) -> float:
    """How far accents on capitals reach above the ascent of a line, in millimetres."""
    measured = measure(text, face, points, 1e6)
    return max(0.0, max(line.ink_top for line in measured.lines) - face.metrics.ascent) * measured.em
