"""What can be measured of a picture's legibility. Meaning cannot: a picture still wants a trial.

The limits come from pictures that readers named at 60 pixels; they are the project's own. A finding
is a fact with a number; nothing here repairs.
"""

from __future__ import annotations

import itertools
import math
import operator
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

import pathops

from signage.ground.geometry import Path
from signage.pictograms.colour import as_seen_with, difference, lightness
from signage.pictograms.kit.nodes import CANVAS, ITEM, CompiledLayer, Operation, Pigment
from signage.pictograms.palette import Palette
from signage.pictograms.scan import Grid, coverage
from signage.pictograms.shapes import (
    filled_when_closed,
    lost_when_opened,
    piece_areas,
    united,
    visible_shapes,
)

STROKE_FLOOR = 1.8
"""Narrowest declared stroke in units: 0.25 mm on a picture of 13.5 mm."""

THINNEST_RADIUS = 0.8
THIN_PIECE = 5.0
"""A visible piece of ink or accent that is narrower than twice the radius may have this area: the ends of
wedges, where two fingers part, always are."""

_DRAWN: frozenset[Pigment] = frozenset({"ink", "accent", "bad", "good"})

GAP_RADIUS = 0.5
GAP_AREA = 7.5
"""Gaps narrower than twice the radius may fill this many square units together: the roots of the fingers of
a bare hand always do."""

SLIVER = 5.0
CRUMB = 0.5
_DUST = 0.15
"""Smallest piece that stands alone, and smallest visible piece of one pigment, in square units."""

LIVE_MARGIN = 2.5
COVERAGE_RANGE = (0.16, 0.52)
INK_RANGE = (0.08, 0.36)
ACCENT_RANGE = (0.015, 0.28)
"""Shares of the canvas: all but white garments, ink, and accent with arrows."""

LADDER_STEP = 14.0
ACCENT_LIGHTNESS = (45.0, 65.0)
SMALLEST_DIFFERENCES: Mapping[tuple[str, str], float] = {
    ("accent", "tone"): 30.0,
    ("accent", "ink"): 38.0,
    ("bad", "ink"): 30.0,
}
"""Distances of colours in L*a*b* that must hold with every colour-vision deficiency."""

DISTINCT = 0.06
THUMB_CELLS = 24


@dataclass(frozen=True, slots=True)
class Finding:
    """One measured fault: the rule, the picture or palette, what was found and what was wanted."""

    rule: str
    subject: str
    measured: float
    limit: float
    message: str


def stroke_findings(name: str, operations: Sequence[Operation]) -> list[Finding]:
    """Declared strokes below the floor; gaps and stripes of linings are not strokes."""
    widths = [
        operation.width
        for operation in operations
        if operation.width and not operation.is_filled and operation.pigment != "ground"
    ]
    thinnest = min(widths, default=STROKE_FLOOR)
    if thinnest >= STROKE_FLOOR - 1e-6:
        return []
    message = f"a stroke of {thinnest:.2f} units is thinner than {STROKE_FLOOR}"
    return [Finding("stroke-floor", name, thinnest, STROKE_FLOOR, message)]


def thin_findings(name: str, layers: Sequence[CompiledLayer]) -> list[Finding]:
    """Visible lines and points of one pigment that are thinner than they may be printed."""
    findings: list[Finding] = []
    for pigment, shape in _visible(layers).items():
        if pigment not in _DRAWN:
            continue
        lost = max(lost_when_opened(shape, THINNEST_RADIUS), default=0.0)
        if lost > THIN_PIECE:
            message = f"{lost:.1f} square units of {pigment} are thinner than {2 * THINNEST_RADIUS} units"
            findings.append(Finding("thin-line", name, lost, THIN_PIECE, message))
    return findings


def gap_findings(name: str, layers: Sequence[CompiledLayer]) -> list[Finding]:
    """Gaps that would close in print."""
    filled = filled_when_closed(_foreground(layers), GAP_RADIUS)
    if filled <= GAP_AREA:
        return []
    message = f"gaps narrower than {2 * GAP_RADIUS} unit cover {filled:.1f} square units"
    return [Finding("narrow-gap", name, filled, GAP_AREA, message)]


