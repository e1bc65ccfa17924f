"""The sheet of all pictures: each with number, name and sentence, in two sizes, coloured and copied."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.envelope import finished_sheet
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.papers import Paper
from signage.compose.parts import tag_width
from signage.compose.pictures.context import Meaning, PictureContext
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
from signage.compose.typesetting import Face, Room, fit
from signage.drawing.marks import Sheet, Structure
from signage.drawing.roles import GroupRole, TypeRole
from signage.model.choices import PhaseTheme
from signage.pictograms.palette import MONO, Palette

LARGE, SMALL = 25.0, 15.0
"""Sides in millimetres: as on a poster on A4, and the smallest that is printed."""

_COLUMNS = 2
_GUTTER = 5.0
_GAP = 1.6
_HEADS = 13.0
"""Height of the purpose and of the heads over the columns."""

_SENTENCE = 9.6
_PITCH = LARGE + 1.4 + _SENTENCE + 0.8
_LARGEST, _LEAST = 8.5, 7.0


@dataclass(frozen=True)
class _Cell:
    """One picture with its number; the place of its start top corner in millimetres."""

    name: str
    number: int
    x: float
    y: float
    width: float


def compose_picture_sheet(context: PictureContext, paper: Paper) -> Sheet:
    """All pictures of the context, as many a page as fit."""
    rows = int((paper.height - _heads_end() - FOOT - MARGIN) / _PITCH)
    per_page = rows * _COLUMNS
    names = context.pictures
    parts = [names[start : start + per_page] for start in range(0, len(names), per_page)]
    title = context.wording.fixed("pictures-title")
    if context.protocol is not None:
        title = context.wording.content(f"{context.protocol.id}/title")
    meanings = {name: context.meaning(name) for name in names}
    points = _sentence_points(list(meanings.values()), paper)
    canvases = []
    for index, part in enumerate(parts):
        words = PageWords(title, code=context.protocol.code if context.protocol else "")
        canvas = picture_canvas(context, paper)
        draw_band(canvas, context, words)
        _draw_heads(canvas, context, paper)
        with canvas.group(structure=Structure.LIST):
            for place, name in enumerate(part):
                cell = _cell(name, index * per_page + place, place, paper)
                _draw_cell(canvas, context, cell, meanings[name], points)
        draw_foot(canvas, context, words, PageCount(index + 1, len(parts)))
        canvases.append(canvas)
    return finished_sheet(context, "pictures", title, canvases, protocol=context.protocol, paper=paper.name)


def _heads_end() -> float:
    return MARGIN + BAND + _HEADS


def _cell_width(paper: Paper) -> float:
    return (paper.width - 2 * MARGIN - _GUTTER * (_COLUMNS - 1)) / _COLUMNS


def _cell(name: str, position: int, place: int, paper: Paper) -> _Cell:
    """Pictures run along the rows."""
    width = _cell_width(paper)
    x = MARGIN + place % _COLUMNS * (width + _GUTTER)
    return _Cell(name, position + 1, x, _heads_end() + place // _COLUMNS * _PITCH, width)


def _sentence_points(meanings: Sequence[Meaning], paper: Paper) -> float:
    """One size for all sentences."""
    points = _LARGEST
    room = Room(_cell_width(paper), _SENTENCE)
    for meaning in meanings:
        points = min(points, fit(meaning.text, meaning.face(), points, _LEAST, room).points)
    return points


def _draw_heads(canvas: Canvas, context: PictureContext, paper: Paper) -> None:
    """What the sheet is for, then the sizes and inks over the columns."""
    wording, y = context.wording, MARGIN + BAND + 1.8
    width = paper.width - 2 * MARGIN
    canvas.text(
        wording.fixed("pictures-purpose"),
        Lettering(TypeRole.NOTE, canvas.face(600), 9.5, floor=9),
        TextPlace(MARGIN, y, width, lines=1),
    )
    large, small = wording.millimetres(LARGE), wording.millimetres(SMALL)
    colour, copier = wording.fixed("pictures-colour"), wording.fixed("pictures-copier")
    face = canvas.face(600)
    for column in range(_COLUMNS):
        x = MARGIN + column * (_cell_width(paper) + _GUTTER)
        heads = (
            (x, LARGE, f"{colour} · {large}"),
            (x + LARGE + _GAP, LARGE, f"{copier} · {large}"),
            (x + 2 * (LARGE + _GAP), _cell_width(paper) - 2 * (LARGE + _GAP), small),
        )
        for head_x, room, text in heads:
            canvas.text(
                text,
                Lettering(TypeRole.CONTROL, face, 7),
                TextPlace(head_x, _heads_end() - 1.2, room, lines=2, anchor=Anchor.BOTTOM),
            )


def _draw_cell(canvas: Canvas, context: PictureContext, cell: _Cell, meaning: Meaning, points: float) -> None:
    with canvas.group(
        GroupRole.SCENE,
        cell.name,
        structure=Structure.ITEM,
        box=canvas.box(cell.x, cell.y, cell.width, _PITCH - 0.8),
        number=cell.number,
        translated=meaning.is_translated,
    ):
        with canvas.group(structure=Structure.LABEL):
            canvas.ink_line(
                context.wording.number(cell.number),
                Lettering(TypeRole.SCENE_NUMBER, canvas.face(700), 12),
                TextPlace(cell.x + 2 * (LARGE + _GAP), cell.y + 2.2, 12),
            )
        with canvas.group(structure=Structure.BODY):
            _draw_name(canvas, context, cell, meaning)
            _draw_pictures(canvas, context, cell, meaning)
            face = meaning.face()
            y = cell.y + LARGE + 1.4
            canvas.text(
                meaning.text,
                Lettering(TypeRole.SENTENCE, face, points),
                TextPlace(cell.x, y, cell.width, height=_SENTENCE),
                message=f"picture/{cell.name}",
            )


def _draw_name(canvas: Canvas, context: PictureContext, cell: _Cell, meaning: Meaning) -> None:
    """The name by which steps call the picture, and above it a mark where its sentence is not translated."""
    x = cell.x + 2 * (LARGE + _GAP)
    room = cell.width - 2 * (LARGE + _GAP)
    if not meaning.is_translated:
        word = context.wording.fixed("pictures-untranslated")
        height, points = 4.4, 7.0
        width = tag_width(canvas, word, height, points)
        left = x + room - width
        with canvas.group(
            GroupRole.UNTRANSLATED,
            cell.name,
            structure=Structure.PARAGRAPH,
            box=canvas.box(left, cell.y, width, height),
        ):
            canvas.rect(left, cell.y, width, height, None, canvas.style.ink, 0.35, 0.6)
            canvas.ink_line(
                word,
                Lettering(TypeRole.CONTROL, canvas.face(700), points),
                TextPlace(left, cell.y + height / 2, width, align=Align.CENTRE),
            )
    name = context.wording.code(cell.name)
    face = Face.of(context.source, 400)
    canvas.text(
        name,
        Lettering(TypeRole.SCENE_NAME, face, 8, floor=7, colour=canvas.style.ink_2),
        TextPlace(x, cell.y + 5.0, room, lines=1),
    )


def _draw_pictures(canvas: Canvas, context: PictureContext, cell: _Cell, meaning: Meaning) -> None:
    """Colour and black and white, large and small; the first speaks for all four."""
    bottom = cell.y + LARGE
    x, steps = cell.x, []
    for side in (LARGE, SMALL):
        for palette in (_colours(context, cell.name), MONO):
            steps.append((x, side, palette))
            x += side + _GAP
    for index, (left, side, palette) in enumerate(steps):
        alternative = meaning.text if index == 0 else None
        with canvas.artefact():
            canvas.rect(
                left, bottom - side, side, side, None, canvas.style.line, canvas.style.line_width(0.2), 0.8
            )
        canvas.picture(cell.name, left, bottom - side, side, alternative, palette, language=meaning.language)


def _colours(context: PictureContext, name: str) -> Palette:
    """The colours of the theme of a picture; a sheet for a copier shows them too."""
    tone = Tone.COLOUR if context.tone is Tone.MONO else context.tone
    return style_of(PhaseTheme(context.picture_set.scene(name).theme), tone).palette
