"""A rough picture of a page, to see without painting it that its ink is far from a limit.

Shapes and pictures are drawn at 30 dots an inch, letters are only counted. What comes near a limit is for
an exact raster to decide (``check/raster.py``).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from signage.check.page_ink import Point, outlines_of
from signage.check.raster import Raster
from signage.check.rule import SheetSubject
from signage.drawing.marks import Dots, Form, FormMark, Group, Mark, Page, PathMark, TextMark
from signage.drawing.roles import GroupRole
from signage.ground.geometry import IDENTITY, Affine, Box, scaling

if TYPE_CHECKING:
    from PIL import Image, ImageDraw

_PER_MM = 30 / 25.4
_STAMP = 96
"""Pixels of a side of a form that is drawn once and then placed in every size."""

_PAPER = 255
_LEAST_OF_EM, _MOST_OF_EM = 0.05, 0.40
"""How much of the area of its ems a text darkens, with what the sketch loses at edges: at 100 dots an inch
0.16 to 0.33 of it is below 238 and 0.05 to 0.39 below 200, in all scripts of the demo (measured)."""


_AS_LETTERS = frozenset({GroupRole.QR, GroupRole.PATTERN})
"""What is as dark as a text and made of as many pieces: 15 to 45 % of its box."""


_Pencil = tuple["ImageDraw.ImageDraw", int | None, int]
"""What draws, the grey that it has instead of that of a mark, and the grey of holes."""


class Sketch(NamedTuple):
    """A page without its letters, and its dark texts: their boxes on the page and the area of their ems."""

    raster: Raster
    texts: tuple[tuple[Box, float], ...]

    def darkness(self, grey: int, box: Box | None = None) -> tuple[float, float]:
        """The least and the greatest share of pixels below a grey, in a box or inside the margins."""
        raster = self.raster
        shapes = raster.share_darker_than(grey, box)
        area = raster.pixel_count(box) / raster.dots_per_mm**2
        ems = sum(area for place, area in self.texts if box is None or _is_in(place, box))
        return shapes + _LEAST_OF_EM * ems / area, shapes + _MOST_OF_EM * ems / area


def _is_in(place: Box, box: Box) -> bool:
    return box.contains(Box(place.x + place.width / 2, place.y + place.height / 2, 0, 0))


def sketches_of(subject: SheetSubject) -> list[Sketch]:
    """The sketches of all pages, drawn once for all rules of a run."""
    known = subject.cache.get("sketches")
    if isinstance(known, list):
        return known
    found = [sketch_of(page) for page in subject.sheet.pages]
    subject.cache["sketches"] = found
    return found


def sketch_of(page: Page) -> Sketch:
    """The sketch of a page; dots count as if they were one dark colour."""
    from PIL import Image, ImageDraw  # noqa: PLC0415 - only rules of grey need it

    image = Image.new("L", (round(page.width * _PER_MM), round(page.height * _PER_MM)), _PAPER)
    pencil = (ImageDraw.Draw(image), None, _PAPER)
    texts: list[tuple[Box, float]] = []
    for mark, transform in _painted(page.marks):
        if isinstance(mark, Group):
            assert mark.box is not None
            place = transform.box(mark.box)
            texts.append((place, place.width * place.height))
        elif isinstance(mark, PathMark):
            _draw_path([pencil], mark, scaling(_PER_MM) @ transform)
        elif isinstance(mark, FormMark):
            _stamp_form(image, mark.form, scaling(_PER_MM) @ transform @ mark.transform)
        elif _grey(mark.colour) < _PAPER / 2:
            ems = sum(run.advance for line in mark.lines for run in line.runs)
            texts.append((transform.box(mark.box), ems * (mark.size * transform.scale) ** 2))
    return Sketch(Raster(image.width, image.height, image.tobytes(), page.margin, _PER_MM), tuple(texts))


def _painted(
    marks: Sequence[Mark], transform: Affine = IDENTITY
) -> Iterator[tuple[TextMark | PathMark | FormMark | Group, Affine]]:
    """What is painted, in order; codes and patterns as their groups."""
    for mark in marks:
        if not isinstance(mark, Group):
            yield mark, transform
            continue
        inner = transform if mark.transform is IDENTITY else transform @ mark.transform
        if mark.role in _AS_LETTERS and mark.box is not None:
            yield mark, inner
        else:
            yield from _painted(mark.marks, inner)


def _draw_path(pencils: Sequence[_Pencil], mark: PathMark, transform: Affine) -> None:
    """Fill a path, its holes with paper, and stroke it."""
    outlines = [[transform.point(*point) for point in outline] for outline in outlines_of(mark.path)]
    if mark.fill is not None:
        grey = _grey(mark.fill.colour if isinstance(mark.fill, Dots) else mark.fill)
        for ring, is_hole in _rings(outlines):
            for pencil, paint, paper in pencils:
                pencil.polygon(ring, fill=paper if is_hole else paint or grey)
    if mark.stroke is not None:
        width = max(1, round(mark.width * transform.scale))
        for outline in outlines:
            for pencil, paint, _ in pencils:
                pencil.line(outline, fill=paint or _grey(mark.stroke), width=width)


def _rings(outlines: Sequence[Sequence[Point]]) -> list[tuple[Sequence[Point], bool]]:
    """Outlines of a fill, largest first, and whether each runs against the largest and so cuts a hole."""
    rings = [(_area(outline), outline) for outline in outlines if len(outline) > 2]
    rings.sort(key=lambda ring: -abs(ring[0]))
    return [(outline, area * rings[0][0] < 0) for area, outline in rings]


def _area(outline: Sequence[Point]) -> float:
    """Twice the area, negative where it runs the other way round."""
    return sum(x * other_y - other_x * y for (x, y), (other_x, other_y) in pairwise((*outline, outline[0])))


def _stamp_form(image: Image.Image, form: Form, transform: Affine) -> None:
    from PIL import Image, ImageOps  # noqa: PLC0415 - as above

    box = transform.box(Box(0, 0, form.size, form.size))
    size = (max(1, round(box.width)), max(1, round(box.height)))
    drawn, mask = (each.resize(size, Image.Resampling.BOX) for each in _stamp(form))
    if transform.mirrors:
        drawn, mask = ImageOps.mirror(drawn), ImageOps.mirror(mask)
    image.paste(drawn, (round(box.x), round(box.y)), mask)


@lru_cache(maxsize=256)
def _stamp(form: Form) -> tuple[Image.Image, Image.Image]:
    """The greys of a form, and where it has any."""
    from PIL import Image, ImageDraw  # noqa: PLC0415 - as above

    drawn = Image.new("L", (_STAMP, _STAMP), _PAPER)
    mask = Image.new("L", (_STAMP, _STAMP), 0)
    to_stamp = scaling(_STAMP / form.size)
    pencils = ((ImageDraw.Draw(drawn), None, _PAPER), (ImageDraw.Draw(mask), _PAPER, 0))
    for mark in form.marks:
        _draw_path(pencils, mark, to_stamp)
    return drawn, mask


@lru_cache(maxsize=256)
def _grey(colour: str) -> int:
    """Luma by the weights of ITU-R BT.601, as the exact raster has it."""
    red, green, blue = (int(colour[start : start + 2], 16) for start in (1, 3, 5))
    return (red * 19595 + green * 38470 + blue * 7471 + 0x8000) >> 16
