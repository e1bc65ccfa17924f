"""Where everything on a poster stands: rows, panels and heads. Pure arithmetic, no text and no ink.

Cards fill rows from start to end. A zone may end inside a row: then two panels stand side by side.
Rows merge into one panel only if both are of one zone from end to end; a row that opens another zone
starts a new panel.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from signage.compose.arrangement import Module, NumberedStep, ZonePart, cut_after
from signage.compose.furniture.grid import Grid
from signage.compose.poster.measures import Measures, grid_of

HasNote = Callable[[ZonePart], bool]
"""Whether the head of a stay in a zone has a note."""

CompactHeights = Callable[[Sequence[ZonePart], Grid], Mapping[str, float]]
"""The heights of the strips and gates of a sheet by step, in millimetres, on the cards of a grid."""


@dataclass(frozen=True)
class Slot:
    """A place in the head of a panel: columns counted from its first one, y from the top of the head."""

    column: int
    columns: int
    y: float
    height: float


@dataclass(frozen=True)
class Head:
    """The head of a panel: name of the zone, gates and a note. ``height`` has no pad."""

    height: float
    name: Slot
    gates: tuple[Slot, ...] = ()
    note: Slot | None = None


@dataclass(frozen=True)
class Segment:
    """The cards of one stay in a zone in one row; ``is_start`` marks the first row of the stay.

    ``row_hanging`` is the greatest height of all strips under one card of the whole row, in millimetres.
    """

    part: int
    first_column: int
    columns: int
    modules: tuple[Module, ...]
    is_start: bool
    row_hanging: float = 0.0


Row = tuple[Segment, ...]


@dataclass(frozen=True)
class Panel:
    """The ground of a zone: its segments, one a row, below one head. Lengths in millimetres on paper.

    ``head_height`` is that of the highest head beside it, so that cards of one row stand level.
    """

    zone: str
    part: int
    gates: tuple[NumberedStep, ...]
    segments: tuple[Segment, ...]
    head: Head
    head_height: float
    is_continued: bool
    is_inside_row: bool
    x: float
    y: float
    width: float
    height: float

    @property
    def first_column(self) -> int:
        """The column of its first card."""
        return self.segments[0].first_column


@dataclass(frozen=True)
class PosterPage:
    """One laid-out sheet. ``tile`` is the height of a card without its strips."""

    parts: tuple[ZonePart, ...]
    bands: tuple[tuple[Panel, ...], ...]
    tile: float

    @property
    def panels(self) -> Iterator[Panel]:
        """Every panel in reading order."""
        return (panel for band in self.bands for panel in band)

    @property
    def splits(self) -> int:
        """How often a zone ends inside a row."""
        return sum(len(band) - 1 for band in self.bands)


@dataclass(frozen=True)
class PosterLayout:
    """All sheets of one poster on one grid."""

    measures: Measures
    grid: Grid
    pages: tuple[PosterPage, ...]

    @property
    def tile(self) -> float:
        """The height that every card has at least."""
        return min((page.tile for page in self.pages if page.tile), default=0.0)

    @property
    def empty_cells(self) -> int:
        """Places in rows that no card fills."""
        used = [
            segment.columns - len(segment.modules)
            for page in self.pages
            for panel in page.panels
            for segment in panel.segments
            if segment.modules
        ]
        return sum(used)


def head_of(columns: int, gates: int, has_note: bool, measures: Measures, gate: float | None = None) -> Head:
    """The head with the least height: the name beside the gates, or on a line of its own above them.

    The note takes what is free after the gates, or the line of the name; without a place it is None.
    ``gate`` is the height of its gates where it is not that of a band.
    """
    height = max(measures.band, gate or 0.0)
    beside = _head_beside(columns, gates, has_note, measures, height)
    above = _head_above(columns, gates, has_note, measures, height)
    if has_note and (beside.note is None) != (above.note is None):
        return above if beside.note is None else beside
    return above if above.height < beside.height else beside


def _head_beside(columns: int, gates: int, has_note: bool, measures: Measures, gate: float) -> Head:
    """The name in the first column, gates in the others, line by line."""
    pitch = gate + measures.pad
    if columns == 1:
        first = measures.band + measures.pad
        slots = [Slot(0, 1, first + line * pitch, gate) for line in range(gates)]
        return Head(first + gates * pitch - measures.pad, Slot(0, 1, 0.0, measures.band), tuple(slots))
    beside = columns - 1
    lines = max(1, math.ceil(gates / beside))
    slots = [Slot(1 + index % beside, 1, index // beside * pitch, gate) for index in range(gates)]
    free = lines * beside - gates
    line = gate if gates else measures.band
    last = Slot(columns - free, free, (lines - 1) * pitch, line)
    note = last if has_note and free else None
    name_columns = columns if not gates and note is None else 1
    height = lines * pitch - measures.pad if gates else measures.band
    return Head(height, Slot(0, name_columns, 0.0, measures.band), tuple(slots), note)


def _head_above(columns: int, gates: int, has_note: bool, measures: Measures, gate: float) -> Head:
    pitch = gate + measures.pad
    lines = math.ceil(gates / columns)
    slots = [
        Slot(
            index % columns,
            1,
            measures.name_line + measures.pad * 0.5 + index // columns * pitch,
            gate,
        )
        for index in range(gates)
    ]
    note = Slot(1, columns - 1, 0.0, measures.name_line) if has_note and columns > 1 else None
    height = measures.name_line + (measures.pad * 0.5 + lines * pitch - measures.pad if gates else 0.0)
    name = Slot(0, 1 if note else columns, 0.0, measures.name_line)
    return Head(height, name, tuple(slots), note)


def rows_of(parts: Sequence[ZonePart], columns: int) -> tuple[Row, ...]:
    """The cards in rows; a zone without cards takes a row of its own."""
    rows: list[list[Segment]] = []
    used = columns
    for index, part in enumerate(parts):
        if not part.modules:
            rows.append([Segment(index, 0, columns, (), is_start=True)])
            used = columns
        modules, is_start = part.modules, True
        while modules:
            if used == columns:
                rows.append([])
                used = 0
            count = min(columns - used, len(modules))
            rows[-1].append(Segment(index, used, count, modules[:count], is_start))
            modules, is_start, used = modules[count:], False, used + count
    return tuple(_finished(row, columns) for row in rows)


def _finished(row: list[Segment], columns: int) -> Row:
    """The last segment of a row reaches to its end."""
    return (*row[:-1], replace(row[-1], columns=columns - row[-1].first_column))


def _with_strips(row: Row, heights: Mapping[str, float]) -> Row:
    """Each segment of the row knows the height of the strips of the row."""
    hanging = max(
        (hanging_height(module, heights) for segment in row for module in segment.modules), default=0.0
    )
    return tuple(replace(segment, row_hanging=hanging) for segment in row)


def hanging_height(module: Module, heights: Mapping[str, float]) -> float:
    """The height of the strips under one card."""
    return sum(heights[numbered.step.id] for numbered in module.hanging)


def merged_rows(rows: Sequence[Row]) -> tuple[tuple[Row, ...], ...]:
    """Rows that share their panel: each of one zone only, and of the same stay in it."""
    merged: list[list[Row]] = []
    for row in rows:
        above = merged[-1][-1] if merged else ()
        is_same = len(row) == len(above) == 1 and row[0].part == above[0].part
        if is_same:
            merged[-1].append(row)
        else:
            merged.append([row])
    return tuple(tuple(band) for band in merged)


def cut_sheets(parts: tuple[ZonePart, ...], sheets: int) -> tuple[tuple[ZonePart, ...], ...]:
    """The parts on so many sheets, with as equal numbers of cards as can be."""
    total = sum(len(part.modules) for part in parts)
    rest, pages = parts, []
    for index in range(sheets - 1):
        share = total // sheets + (1 if index < total % sheets else 0)
        page, rest = cut_after(rest, share)
        pages.append(page)
    return (*pages, rest)


def lay_out(
    sheets: Sequence[tuple[ZonePart, ...]],
    columns: int,
    measures: Measures,
    has_note_of: HasNote,
    heights_of: CompactHeights | None = None,
) -> PosterLayout:
    """Rows, panels and the height of the cards on every sheet; strips and gates are low by themselves."""
    rows = [rows_of(parts, columns) for parts in sheets]
    is_split = any(len(row) > 1 for page in rows for row in page)
    grid = grid_of(measures, columns, is_split=is_split)
    pages = []
    for parts, page in zip(sheets, rows, strict=True):
        heights = dict(_low(parts, measures))
        if heights_of is not None:
            heights |= heights_of(parts, grid)
        strips = [_with_strips(row, heights) for row in page]
        pages.append(_lay_out_page(parts, strips, measures, grid, has_note_of, heights))
    return PosterLayout(measures, grid, tuple(pages))


def _low(parts: Sequence[ZonePart], measures: Measures) -> Iterator[tuple[str, float]]:
    """Strips and gates that hold one line of things: number, sign and headline."""
    for part in parts:
        yield from ((numbered.step.id, measures.band) for numbered in part.gates)
        for module in part.modules:
            yield from ((numbered.step.id, measures.strip) for numbered in module.hanging)


def _lay_out_page(
    parts: tuple[ZonePart, ...],
    rows: Sequence[Row],
    measures: Measures,
    grid: Grid,
    has_note_of: HasNote,
    heights: Mapping[str, float],
) -> PosterPage:
    bands = merged_rows(rows)
    heads = [_heads(band[0], parts, measures, has_note_of, heights) for band in bands]
    fixed = measures.panel_gap * (len(bands) - 1)
    tiles = 0
    for band, head in zip(bands, heads, strict=True):
        fixed += _frame(band, head, measures)
        tiles += len(band) if band[0][0].modules else 0
    tile = (measures.space - fixed) / tiles if tiles else 0.0
    y = measures.top
    laid: list[tuple[Panel, ...]] = []
    for band, head in zip(bands, heads, strict=True):
        height = _frame(band, head, measures) + (tile * len(band) if band[0][0].modules else 0.0)
        laid.append(_panels(parts, band, head, measures, grid, y, height))
        y += height + measures.panel_gap
    return PosterPage(parts, tuple(laid), tile)


def _heads(
    row: Row,
    parts: Sequence[ZonePart],
    measures: Measures,
    has_note_of: HasNote,
    heights: Mapping[str, float],
) -> list[Head]:
    heads = []
    for segment in row:
        part = parts[segment.part]
        gates = len(part.gates) if segment.is_start else 0
        has_note = segment.is_start and has_note_of(part)
        gate = max((heights[numbered.step.id] for numbered in part.gates), default=None)
        heads.append(head_of(segment.columns, gates, has_note, measures, gate))
    return _level(heads)


def _level(heads: Sequence[Head]) -> list[Head]:
    """Names side by side on one line: a head without gates takes the height of its neighbour's name."""
    height = max(head.name.height for head in heads)
    return [
        head
        if head.gates
        else replace(
            head,
            height=height,
            name=replace(head.name, height=height),
            note=head.note and replace(head.note, height=height),
        )
        for head in heads
    ]


