"""The best layout of a poster: as few sheets as can be, then the columns that leave the largest picture."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from signage.compose.arrangement import ZonePart
from signage.compose.papers import Paper
from signage.compose.poster.layout import HasNote, PosterLayout, cut_sheets, lay_out
from signage.compose.poster.measures import Measures, measures_of, scale_of
from signage.compose.poster.sizes import LEAST_PICTURE, NUMBER_COLUMN, SizeFinder, Sizes
from signage.compose.poster.stacks import PosterStacks
from signage.compose.poster.words import PosterWords

MOST_SHEETS = 8
MOST_COLUMNS = 7
LEAST_TILE = 52.0
"""At k = 1: a card lower than this has no room for the least picture and two short texts."""

COMFORTABLE_PICTURE = 40.0
MOST_SPARE = 0.3
WORTH_OF_NOTES = 25.0
"""As much as a picture half as large again: notes say who stands where, and what must be true there."""

GROWTHS = (1.5, 1.35, 1.2, 1.1)
"""Where pictures stay comfortable, words and pictures grow together beyond what the paper asks for."""


@dataclass(frozen=True)
class Plan:
    """A layout with its sizes."""

    layout: PosterLayout
    sizes: Sizes

    @property
    def fits(self) -> bool:
        """Whether nothing is too large."""
        return not self.sizes.excess

    @property
    def is_comfortable(self) -> bool:
        """Whether pictures are as large as they should be for the type beside them."""
        return self.sizes.picture >= COMFORTABLE_PICTURE * self.layout.measures.scale

    @property
    def is_hollow(self) -> bool:
        """Whether cards are so narrow and high that small pictures hang in empty cards."""
        tile = self.layout.tile
        return not self.is_comfortable and self.sizes.spare > MOST_SPARE * tile

    @property
    def worth(self) -> float:
        """Larger pictures and headlines are better; cut zones, empty places and lost notes are worse."""
        k = self.layout.measures.scale
        splits = sum(page.splits for page in self.layout.pages)
        lost = 0.0 if self.sizes.shows_notes else WORTH_OF_NOTES
        looks = self.sizes.picture / k + self.sizes.headline / k
        return looks - 3.0 * splits - 2.0 * self.layout.empty_cells - lost

    def says_as_much_as(self, other: Plan) -> bool:
        """Whether it has lost neither notes nor times that the other plan shows."""
        return (self.sizes.shows_notes, self.sizes.shows_times) >= (
            other.sizes.shows_notes,
            other.sizes.shows_times,
        )

    @property
    def lacking(self) -> float:
        """All millimetres that are too large, to find the least bad plan."""
        return sum(overflow.excess_mm for overflow in self.sizes.excess)


@dataclass(frozen=True)
class Task:
    """What is to be laid out, and on what; ``footer_of`` gives the height of the footer at a scale."""

    parts: tuple[ZonePart, ...]
    stacks: PosterStacks
    paper: Paper
    footer_of: Callable[[float], float]
    qr_least: float

    @property
    def words(self) -> PosterWords:
        """All words of the poster."""
        return self.stacks.words

    @property
    def cards(self) -> int:
        """How many tiles the poster has."""
        return sum(len(part.modules) for part in self.parts)


def find_plan(task: Task) -> Plan:
    """The best plan on the fewest sheets; the least bad one where none fits."""
    hollow: list[tuple[int, Plan]] = []
    rejected: list[Plan] = []
    for sheets in range(1, max(1, min(MOST_SHEETS, task.cards)) + 1):
        plans = _plans(task, sheets)
        fitting = [plan for plan in plans if plan.fits]
        if fitting:
            best = max(fitting, key=lambda plan: plan.worth)
            if not best.is_hollow:
                return _grown(task, sheets, best)
            hollow.append((sheets, best))
        rejected += plans
    if hollow:
        return _grown(task, *hollow[0])
    return min(rejected, key=lambda plan: plan.lacking)


def _grown(task: Task, sheets: int, plan: Plan) -> Plan:
    """The same poster with everything larger, as long as its pictures stay comfortable."""
    if not task.cards or not plan.is_comfortable:
        return plan
    for growth in GROWTHS:
        tried = _plans(task, sheets, growth, COMFORTABLE_PICTURE)
        larger = [
            found for found in tried if found.fits and found.is_comfortable and found.says_as_much_as(plan)
        ]
        if larger:
            return max(larger, key=lambda found: found.worth)
    return plan


def _plans(task: Task, sheets: int, growth: float = 1.0, least_picture: float = LEAST_PICTURE) -> list[Plan]:
    """One plan for each number of columns that leaves room for a card with the least picture."""
    footer = task.footer_of(scale_of(task.paper) * growth)
    measures = measures_of(task.paper, footer, task.qr_least, growth)
    cut = cut_sheets(task.parts, sheets)
    most = max(sum(len(part.modules) for part in page) for page in cut)
    noted = _noted(task.words, with_times=True, with_notes=True)
    layouts = [
        lay_out(cut, columns, measures, noted, task.stacks.heights(measures))
        for columns in range(1 if most == 1 else 2, min(MOST_COLUMNS, max(most, 2)) + 1)
    ]
    least_width = (NUMBER_COLUMN + least_picture) * measures.scale
    least_tile = (LEAST_TILE - LEAST_PICTURE + least_picture) * measures.scale
    roomy = [
        layout
        for layout in layouts
        if layout.grid.width >= least_width and (layout.tile >= least_tile or not task.cards)
    ]
    if not roomy and growth == 1.0:
        # None can fit: the one nearest to it tells by how much the words are too large.
        roomy = [max(layouts, key=lambda layout: min(layout.tile, layout.grid.width))]
    return [_best_of_rungs(task, cut, len(layout.grid.starts), measures) for layout in roomy]


def _best_of_rungs(
    task: Task, cut: tuple[tuple[ZonePart, ...], ...], columns: int, measures: Measures
) -> Plan:
    """Times on the strips and notes in the heads, unless only their going lets the words fit."""
    best: Plan | None = None
    heights = task.stacks.heights(measures)
    for with_notes in (True, False) if task.words.notes else (True,):
        for with_times in (True, False) if task.words.every_rub else (True,):
            noted = _noted(task.words, with_times=with_times, with_notes=with_notes)
            layout = lay_out(cut, columns, measures, noted, heights)
            finder = SizeFinder(layout, task.stacks, with_times=with_times, with_notes=with_notes)
            plan = Plan(layout, finder.find())
            if plan.fits:
                return plan
            if best is None or plan.lacking < best.lacking:
                best = plan
    assert best is not None
    return best


def _noted(words: PosterWords, *, with_times: bool, with_notes: bool) -> HasNote:
    def has_note(part: ZonePart) -> bool:
        note = words.note(
            part.zone, is_continued=part.is_continued, with_times=with_times, with_notes=with_notes
        )
        return note is not None

    return has_note
