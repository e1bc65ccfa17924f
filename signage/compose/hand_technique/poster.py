"""The poster of a hand technique: what comes before, the timed movements in a tinted panel, what follows."""

from __future__ import annotations

from itertools import pairwise

from signage.compose.arrangement import numbered_steps
from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.furniture.footer import draw_footer, plan_footer
from signage.compose.furniture.title_band import BandPlace, TitleBand, band_words
from signage.compose.hand_technique.layout import (
    Cell,
    HandLayout,
    lay_out_hands,
    margin_of,
    parts_of,
    scale_of,
)
from signage.compose.hand_technique.tile import HandSizeFinder, HandSizes, draw_hand_card
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.papers import Paper
from signage.compose.parts import chevron, draft_ribbon
from signage.compose.poster.envelope import poster_sheet
from signage.compose.poster.words import words_of
from signage.compose.qr import smallest_side_mm
from signage.compose.theme import style_of
from signage.compose.typesetting import line_width
from signage.drawing.marks import Sheet, Structure
from signage.drawing.roles import GroupRole, TypeRole
from signage.model.library import Phase

_FURNITURE = 0.83
"""Title band and footer, against the scale of the cards: 1 on A4."""

_RIBBON_POINTS = 8.5


def compose_hand_poster(context: SheetContext, phase: Phase, paper: Paper) -> Sheet:
    """One sheet; raises TextTooLongError, a refusal, where the words do not fit at readable sizes."""
    steps = numbered_steps(context.protocol, phase)
    words = words_of(context, phase, steps)
    k = scale_of(paper)
    margin = margin_of(paper)
    footer = plan_footer(
        context,
        _FURNITURE * k,
        margin,
        paper.width - 2 * margin,
        is_landscape=paper.is_landscape,
        page=1,
        pages=1,
    )
    qr_least = smallest_side_mm(context.training_link())
    layout = lay_out_hands(paper, parts_of(steps), footer.height, qr_least)
    finder = HandSizeFinder(layout, words, context.wording)
    sizes = finder.find()
    canvas = Canvas(
        paper.width,
        paper.height,
        context,
        style_of(phase.theme, context.tone),
        k * _FURNITURE,
        layout.margin,
    )
    draft_ribbon(canvas, context, _RIBBON_POINTS * max(k, 0.8))
    title = _draw_title(canvas, context, phase, layout)
    _draw_cards(canvas, context, phase, layout, finder, sizes)
    draw_footer(canvas, context, footer, title, layout.footer_top, layout.footer)
    return poster_sheet(context, phase, paper, [canvas], sizes.climbed, sizes.excess, kind="poster-hands")


def _draw_title(canvas: Canvas, context: SheetContext, phase: Phase, layout: HandLayout) -> str:
    """Returns the title that the foot repeats."""
    width = layout.width - 2 * layout.margin
    place = BandPlace(layout.margin, layout.margin, width, layout.title, _FURNITURE * layout.scale)
    starts = [layout.margin + width * share for share in (0.34, 0.38, 0.42, 0.46, 0.5)]
    words = band_words(context, phase, 1, 1)
    band = TitleBand(canvas, context, phase, words, place, starts)
    band.draw()
    return words.title if band.names_protocol else words.protocol


def _draw_cards(
    canvas: Canvas,
    context: SheetContext,
    phase: Phase,
    layout: HandLayout,
    finder: HandSizeFinder,
    sizes: HandSizes,
) -> None:
    top = layout.margin + layout.title
    width, height = layout.width - 2 * layout.margin, layout.footer_top - top
    zone = layout.cells[0].numbered.zone
    with canvas.group(
        GroupRole.ZONE,
        zone,
        structure=Structure.SECTION,
        box=canvas.box(layout.margin, top, width, height),
        continued=False,
    ):
        for cells, is_timed in ((layout.before, False), (layout.movements, True), (layout.after, False)):
            if not cells:
                continue
            if is_timed:
                _draw_panel(canvas, context, phase, layout)
            with canvas.group(structure=Structure.LIST):
                for cell in cells:
                    draw_hand_card(canvas, context, cell, finder, sizes)
                _draw_chevrons(canvas, cells, layout.scale)


def _draw_chevrons(canvas: Canvas, cells: tuple[Cell, ...], k: float) -> None:
    """Between neighbours of one row."""
    for cell, after in pairwise(cells):
        if cell.box.y == after.box.y:
            middle = (cell.box.right + after.box.x) / 2
            chevron(canvas, middle - 0.8 * k, cell.box.y + cell.box.height * 0.36, 0.8 * k)


def _head_word(phase: Phase) -> str:
    is_wash = any(action.agent == "wash" for step in phase.steps for action in step.actions)
    return "wash-for" if is_wash else "rub-for"


def _draw_panel(canvas: Canvas, context: SheetContext, phase: Phase, layout: HandLayout) -> None:
    """The tinted ground of the timed movements, its time in words and as a bar of equal boxes."""
    k, panel, style = layout.scale, layout.panel, canvas.style
    box = canvas.box(panel.x, panel.y, panel.width, panel.height)
    with canvas.group(GroupRole.TIMED, phase.id, box=box, seconds=phase.seconds or 0):
        canvas.rect(panel.x, panel.y, panel.width, panel.height, style.care_ground, style.ink, 0.45 * k)
        if not phase.seconds:
            return
        centre = panel.y + 6.4 * k
        words = context.wording.fixed(_head_word(phase), time=context.wording.seconds(phase.seconds))
        face = canvas.face(700)
        points = 17 * k
        width = line_width(words, face, points)
        with canvas.group(structure=Structure.HEADING_2):
            canvas.text(
                words,
                Lettering(TypeRole.ZONE, face, points),
                TextPlace(panel.x + 4 * k, centre, width + 0.2, lines=1, anchor=Anchor.MIDDLE),
            )
        _draw_bar(canvas, context, phase.seconds, layout, panel.x + 4 * k + width + 6 * k, centre)


def _draw_bar(
    canvas: Canvas, context: SheetContext, seconds: int, layout: HandLayout, x: float, centre: float
) -> None:
    """One box a movement, filled and open in turn; nought at its start, all the time at its end."""
    k, style, wording = layout.scale, canvas.style, context.wording
    total = wording.seconds(seconds)
    face = canvas.face(600)
    points = max(9.5 * k, 9.0)
    zero = wording.number(0)
    after = line_width(total, face, points)
    before = line_width(zero, face, points)
    canvas.text(
        zero,
        Lettering(TypeRole.TIME, face, points),
        TextPlace(x, centre, before + 0.2, lines=1, anchor=Anchor.MIDDLE),
    )
    start = x + before + 1.6 * k
    end = layout.panel.right - 4 * k - after - 1.6 * k
    share = (end - start) / len(layout.movements)
    for index, cell in enumerate(layout.movements):
        is_filled = index % 2 == 0
        box_x, height = start + index * share, 6.4 * k
        canvas.rect(
            box_x + 0.5 * k,
            centre - height / 2,
            share - 1.0 * k,
            height,
            style.care_deep if is_filled else style.paper,
            style.care_deep,
            0.5 * k,
            0.8 * k,
        )
        canvas.ink_line(
            wording.number(cell.numbered.number),
            Lettering(TypeRole.BAR, canvas.face(700), 12 * k, colour=style.paper if is_filled else style.ink),
            TextPlace(box_x, centre, share, align=Align.CENTRE),
        )
    canvas.text(
        total,
        Lettering(TypeRole.TIME, face, points),
        TextPlace(end + 1.6 * k, centre, after + 0.2, lines=1, anchor=Anchor.MIDDLE),
    )
