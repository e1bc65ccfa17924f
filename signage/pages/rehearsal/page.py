"""The report of a rehearsal as one page that stands alone: findings, body maps, equipment, simplifications.

It asks for nothing beyond itself and holds no script. Printed, it fills a sheet of A3 on its side; a
protocol with very many steps or findings flows on to further sheets.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from signage.drawing.svg_path import path_data
from signage.drawing.themes import BAD, LINE
from signage.ground.language import is_right_to_left
from signage.model.library import Library, Protocol
from signage.pages.look import LIGHT
from signage.pages.rehearsal.body_map import PATTERNS, shape_keys
from signage.pages.rehearsal.body_shapes import CANVAS, HEAD, OPEN_FRONT, SITE_SHAPES, SOLES, WORN_SHAPES
from signage.pages.rehearsal.findings import EFFECTS, list_findings
from signage.pages.rehearsal.needs import needs_of
from signage.pages.rehearsal.views import numbers_by_phase, step_maps
from signage.pages.rendering import template_named
from signage.rehearse.rehearsal import NOT_SAFE, SIMPLIFICATIONS
from signage.rehearse.report import Report
from signage.rehearse.variations.study import Study
from signage.rehearse.waivers import Waived

_SHEET_WIDTH, _SHEET_HEIGHT, _GAP = 404.0, 280.0, 1.6
"""What is left of A3 on its side (ISO 216: 420 mm by 297 mm) within margins of 8 mm; the space of maps."""

_SIDES = ((2, 84.0), (14, 132.0))
"""Most findings and width in millimetres of the words beside the maps, as one column or as two."""

_MOST_STEPS = 60
"""With more steps maps would be too small for one sheet."""

_LARGEST_HEIGHT, _FULLEST = 88.0, 0.56
"""The greatest height of a map in millimetres, and the width by height at which a map is fullest."""

_SMALLEST_LETTERS, _LARGEST_LETTERS, _LETTERS_BY_WIDTH = 6.0, 8.5, 0.178
"""Sizes of letters in the maps in points, and how they grow with the width of a map in millimetres."""


@dataclass(frozen=True, slots=True)
class Grid:
    """How a printed sheet is shared out.

    ``side`` is the width of the words beside the maps in mm, 0 where they stand above and below them on
    several sheets. ``height`` is that of all rows of maps in mm, ``letters`` the size of letters in pt.
    """

    side: float
    columns: int
    height: float
    letters: float

    @property
    def name(self) -> str:
        """The class of the page in its stylesheet."""
        return {0.0: "sheets", _SIDES[0][1]: "one-sheet narrow-side"}.get(self.side, "one-sheet wide-side")


def rehearsal_page(library: Library, report: Report, edition: str = "") -> str:
    """The HTML of the report; the same arguments give the same text.

    ``edition`` is a revision or a day to show at the head; without it the page names none.
    """
    protocol, study = report.protocol, report.study
    findings = list_findings(protocol, report.waived, study.rehearsal)
    maps = step_maps(library, protocol, study, findings.numbers, report.waived)
    figures = [person.figure for each in maps for person in (each.main, *each.others) if person is not None]
    return template_named("rehearsal.html").render(
        protocol=protocol,
        edition=edition,
        language=library.source_locale,
        direction="rtl" if is_right_to_left(library.source_locale) else "ltr",
        findings=findings,
        effects=EFFECTS,
        withheld=len(study.rehearsal.withheld),
        maps=maps,
        grid=grid_of(len(maps), findings.length),
        verdict=_verdict(report.waived),
        needs=needs_of(library, protocol, report.equipment),
        load=_load(protocol, study),
        swaps=_swaps(protocol, study),
        swap_count=len(study.free_swaps),
        not_safe=NOT_SAFE,
        simplifications=[sentence for sentence in SIMPLIFICATIONS if sentence != NOT_SAFE],
        colours={**LIGHT, "bad": BAD, "hairline": LINE},
        drawings=_drawings(),
        shapes=[(key, key.split("_")) for key in shape_keys(figures)],
        hatches=[
            (each.name, path_data(each.lines, 2), each.width) for each in PATTERNS.values() if each.directions
        ],
        canvas=CANVAS,
    )


def grid_of(steps: int, findings: int) -> Grid:
    """The columns at which maps are largest beside the words on one sheet, or what flows over several."""
    side = next((width for most, width in _SIDES if findings <= most), 0.0)
    if steps > _MOST_STEPS or not side:
        return Grid(0.0, 12, 0.0, _SMALLEST_LETTERS)
    width = _SHEET_WIDTH - side - 2 * _GAP
    columns = max(range(5, 13), key=lambda columns: _size(steps, columns, width))
    height = min(_SHEET_HEIGHT, max(1, ceil(steps / columns)) * _LARGEST_HEIGHT)
    letters = max(_SMALLEST_LETTERS, min(_LARGEST_LETTERS, width / columns * _LETTERS_BY_WIDTH))
    return Grid(side, columns, round(height, 2), round(letters, 2))


def _size(steps: int, columns: int, width: float) -> float:
    """How large a map is with so many columns: the smaller of its two fits, as a height in millimetres."""
    rows = max(1, ceil(steps / columns))
    across = (width - (columns - 1) * _GAP) / columns
    down = min(_LARGEST_HEIGHT, (_SHEET_HEIGHT - (rows - 1) * _GAP) / rows)
    return min(across / _FULLEST, down)


def _verdict(waived: Waived) -> str:
    """What the findings stop."""
    if waived.blocks_release:
        return "Only drafts may be printed."
    if waived.blocks_approval:
        return "Nobody may sign it yet."
    return "No finding stops it, which does not make it safe."


def _load(protocol: Protocol, study: Study) -> list[tuple[str, int, tuple[tuple[str, str], ...]]]:
    """What is said of steps left out: heading, number of steps, and which by phase."""
    lists = {
        "Load-bearing: without one of them, an S1 or S2": study.steps.load_bearing,
        "Critical: without one of them, an S1, or marked so": study.steps.critical,
        "Marked as critical on the sheets": study.steps.marked,
        "Unexplained: without effect and without a rationale": study.steps.unexplained,
    }
    return [(title, len(ids), numbers_by_phase(protocol, ids)) for title, ids in lists.items()]


def _swaps(protocol: Protocol, study: Study) -> list[tuple[str, str]]:
    """Neighbours that may be exchanged by phase; two of different phases under the names of both."""
    places = {step.id: (phase, n) for phase in protocol.phases for n, step in enumerate(phase.steps, start=1)}
    pairs: dict[str, list[str]] = {}
    for first, second in study.free_swaps:
        (phase, number), (next_phase, next_number) = places[first], places[second]
        title = phase.title if phase is next_phase else f"{phase.title} / {next_phase.title}"
        pairs.setdefault(title, []).append(f"{number}\u2194{next_number}")
    return [(title, ", ".join(each)) for title, each in pairs.items()]


def _drawings() -> dict[str, str]:
    """All shapes as path data by name."""
    shapes = {**SITE_SHAPES, **WORN_SHAPES, "head": HEAD, "soles": SOLES, "open-front": OPEN_FRONT}
    return {name: path_data(shape, decimals=2) for name, shape in shapes.items()}