def _frame(band: Sequence[Row], heads: Sequence[Head], measures: Measures) -> float:
    """The height of a band of panels without the cards themselves."""
    height = 2 * measures.pad + max(head.height for head in heads)
    if band[0][0].modules:
        strips = sum(row[0].row_hanging for row in band)
        height += measures.pad + strips + (len(band) - 1) * measures.gutter
    return height


def _panels(
    parts: Sequence[ZonePart],
    band: Sequence[Row],
    heads: Sequence[Head],
    measures: Measures,
    grid: Grid,
    y: float,
    height: float,
) -> tuple[Panel, ...]:
    panels = []
    for index, (segment, head) in enumerate(zip(band[0], heads, strict=True)):
        is_first, is_last = index == 0, index == len(band[0]) - 1
        line = 1.2 * measures.scale
        start = measures.margin if is_first else grid.starts[segment.first_column] - grid.gutter / 2
        end = (
            measures.width - measures.margin
            if is_last
            else grid.end(segment.first_column + segment.columns - 1) + grid.gutter / 2 - line
        )
        part = parts[segment.part]
        panels.append(
            Panel(
                zone=part.zone,
                part=segment.part,
                gates=part.gates if head.gates else (),
                segments=tuple(row[index] for row in band),
                head=head,
                head_height=max(each.height for each in heads),
                is_continued=part.is_continued or not segment.is_start,
                is_inside_row=not is_first,
                x=start,
                y=y,
                width=end - start,
                height=height,
            )
        )
    return tuple(panels)
