"""Several cards on one sheet of paper, with marks for the guillotine."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from signage.drawing.marks import Group, Mark, Page, PathMark, Sheet, Structure
from signage.drawing.roles import GroupRole
from signage.ground.geometry import Box, polygon, translation

_INK = "#14202C"
_TICK = 5.0


def four_up(sheet: Sheet, width: float, height: float, paper: str) -> Sheet:
    """Four cards a page, edge to edge: two cuts make four cards.

    The ticks at the paper edge lie inside the empty margin of the cards, the cross in the middle too.
    Cards run along the reading direction, row by row.
    """
    pages = [
        _page(sheet.pages[start : start + 4], width, height, sheet.is_right_to_left)
        for start in range(0, len(sheet.pages), 4)
    ]
    return replace(sheet, pages=tuple(pages), paper=paper)


def _page(cards: Sequence[Page], width: float, height: float, is_right_to_left: bool) -> Page:
    cell_width, cell_height = width / 2, height / 2
    placed: list[Mark] = []
    for index, card in enumerate(cards):
        row, column = divmod(index, 2)
        if is_right_to_left:
            column = 1 - column
        x = column * cell_width + (cell_width - card.width) / 2
        y = row * cell_height + (cell_height - card.height) / 2
        placed.append(
            Group(
                card.marks,
                role=GroupRole.CARD,
                name=str(index + 1),
                transform=translation(x, y),
                box=Box(0, 0, card.width, card.height),
            )
        )
    placed.append(_cut_marks(width, height))
    return Page(width, height, tuple(placed), cards[0].margin)


def _cut_marks(width: float, height: float) -> Group:
    x, y = width / 2, height / 2
    lines = (
        ((x, 1.0), (x, 1.0 + _TICK)),
        ((x, height - 1.0 - _TICK), (x, height - 1.0)),
        ((1.0, y), (1.0 + _TICK, y)),
        ((width - 1.0 - _TICK, y), (width - 1.0, y)),
        ((x - 3, y), (x + 3, y)),
        ((x, y - 3), (x, y + 3)),
    )
    marks = tuple(PathMark(polygon(line, closed=False), None, _INK, 0.25) for line in lines)
    return Group(marks, role=GroupRole.CUT_MARKS, structure=Structure.ARTEFACT)
