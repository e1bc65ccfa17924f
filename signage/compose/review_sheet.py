"""What a role looks at before it signs: findings, changes, and every sheet in small, on A4."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.context import LocaleContext
from signage.compose.envelope import finished_sheet
from signage.compose.lettering import Lettering, TextPlace
from signage.compose.theme import style_of
from signage.drawing.marks import Group, Page, PathMark, Sheet, Structure
from signage.drawing.roles import TypeRole
from signage.ground.geometry import Affine, Box, rectangle
from signage.model.choices import PhaseTheme

_WIDTH, _HEIGHT, _MARGIN = 210.0, 297.0, 15.0
_INNER = _WIDTH - 2 * _MARGIN
_FOOT = 8.0
_COLUMNS, _ROWS = 2, 2
_GAP, _CAPTION = 6.0, 6.0
_TITLE, _HEAD, _TEXT, _SMALL = 18.0, 12.0, 9.5, 8.0


@dataclass(frozen=True)
class Passage:
    """A head with lines below it."""

    head: str
    lines: tuple[str, ...]


def review_sheet(
    context: LocaleContext, title: str, foot: str, passages: Sequence[Passage], sheets: Sequence[Sheet]
) -> Sheet:
    """The passages, then every page of every sheet in small; ``foot`` stands on each page.

    ``context`` speaks the language of the messages; what is in small keeps its own.
    """
    canvases = [*text_pages(context, title, passages), *_picture_pages(context, sheets)]
    for number, canvas in enumerate(canvases, start=1):
        _line(canvas, f"{foot} · {number}/{len(canvases)}", _SMALL, _HEIGHT - _MARGIN + 2)
    return finished_sheet(context, "review", title, canvases, protocol=None, paper="A4")


def _new_canvas(context: LocaleContext) -> Canvas:
    return Canvas(_WIDTH, _HEIGHT, context, style_of(PhaseTheme.PLAIN), 1.0, _MARGIN)


def text_pages(context: LocaleContext, title: str, passages: Sequence[Passage]) -> Iterator[Canvas]:
    """The title, then the passages, on as many pages of A4 as they take."""
    canvas = _new_canvas(context)
    with canvas.group(structure=Structure.HEADING_1):
        y = _line(canvas, title, _TITLE, _MARGIN, weight=700)
    for passage in passages:
        for line, points in ((passage.head, _HEAD), *((line, _TEXT) for line in passage.lines)):
            is_head = points == _HEAD
            top = y + (4.0 if is_head else 1.2)
            if top > _HEIGHT - _MARGIN - _FOOT - 3 * points:
                yield canvas
                canvas = _new_canvas(context)
                top = _MARGIN
            structure = Structure.HEADING_2 if is_head else Structure.PARAGRAPH
            with canvas.group(structure=structure):
                y = _line(canvas, line, points, top, weight=700 if is_head else 400)
    yield canvas


def _line(canvas: Canvas, text: str, points: float, y: float, *, weight: int = 400) -> float:
    """The y below a text over the full width."""
    return canvas.text(
        text, Lettering(TypeRole.CONTROL, canvas.face(weight), points), TextPlace(_MARGIN, y, _INNER)
    )


def _picture_pages(context: LocaleContext, sheets: Sequence[Sheet]) -> Iterator[Canvas]:
    """Four pages of sheets on each page, each with what it is."""
    pages = [(sheet, number, page) for sheet in sheets for number, page in enumerate(sheet.pages, start=1)]
    width = (_INNER - _GAP * (_COLUMNS - 1)) / _COLUMNS
    height = (_HEIGHT - 2 * _MARGIN - _FOOT) / _ROWS - _GAP
    for start in range(0, len(pages), _COLUMNS * _ROWS):
        canvas = _new_canvas(context)
        for place, (sheet, number, page) in enumerate(pages[start : start + _COLUMNS * _ROWS]):
            x = _MARGIN + place % _COLUMNS * (width + _GAP)
            y = _MARGIN + place // _COLUMNS * (height + _GAP)
            caption = f"{sheet.file_stem} · {sheet.paper or 'cut'} · {number}/{len(sheet.pages)}"
            with canvas.group(structure=Structure.PARAGRAPH):
                canvas.text(
                    caption,
                    Lettering(TypeRole.CONTROL, canvas.face(), _SMALL, floor=6),
                    TextPlace(canvas.left(x, width), y, width, lines=1),
                )
            canvas.add(_in_small(page, Box(x, y + _CAPTION, width, height - _CAPTION), caption))
        yield canvas


def _in_small(page: Page, box: Box, caption: str) -> Group:
    """A page as large as its box lets it be, in a thin frame; a picture to whoever is read to."""
    scale = min(box.width / page.width, box.height / page.height)
    edge = Box(0.0, 0.0, page.width, page.height)
    return Group(
        marks=(*page.marks, PathMark(rectangle(edge), None, "#000000", 0.2 / scale)),
        structure=Structure.FIGURE,
        alternative=caption,
        box=edge,
        transform=Affine(scale, 0.0, 0.0, scale, box.x, box.y),
        clip=rectangle(edge),
    )