def sliver_findings(name: str, layers: Sequence[CompiledLayer]) -> list[Finding]:
    """Bits that stand alone too small to be seen as something, and crumbs of one pigment."""
    findings: list[Finding] = []
    alone = min(piece_areas(_foreground(layers)), default=SLIVER)
    if alone < SLIVER:
        findings.append(
            Finding("sliver", name, alone, SLIVER, f"a piece of {alone:.1f} square units stands alone")
        )
    for pigment, shape in _visible(layers).items():
        crumb = min((area for area in piece_areas(shape) if area > _DUST), default=CRUMB)
        if crumb < CRUMB:
            message = f"{pigment} leaves a crumb of {crumb:.2f} square units"
            findings.append(Finding("crumb", name, crumb, CRUMB, message))
    return findings


def live_area_findings(name: str, layers: Sequence[CompiledLayer], cropped: frozenset[str]) -> list[Finding]:
    """Drawing that reaches an edge which the scene does not declare as cropped."""
    foreground = _foreground(layers)
    margin, far = LIVE_MARGIN, CANVAS - LIVE_MARGIN
    strips = {
        "left": (0, 0, margin, CANVAS),
        "right": (far, 0, CANVAS, CANVAS),
        "top": (0, 0, CANVAS, margin),
        "bottom": (0, far, CANVAS, CANVAS),
    }
    findings: list[Finding] = []
    for side, (left, top, right, bottom) in strips.items():
        if side in cropped:
            continue
        strip: Path = (("M", left, top), ("L", right, top), ("L", right, bottom), ("L", left, bottom), ("Z",))
        inside = _without_corners(strip, side, cropped)
        touched = abs(pathops.op(foreground, united([inside]), pathops.PathOp.INTERSECTION).area)
        if touched > 0.05:
            message = f"{touched:.1f} square units lie in the margin at the {side}"
            findings.append(Finding("live-area", name, touched, 0.0, message))
    return findings


def _without_corners(strip: Path, side: str, cropped: frozenset[str]) -> Path:
    """A margin strip without the corners that belong to a cropped neighbour."""
    low = {"left": "top", "right": "top", "top": "left", "bottom": "left"}[side] in cropped
    high = {"left": "bottom", "right": "bottom", "top": "right", "bottom": "right"}[side] in cropped
    first = LIVE_MARGIN if low else 0.0
    last = CANVAS - LIVE_MARGIN if high else CANVAS
    numbers = [[float(value) for value in segment[1:]] for segment in strip[:-1]]
    axis = 1 if side in {"left", "right"} else 0
    for point in numbers:
        point[axis] = min(max(point[axis], first), last)
    return (*(("L" if index else "M", *point) for index, point in enumerate(numbers)), ("Z",))


def balance_findings(name: str, layers: Sequence[CompiledLayer]) -> list[Finding]:
    """Shares of the canvas outside their range: drawing in all, ink, and accent with arrows."""
    areas = {pigment: abs(shape.area) / CANVAS**2 for pigment, shape in _visible(layers).items()}
    shares = (
        ("coverage", sum(share for pigment, share in areas.items() if pigment != "paper"), COVERAGE_RANGE),
        ("ink-share", areas.get("ink", 0.0), INK_RANGE),
        ("accent-share", areas.get("accent", 0.0) + areas.get("mark", 0.0), ACCENT_RANGE),
    )
    return [
        Finding(
            rule,
            name,
            share,
            low if share < low else high,
            f"{rule} is {share:.1%}, wanted {low:.1%} to {high:.1%}",
        )
        for rule, share, (low, high) in shares
        if not low <= share <= high
    ]


def accent_findings(name: str, operations: Sequence[Operation]) -> list[Finding]:
    """The accent outside the item of the step."""
    strangers = {
        operation.role
        for operation in operations
        if operation.pigment == "accent" and operation.role.partition(".")[0] != ITEM
    }
    return [
        Finding("one-accent", name, 1.0, 0.0, f"{role!r} is accent but no piece of the item")
        for role in sorted(strangers)
    ]


def palette_findings(palette: Palette) -> list[Finding]:
    """Lightness steps and distances of a palette's colours; patterns of dots are not judged."""
    colours = {
        pigment: fill
        for pigment in ("ink", "accent", "tone", "paper", "bad")
        if isinstance(fill := palette.fill(_pigment(pigment)), str)
    }
    findings: list[Finding] = []
    ladder = sorted(
        lightness(colours[name]) for name in ("ink", "accent", "tone", "paper") if name in colours
    )
    step = min((high - low for low, high in itertools.pairwise(ladder)), default=LADDER_STEP)
    if step < LADDER_STEP:
        message = f"two meanings differ by only {step:.1f} in lightness"
        findings.append(Finding("lightness-ladder", palette.name, step, LADDER_STEP, message))
    if "accent" in colours:
        found = lightness(colours["accent"])
        low, high = ACCENT_LIGHTNESS
        if not low <= found <= high:
            message = f"the accent has a lightness of {found:.0f}, wanted {low:.0f} to {high:.0f}"
            findings.append(Finding("accent-lightness", palette.name, found, low, message))
    return findings + _deficiency_findings(palette.name, colours)


