"""The wall poster: all steps of a phase as numbered cards on the grounds of their zones."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from signage.compose.arrangement import numbered_steps, zone_parts
from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.furniture.footer import draw_footer, plan_footer
from signage.compose.furniture.title_band import BandPlace, TitleBand, band_words
from signage.compose.papers import Paper
from signage.compose.parts import draft_ribbon
from signage.compose.poster.envelope import poster_sheet
from signage.compose.poster.layout import PosterPage
from signage.compose.poster.measures import margin_of
from signage.compose.poster.search import Plan, Task, find_plan
from signage.compose.poster.sizes import SizeFinder
from signage.compose.poster.stacks import PosterStacks
from signage.compose.poster.tile import Drawing
from signage.compose.poster.words import words_of
from signage.compose.poster.zone_panel import draw_panels
from signage.compose.qr import smallest_side_mm
from signage.compose.theme import style_of
from signage.drawing.marks import Sheet
from signage.model.library import Phase

RIBBON_POINTS = 10.0


def compose_poster(context: SheetContext, phase: Phase, paper: Paper) -> Sheet:
    """One sheet where everything fits at readable sizes, else several.

    Raises TextTooLongError, a refusal, where even that does not help.
    """
    steps = numbered_steps(context.protocol, phase)
    parts = zone_parts(steps)
    words = words_of(context, phase, [numbered for part in parts for numbered in part.steps])
    stacks = PosterStacks(words, context.wording)
    task = Task(
        parts=parts,
        stacks=stacks,
        paper=paper,
        footer_of=partial(_footer_height, context, paper),
        qr_least=smallest_side_mm(context.training_link()),
    )
    plan = find_plan(task)
    pages = enumerate(plan.layout.pages, start=1)
    canvases = [_draw_page(context, phase, stacks, plan, page, number) for number, page in pages]
    return poster_sheet(context, phase, paper, canvases, plan.sizes.climbed, plan.sizes.excess)


def _draw_page(
    context: SheetContext, phase: Phase, stacks: PosterStacks, plan: Plan, page: PosterPage, number: int
) -> Canvas:
    measures, grid, sizes = plan.layout.measures, plan.layout.grid, plan.sizes
    style = style_of(phase.theme, context.tone)
    canvas = Canvas(measures.width, measures.height, context, style, measures.scale, measures.margin)
    pages = len(plan.layout.pages)
    draft_ribbon(canvas, context, RIBBON_POINTS * measures.margin / 12)
    place = BandPlace(
        measures.margin,
        measures.margin,
        measures.inner_width,
        measures.title,
        measures.scale,
        60.0 if context.wording.script == "Latn" else 54.0,
    )
    columns = grid.starts[1:]
    if len(columns) < 3:
        columns = tuple(measures.margin + measures.inner_width * share for share in (0.38, 0.42, 0.46, 0.50))
    titles = band_words(context, phase, number, pages)
    band = TitleBand(canvas, context, phase, titles, place, columns)
    band.draw()
    finder = SizeFinder(
        replace(plan.layout, pages=(page,)),
        stacks,
        with_times=sizes.shows_times,
        with_notes=sizes.shows_notes,
    )
    cards = stacks.cards(page.parts, measures, grid)
    drawing = Drawing(canvas, context, finder, measures, grid, sizes, page.tile, cards)
    draw_panels(drawing, page, finder)
    title = titles.title if band.names_protocol else titles.protocol
    _draw_foot(canvas, context, plan, title, number)
    return canvas


def _footer_height(context: SheetContext, paper: Paper, scale: float) -> float:
    """The height of the footer before its columns are known."""
    margin = margin_of(paper)
    width = paper.width - 2 * margin
    return plan_footer(context, scale, margin, width, is_landscape=paper.is_landscape).height


def _draw_foot(canvas: Canvas, context: SheetContext, plan: Plan, title: str, number: int) -> None:
    """On the columns of the cards, unless the words are too many for these."""
    measures = plan.layout.measures
    for grid in (plan.layout.grid, None):
        footer = plan_footer(
            context,
            measures.scale,
            measures.margin,
            measures.inner_width,
            is_landscape=measures.is_landscape,
            grid=grid,
            page=number,
            pages=len(plan.layout.pages),
        )
        if footer.height <= measures.footer:
            break
    draw_footer(canvas, context, footer, title, measures.footer_top, measures.footer)
