"""Where the cards of a hand-technique poster stand: before, during and after the timed movements.

Upright, the three parts stand one below the other; on its long side, one beside the other. The movements
share a tinted panel, so that the shape says which steps the time is for. Lengths in millimetres.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from signage.compose.arrangement import NumberedStep, numbered_steps
from signage.compose.papers import Paper
from signage.ground.geometry import Box
from signage.model.library import Phase, Protocol

MOVEMENTS = frozenset({"palms", "backs", "between", "finger-backs", "thumbs", "fingertips"})
"""The parts of a hand-hygiene action that are rubbing movements; they share the time of the phase."""

_GAP, _PAD, _HEAD = 4.0, 3.0, 13.0
_WIDE_ROW, _LAST_ROW = 37.0, 27.0
_MARGIN = 10.0
_MOVEMENT_COLUMNS = 3


class Form(StrEnum):
    """How a card is set: words below its picture or beside it."""

    BELOW = "below"
    BESIDE = "beside"


class Stage(StrEnum):
    """When a step happens; cards of one stage have pictures of one size."""

    BEFORE = "before"
    MOVEMENT = "movement"
    AFTER = "after"


@dataclass(frozen=True)
class Cell:
    """The place of one step; its box is logical, with x from the start edge."""

    numbered: NumberedStep
    box: Box
    form: Form
    stage: Stage


@dataclass(frozen=True)
class Parts:
    """The steps of a hand technique."""

    before: tuple[NumberedStep, ...]
    movements: tuple[NumberedStep, ...]
    after: tuple[NumberedStep, ...]


@dataclass(frozen=True)
class HandLayout:
    """Everything on the sheet. ``scale`` is 1 on A4."""

    width: float
    height: float
    scale: float
    margin: float
    title: float
    footer: float
    before: tuple[Cell, ...]
    panel: Box
    movements: tuple[Cell, ...]
    after: tuple[Cell, ...]

    @property
    def cells(self) -> tuple[Cell, ...]:
        """All cards in reading order."""
        return (*self.before, *self.movements, *self.after)

    @property
    def footer_top(self) -> float:
        """The rule above the footer."""
        return self.height - self.margin - self.footer


def parts_of(steps: Sequence[NumberedStep]) -> Parts:
    """The steps before the first movement, from it to the last one, and after."""
    places = [index for index, step in enumerate(steps) if step.step.action.part in MOVEMENTS]
    if not places:
        return Parts(tuple(steps), (), ())
    first, last = places[0], places[-1] + 1
    return Parts(tuple(steps[:first]), tuple(steps[first:last]), tuple(steps[last:]))


def shared_seconds(protocol: Protocol, phase: Phase) -> int | None:
    """The seconds that the movements of a hand technique share; None for phases without such movements."""
    if phase.layout != "hand-technique" or not phase.seconds:
        return None
    return phase.seconds if parts_of(numbered_steps(protocol, phase)).movements else None


def scale_of(paper: Paper) -> float:
    """1 on A4 either way round."""
    width, height = (297.0, 210.0) if paper.is_landscape else (210.0, 297.0)
    return min(paper.width / width, paper.height / height)


def margin_of(paper: Paper) -> float:
    """The empty edge of the sheet."""
    return max(7.0, _MARGIN * scale_of(paper))


def lay_out_hands(paper: Paper, parts: Parts, footer: float, qr_least: float) -> HandLayout:
    """The cards of one sheet; ``footer`` and ``qr_least`` are heights that their content needs."""
    k = scale_of(paper)
    margin = margin_of(paper)
    title = max((29.0 if paper.is_landscape else 30.0) * k, qr_least + 6.65 * k)
    top = margin + title + _GAP * k
    bottom = paper.height - margin - footer - _GAP * k
    area = Box(margin, top, paper.width - 2 * margin, bottom - top)
    lay = _side_by_side if paper.is_landscape else _one_below_another
    before, panel, movements, after = lay(area, parts, k)
    return HandLayout(paper.width, paper.height, k, margin, title, footer, before, panel, movements, after)


_Laid = tuple[tuple[Cell, ...], Box, tuple[Cell, ...], tuple[Cell, ...]]


def _one_below_another(area: Box, parts: Parts, k: float) -> _Laid:
    """Upright: a row before, the panel, a row after."""
    gap, panel_rows = _GAP * k, math.ceil(len(parts.movements) / _MOVEMENT_COLUMNS)
    first, last = _row_form(parts.before), _row_form(parts.after)
    fixed = (2 * _PAD + _HEAD) * k + (panel_rows - 1) * gap
    low_rows = panel_rows
    for steps, form, height in ((parts.before, first, _WIDE_ROW), (parts.after, last, _last_height(parts))):
        if steps:
            fixed += gap + (height * k if form is Form.BESIDE else 0.0)
            low_rows += 0 if form is Form.BESIDE else 1
    tile = (area.height - fixed) / low_rows
    y = area.y
    before: tuple[Cell, ...] = ()
    if parts.before:
        height = _WIDE_ROW * k if first is Form.BESIDE else tile
        before = _row(parts.before, Box(area.x, y, area.width, height), gap, first, Stage.BEFORE)
        y += height + gap
    height = (2 * _PAD + _HEAD) * k + panel_rows * tile + (panel_rows - 1) * gap
    panel = Box(area.x, y, area.width, height)
    y += height + gap
    after: tuple[Cell, ...] = ()
    if parts.after:
        after = _row(parts.after, Box(area.x, y, area.width, area.bottom - y), gap, last, Stage.AFTER)
    return before, panel, _movement_cells(parts.movements, panel, k), after


def _side_by_side(area: Box, parts: Parts, k: float) -> _Laid:
    """On its long side: a column before, the panel, a column after."""
    gap = _GAP * k
    sides = (1 if parts.before else 0) + (1 if parts.after else 0)
    inner = area.width - 2 * _PAD * k - (_MOVEMENT_COLUMNS - 1 + sides) * gap
    column = inner / (_MOVEMENT_COLUMNS + sides)
    x = area.x
    before: tuple[Cell, ...] = ()
    if parts.before:
        before = _column(parts.before, Box(x, area.y, column, area.height), gap, Stage.BEFORE)
        x += column + gap
    width = _MOVEMENT_COLUMNS * column + (_MOVEMENT_COLUMNS - 1) * gap + 2 * _PAD * k
    panel = Box(x, area.y, width, area.height)
    x += width + gap
    after: tuple[Cell, ...] = ()
    if parts.after:
        after = _column(parts.after, Box(x, area.y, column, area.height), gap, Stage.AFTER)
    return before, panel, _movement_cells(parts.movements, panel, k), after


def _row_form(steps: Sequence[NumberedStep]) -> Form:
    """One or two cards of a row are wide, so their words stand beside the picture."""
    return Form.BESIDE if len(steps) <= 2 else Form.BELOW


def _last_height(parts: Parts) -> float:
    return _LAST_ROW if len(parts.after) == 1 else _WIDE_ROW


def _row(steps: Sequence[NumberedStep], box: Box, gap: float, form: Form, stage: Stage) -> tuple[Cell, ...]:
    width = (box.width - (len(steps) - 1) * gap) / len(steps)
    return tuple(
        Cell(step, Box(box.x + index * (width + gap), box.y, width, box.height), form, stage)
        for index, step in enumerate(steps)
    )


def _column(steps: Sequence[NumberedStep], box: Box, gap: float, stage: Stage) -> tuple[Cell, ...]:
    height = (box.height - (len(steps) - 1) * gap) / len(steps)
    return tuple(
        Cell(step, Box(box.x, box.y + index * (height + gap), box.width, height), Form.BELOW, stage)
        for index, step in enumerate(steps)
    )


def _movement_cells(steps: Sequence[NumberedStep], panel: Box, k: float) -> tuple[Cell, ...]:
    gap, rows = _GAP * k, math.ceil(len(steps) / _MOVEMENT_COLUMNS)
    cells: list[Cell] = []
    top = panel.y + (_PAD + _HEAD) * k
    height = (panel.bottom - _PAD * k - top - (rows - 1) * gap) / rows if rows else 0.0
    for row in range(rows):
        box = Box(panel.x + _PAD * k, top + row * (height + gap), panel.width - 2 * _PAD * k, height)
        share = steps[row * _MOVEMENT_COLUMNS : (row + 1) * _MOVEMENT_COLUMNS]
        width = (box.width - (_MOVEMENT_COLUMNS - 1) * gap) / _MOVEMENT_COLUMNS
        cells += [
            Cell(step, Box(box.x + index * (width + gap), box.y, width, height), Form.BELOW, Stage.MOVEMENT)
            for index, step in enumerate(share)
        ]
    return tuple(cells)
