"""The review of a comparison: what changed in words, then each step as its card was and as it is.

Cards stand side by side at their true size, so that they are judged as readers will hold them. The words of
the document are English; texts of a step are in their own language.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.context import LocaleContext
from signage.compose.envelope import finished_sheet
from signage.compose.lettering import Align, Lettering, TextPlace
from signage.compose.review_sheet import Passage, text_pages
from signage.compose.theme import style_of
from signage.compose.typesetting import Face, measure
from signage.drawing.marks import Group, Page, Sheet, Structure
from signage.drawing.roles import TypeRole
from signage.ground.geometry import Affine, Box, rectangle
from signage.model.choices import PhaseTheme
from signage.words.wording import Wording

_WIDTH, _HEIGHT, _MARGIN = 297.0, 210.0, 12.0
"""A4 on its side: two cards of A6 (105 mm by 148 mm), and a column of words beside them."""

_CARD_WIDTH, _CARD_HEIGHT, _GAP = 105.0, 148.0, 5.0
_CARDS_TOP = 36.0
_COLUMN = _WIDTH - 2 * _MARGIN - 2 * _CARD_WIDTH - 2 * _GAP
_TITLE, _TEXT, _SMALL = 15.0, 9.0, 7.5
_INDENT = 4.0
_NOTE_SIZES = (9.0, 8.0, 7.0, 6.0)


@dataclass(frozen=True)
class Note:
    """A line beside the cards. ``wording`` is the one that speaks, None for the words of the document."""

    text: str
    is_head: bool = False
    wording: Wording | None = None


@dataclass(frozen=True)
class CardSide:
    """One side of a pair: the card, or why there is none."""

    caption: str
    card: Page | None
    why: str = ""


@dataclass(frozen=True)
class CardPair:
    """A step in a language before and after."""

    title: str
    subtitle: str
    old: CardSide
    new: CardSide
    notes: tuple[Note, ...] = ()


def comparison_sheet(
    context: LocaleContext, title: str, foot: str, passages: Sequence[Passage], pairs: Sequence[CardPair]
) -> Sheet:
    """The passages on upright pages, then a page for each pair; ``foot`` stands on each with its number."""
    canvases = [*text_pages(context, title, passages), *(_pair_page(context, pair) for pair in pairs)]
    for number, canvas in enumerate(canvases, start=1):
        canvas.text(
            f"{foot} · {number}/{len(canvases)}",
            Lettering(TypeRole.CONTROL, canvas.face(), _SMALL, floor=6),
            TextPlace(_MARGIN, canvas.height - _MARGIN + 2, canvas.width - 2 * _MARGIN, lines=1),
        )
    return finished_sheet(context, "comparison", title, canvases, protocol=None, paper="A4")


def _pair_page(context: LocaleContext, pair: CardPair) -> Canvas:
    canvas = Canvas(_WIDTH, _HEIGHT, context, style_of(PhaseTheme.PLAIN), 1.0, _MARGIN)
    inner = _WIDTH - 2 * _MARGIN
    with canvas.group(structure=Structure.HEADING_1):
        y = canvas.text(
            pair.title,
            Lettering(TypeRole.TITLE, canvas.face(700), _TITLE, floor=10),
            TextPlace(_MARGIN, _MARGIN, inner, lines=1),
        )
    with canvas.group(structure=Structure.PARAGRAPH):
        canvas.text(
            pair.subtitle,
            Lettering(TypeRole.CONTROL, canvas.face(), _TEXT, floor=7),
            TextPlace(_MARGIN, y + 1, inner, lines=2),
        )
    for place, side in enumerate((pair.old, pair.new)):
        _draw_side(canvas, side, _MARGIN + place * (_CARD_WIDTH + _GAP))
    _draw_notes(canvas, pair.notes, _MARGIN + 2 * (_CARD_WIDTH + _GAP))
    return canvas


def _draw_side(canvas: Canvas, side: CardSide, x: float) -> None:
    with canvas.group(structure=Structure.HEADING_2):
        canvas.text(
            side.caption,
            Lettering(TypeRole.CONTROL, canvas.face(700), _TEXT, floor=6),
            TextPlace(x, _CARDS_TOP - 5.4, _CARD_WIDTH, lines=1),
        )
    left = canvas.left(x, _CARD_WIDTH)
    if side.card is not None:
        canvas.add(_at_true_size(side.card, left, side.caption))
    with canvas.artefact():
        canvas.rect(x, _CARDS_TOP, _CARD_WIDTH, _CARD_HEIGHT, None, canvas.style.ink, 0.25)
    if side.card is not None:
        return
    with canvas.group(structure=Structure.PARAGRAPH):
        canvas.text(
            side.why,
            Lettering(TypeRole.NOTE, canvas.face(), 12, floor=8),
            TextPlace(
                x + _INDENT, _CARDS_TOP + _CARD_HEIGHT / 3, _CARD_WIDTH - 2 * _INDENT, align=Align.CENTRE
            ),
        )


def _at_true_size(card: Page, left: float, caption: str) -> Group:
    """A card; a picture to whoever is read to."""
    edge = Box(0.0, 0.0, card.width, card.height)
    return Group(
        marks=card.marks,
        structure=Structure.FIGURE,
        alternative=caption,
        box=edge,
        transform=Affine(1.0, 0.0, 0.0, 1.0, left, _CARDS_TOP),
        clip=rectangle(edge),
    )


def _draw_notes(canvas: Canvas, notes: Sequence[Note], x: float) -> None:
    """One below the other, smaller where many must fit; the last size is kept whatever it takes."""
    room = _HEIGHT - _MARGIN - 2 - _CARDS_TOP
    points = next((size for size in _NOTE_SIZES if _height(canvas, notes, size) <= room), _NOTE_SIZES[-1])
    y = _CARDS_TOP
    for note in notes:
        y += _above(note)
        with canvas.group(structure=Structure.PARAGRAPH, language=_face(canvas, note).language):
            y = canvas.text(
                note.text,
                Lettering(TypeRole.NOTE, _face(canvas, note), points),
                TextPlace(x, y, _COLUMN, align=_align(canvas, note)),
            )


def _height(canvas: Canvas, notes: Sequence[Note], points: float) -> float:
    """Millimetres of all notes at a size."""
    return sum(
        _above(note) + measure(note.text, _face(canvas, note), points, _COLUMN).height for note in notes
    )


def _above(note: Note) -> float:
    return 3.0 if note.is_head else 1.0


def _face(canvas: Canvas, note: Note) -> Face:
    return canvas.face(700 if note.is_head else 400, is_balanced=False, wording=note.wording)


def _align(canvas: Canvas, note: Note) -> Align:
    """Texts of the other direction begin at the other edge."""
    speaks = canvas.is_right_to_left if note.wording is None else note.wording.is_right_to_left
    return Align.START if speaks is canvas.is_right_to_left else Align.END
