"""The best layout of a poster: as few sheets as can be, then the columns that leave the largest picture."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import inf

from signage.compose.arrangement import ZonePart
from signage.compose.papers import Paper
from signage.compose.poster.layout import HasNote, PosterLayout, cut_sheets, lay_out
from signage.compose.poster.measures import Measures, grid_of, measures_of, scale_of
from signage.compose.poster.sizes import (
    LEAST_PICTURE,
    NUMBER_COLUMN,
    SizeFinder,
    Sizes,
    largest_picture,
    wanted_headline,
)
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

_ROUNDING = 1e-6
"""More than what sums of such lengths may differ by through rounding."""

GROWTHS = (1.5, 1.35, 1.2, 1.1)
"""Where pictures stay comfortable, words and pictures grow together beyond what the paper asks for."""


@dataclass(frozen=True)
class Plan:
    """A layout with its sizes."""

    layout: PosterLayout
    sizes: Sizes

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
        lost = 0.0 if self.sizes.shows_notes else WORTH_OF_NOTES
        looks = self.sizes.picture / k + self.sizes.headline / k
        return looks - _cost(self.layout) - lost

    @property
    def shown(self) -> tuple[bool, bool]:
        """Whether notes and times are shown: more where it is greater."""
        return self.sizes.shows_notes, self.sizes.shows_times

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


Cut = tuple[tuple[ZonePart, ...], ...]
"""The parts of a poster by sheet."""

_Rung = tuple[bool, bool]
"""Whether notes and times are shown."""


def find_plan(task: Task) -> Plan:
    """The best plan on the fewest sheets; the least bad one where none fits."""
    hollow: list[tuple[int, Plan]] = []
    most_sheets = max(1, min(MOST_SHEETS, task.cards))
    for sheets in range(1, most_sheets + 1):
        best = _best_of(_layouts(task, sheets), lambda layout: _fitting(task, layout))
        if best is None:
            continue
        if not best.is_hollow:
            return _grown(task, sheets, best)
        hollow.append((sheets, best))
    if hollow:
        return _grown(task, *hollow[0])
    tried = (
        _least_bad(task, layout) for sheets in range(1, most_sheets + 1) for layout in _layouts(task, sheets)
    )
    return min(tried, key=lambda plan: plan.lacking)


def _best_of(layouts: Sequence[PosterLayout], plan_on: Callable[[PosterLayout], Plan | None]) -> Plan | None:
    """The plan of most worth, of several the first; layouts that cannot reach it are not tried."""
    found: dict[int, Plan] = {}
    most = [most_worth(layout) for layout in layouts]
    best = -inf
    for index in sorted(range(len(layouts)), key=lambda index: -most[index]):
        if most[index] < best:
            break
        plan = plan_on(layouts[index])
        if plan is not None:
            found[index] = plan
            best = max(best, plan.worth)
    return max((found[index] for index in sorted(found)), key=lambda plan: plan.worth, default=None)


def most_worth(layout: PosterLayout) -> float:
    """A bound on the worth of all plans on the columns of a layout, known before any text is set."""
    k = layout.measures.scale
    return largest_picture(layout) / k + wanted_headline(layout) / k - _cost(layout) + _ROUNDING


def _cost(layout: PosterLayout) -> float:
    """What cut zones and empty places take from the worth of a plan."""
    return 3.0 * sum(page.splits for page in layout.pages) + 2.0 * layout.empty_cells


def _grown(task: Task, sheets: int, plan: Plan) -> Plan:
    """The same poster with everything larger, as long as its pictures stay comfortable."""
    if not task.cards or not plan.is_comfortable:
        return plan
    for growth in GROWTHS:
        layouts = _layouts(task, sheets, growth, COMFORTABLE_PICTURE)
        larger = _best_of(layouts, lambda layout: _as_telling(task, layout, plan))
        if larger is not None:
            return larger
    return plan


def _as_telling(task: Task, layout: PosterLayout, other: Plan) -> Plan | None:
    """A plan that fits, is comfortable and says as much as the other."""
    plan = _fitting(task, layout, other)
    return plan if plan is not None and plan.is_comfortable else None


def _layouts(
    task: Task, sheets: int, growth: float = 1.0, least_picture: float = LEAST_PICTURE
) -> list[PosterLayout]:
    """One for each number of columns that leaves room for a card with the least picture."""
    footer = task.footer_of(scale_of(task.paper) * growth)
    measures = measures_of(task.paper, footer, task.qr_least, growth)
    cut = cut_sheets(task.parts, sheets)
    most = max(sum(len(part.modules) for part in page) for page in cut)
    least_width = (NUMBER_COLUMN + least_picture) * measures.scale
    least_tile = (LEAST_TILE - LEAST_PICTURE + least_picture) * measures.scale
    columns = range(1 if most == 1 else 2, min(MOST_COLUMNS, max(most, 2)) + 1)
    wide = [count for count in columns if grid_of(measures, count).width >= least_width]
    layouts = [_laid_out(task, cut, count, measures, (True, True)) for count in wide]
    roomy = [
        layout
        for layout in layouts
        if layout.grid.width >= least_width and (layout.tile >= least_tile or not task.cards)
    ]
    if not roomy and growth == 1.0:
        # None can fit: the one nearest to it tells by how much the words are too large.
        layouts = [_laid_out(task, cut, count, measures, (True, True)) for count in columns]
        roomy = [max(layouts, key=lambda layout: min(layout.tile, layout.grid.width))]
    return roomy


def _rungs(words: PosterWords) -> list[_Rung]:
    """Times on the strips and notes in the heads, unless only their going lets the words fit."""
    notes = (True, False) if words.notes else (True,)
    times = (True, False) if words.every_rub else (True,)
    return [(with_notes, with_times) for with_notes in notes for with_times in times]


def _on_rungs(task: Task, layout: PosterLayout) -> Iterator[SizeFinder]:
    """The layout with all that the first rung shows, then with less and less."""
    cut = tuple(page.parts for page in layout.pages)
    for rung in _rungs(task.words):
        if rung != (True, True):
            layout = _laid_out(task, cut, len(layout.grid.starts), layout.measures, rung)
        with_notes, with_times = rung
        yield SizeFinder(layout, task.stacks, with_times=with_times, with_notes=with_notes)


def _fitting(task: Task, layout: PosterLayout, other: Plan | None = None) -> Plan | None:
    """The first rung on which everything fits, of those that say as much as the other plan."""
    for finder in _on_rungs(task, layout):
        if other is not None and (finder.with_notes, finder.with_times) < other.shown:
            return None
        sizes = finder.find_fitting()
        if sizes is not None:
            return Plan(finder.layout, sizes)
    return None


def _least_bad(task: Task, layout: PosterLayout) -> Plan:
    """The rung on which the least is too large."""
    plans = (Plan(finder.layout, finder.find()) for finder in _on_rungs(task, layout))
    return min(plans, key=lambda plan: plan.lacking)


def _laid_out(task: Task, cut: Cut, columns: int, measures: Measures, rung: _Rung) -> PosterLayout:
    with_notes, with_times = rung
    noted = _noted(task.words, with_times=with_times, with_notes=with_notes)
    return lay_out(cut, columns, measures, noted, task.stacks.heights(measures))


def _noted(words: PosterWords, *, with_times: bool, with_notes: bool) -> HasNote:
    def has_note(part: ZonePart) -> bool:
        note = words.note(
            part.zone, is_continued=part.is_continued, with_times=with_times, with_notes=with_notes
        )
        return note is not None

    return has_note