def _pigment(name: str) -> Pigment:
    known: dict[str, Pigment] = {
        "ink": "ink",
        "accent": "accent",
        "tone": "tone",
        "paper": "paper",
        "bad": "bad",
    }
    return known[name]


def _deficiency_findings(name: str, colours: Mapping[str, str]) -> list[Finding]:
    findings: list[Finding] = []
    if "accent" not in colours:
        return findings
    for (first, second), wanted in SMALLEST_DIFFERENCES.items():
        if first not in colours or second not in colours:
            continue
        for kind in ("protan", "deutan", "tritan"):
            found = difference(as_seen_with(kind, colours[first]), as_seen_with(kind, colours[second]))
            if found < wanted:
                message = f"{first} and {second} differ by {found:.0f} to {kind} eyes, wanted {wanted:.0f}"
                findings.append(Finding("colour-vision", name, found, wanted, message))
    return findings


def thumbnail(layers: Sequence[CompiledLayer], palette: Palette) -> Grid:
    """The picture at 24 by 24 in greys of 0 to 1, blurred as an eye at a distance blurs it."""
    grid = [[1.0] * THUMB_CELLS for _ in range(THUMB_CELLS)]
    for pigment, path in layers:
        fill = palette.fill(pigment)
        grey = lightness(fill) / 100 if isinstance(fill, str) else 0.72
        for row, covered in zip(grid, coverage(path, THUMB_CELLS, CANVAS), strict=True):
            row[:] = [old + (grey - old) * min(share, 1.0) for old, share in zip(row, covered, strict=True)]
    return _blurred(_blurred(grid, across=True), across=False)


def _blurred(grid: Grid, across: bool) -> Grid:
    rows = grid if across else [list(column) for column in zip(*grid, strict=True)]
    last = len(rows[0]) - 1
    soft = [
        [
            0.25 * row[max(index - 1, 0)] + 0.5 * row[index] + 0.25 * row[min(index + 1, last)]
            for index in range(len(row))
        ]
        for row in rows
    ]
    return soft if across else [list(column) for column in zip(*soft, strict=True)]


def distance(first: Grid, second: Grid) -> float:
    """The mean difference of two thumbnails."""
    cells = map(abs, map(operator.sub, itertools.chain(*first), itertools.chain(*second)))
    return math.fsum(cells) / (len(first) * len(first[0]))


def distinctness_findings(thumbnails: Mapping[str, Grid]) -> list[Finding]:
    """Pairs of pictures that look alike at a glance without colour."""
    findings: list[Finding] = []
    for first, second in itertools.combinations(sorted(thumbnails), 2):
        found = distance(thumbnails[first], thumbnails[second])
        if found < DISTINCT:
            message = f"{first} and {second} differ by only {found:.3f}"
            findings.append(Finding("distinct", f"{first}/{second}", found, DISTINCT, message))
    return findings


@lru_cache(maxsize=1024)
def _foreground_of(layers: tuple[CompiledLayer, ...]) -> pathops.Path:
    return united(path for _, path in layers)


def _foreground(layers: Sequence[CompiledLayer]) -> pathops.Path:
    return _foreground_of(tuple(layers))


@lru_cache(maxsize=1024)
def _visible_of(layers: tuple[CompiledLayer, ...]) -> Mapping[Pigment, pathops.Path]:
    return visible_shapes(layers)


def _visible(layers: Sequence[CompiledLayer]) -> Mapping[Pigment, pathops.Path]:
    return _visible_of(tuple(layers))


def scene_findings(
    name: str,
    operations: Sequence[Operation],
    layers: Sequence[CompiledLayer],
    cropped: frozenset[str],
) -> list[Finding]:
    """Every finding about one picture by itself."""
    return [
        *stroke_findings(name, operations),
        *thin_findings(name, layers),
        *gap_findings(name, layers),
        *sliver_findings(name, layers),
        *live_area_findings(name, layers, cropped),
        *balance_findings(name, layers),
        *accent_findings(name, operations),
    ]
