from itertools import pairwise

import demo
import pytest

from signage.compose.canvas import Canvas
from signage.compose.furniture.footer import draw_footer, footer_blocks, plan_footer
from signage.compose.papers import paper_of
from signage.compose.poster.measures import grid_of, measures_of
from signage.compose.theme import style_of
from signage.drawing.marks import Page, groups_of, texts_of
from signage.drawing.roles import GroupRole


@pytest.mark.parametrize("tag", demo.LANGUAGES)
@pytest.mark.parametrize(("width", "is_landscape"), [(186.0, False), (273.0, False), (396.0, True)])
@pytest.mark.parametrize("scale", [0.83, 1.0])
def test_all_control_text_fits_the_planned_height(tag, width, is_landscape, scale):
    context = demo.context(tag)
    footer = plan_footer(context, scale, 12.0, width, is_landscape=is_landscape)
    canvas = Canvas(width + 24, 120, context, style_of("doff"), scale, 12.0)
    draw_footer(canvas, context, footer, "Take off", 50.0, footer.height)
    assert not canvas.overflows
    page = Page(canvas.width, canvas.height, canvas.marks, 12)
    for mark, box in texts_of(page):
        assert box.bottom <= 50.0 + footer.height + 0.6, mark.text
        assert box.right <= 12 + width + 0.3


def test_blocks_stand_on_the_columns_of_the_cards_where_these_are_wide():
    measures = measures_of(paper_of("A3"), 20.0, 20.0)
    grid = grid_of(measures, 4)
    blocks = footer_blocks(measures.margin, measures.inner_width, grid)
    assert [block.x for block in blocks[1:]] == list(grid.starts[1:])


def test_the_ruler_has_its_fifty_millimetres_on_small_paper_too():
    measures = measures_of(paper_of("A4"), 20.0, 20.0)
    blocks = footer_blocks(measures.margin, measures.inner_width, grid_of(measures, 3))
    assert blocks[3].width >= 50.0
    assert blocks[3].x + 50.0 <= measures.width - measures.margin + 1e-6
    for before, after in pairwise(blocks):
        assert before.x + before.width <= after.x


@pytest.mark.parametrize("scale", [0.85, 1.0, 2.0])
def test_the_ruler_never_scales(scale):
    context = demo.context()
    footer = plan_footer(context, scale, 12.0, 400.0, is_landscape=True)
    canvas = Canvas(424, 120, context, style_of("doff"), scale, 12.0)
    draw_footer(canvas, context, footer, "Take off", 50.0, footer.height)
    ((_, box),) = groups_of(Page(424, 120, canvas.marks), GroupRole.RULER)
    assert box.width == 50.0


def test_control_text_never_falls_below_seven_points():
    context = demo.context("fr")
    footer = plan_footer(context, 0.6, 7.0, 120.0, is_landscape=False)
    assert footer.identity.points >= 7
    assert footer.duties.points >= 7
