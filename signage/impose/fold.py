"""One sheet of paper folded to eight panels, with one slit in the middle."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from signage.drawing.marks import Group, Mark, Page, PathMark, Sheet, Structure
from signage.drawing.roles import GroupRole
from signage.ground.geometry import Affine, Box, polygon, translation

UPPER_ROW = (7, 6, 5, 4)
"""Panels of the upper row from left to right, turned by 180 degrees, for scripts from left to right."""

LOWER_ROW = (8, 1, 2, 3)
"""Panels of the lower row from left to right."""

PANELS = 8

_INK = "#14202C"


def fold_rows(is_right_to_left: bool) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Upper and lower row of panel numbers; right-to-left booklets mirror the columns."""
    if is_right_to_left:
        return UPPER_ROW[::-1], LOWER_ROW[::-1]
    return UPPER_ROW, LOWER_ROW


def leaves(is_right_to_left: bool) -> set[frozenset[int]]:
    """The pairs of panels that lie back to back when the sheet is folded.

    The outer columns fold at the middle line, the middle columns at the slit.
    """
    upper, lower = fold_rows(is_right_to_left)
    return {
        frozenset((upper[0], lower[0])),
        frozenset((upper[3], lower[3])),
        frozenset((lower[1], lower[2])),
        frozenset((upper[1], upper[2])),
    }


def fold_eight(sheet: Sheet, width: float, height: float, paper: str) -> Sheet:
    """Eight panels (``sheet.pages``) a page of ``width`` x ``height`` mm, in reading order for readers.

    Fold ticks stand in the margins only; dashes show the slit.
    """
    if not sheet.pages or len(sheet.pages) % PANELS:
        raise ValueError(f"a folded sheet holds eight panels, not {len(sheet.pages)}")
    folded = [
        _fold(sheet.pages[start : start + PANELS], sheet.is_right_to_left, width, height)
        for start in range(0, len(sheet.pages), PANELS)
    ]
    return replace(sheet, pages=tuple(folded), paper=paper)


def _fold(pages: Sequence[Page], is_right_to_left: bool, width: float, height: float) -> Page:
    upper, lower = fold_rows(is_right_to_left)
    panel_width, panel_height = width / 4, height / 2
    placed: list[Mark] = []
    for number, page in enumerate(pages, start=1):
        if number in lower:
            transform = translation(lower.index(number) * panel_width, panel_height)
        else:
            transform = Affine(-1, 0, 0, -1, (upper.index(number) + 1) * panel_width, panel_height)
        placed.append(
            Group(
                page.marks,
                role=GroupRole.PANEL,
                name=str(number),
                transform=transform,
                box=Box(0, 0, page.width, page.height),
            )
        )
    placed.append(_fold_marks(width, height))
    return Page(width, height, tuple(placed), min(page.margin for page in pages))


def _fold_marks(width: float, height: float) -> Group:
    column, middle = width / 4, height / 2
    lines = [((i * column, y), (i * column, y + 3)) for i in (1, 2, 3) for y in (1.5, height - 4.5)]
    lines += [((x, middle), (x + 3, middle)) for x in (1.5, width - 4.5)]
    marks: list[Mark] = [PathMark(polygon(line, closed=False), None, _INK, 0.2) for line in lines]
    slit = polygon([(column, middle), (3 * column, middle)], closed=False)
    marks.append(PathMark(slit, None, _INK, 0.3, (2.0, 1.4)))
    return Group(tuple(marks), role=GroupRole.FOLD_MARKS, structure=Structure.ARTEFACT)
