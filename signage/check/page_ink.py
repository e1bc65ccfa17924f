"""The ink of a page as rules see it: every line of text and every shape, in painting order.

Everything is in millimetres on the page. A picture counts with its paths, a code and a pattern with
their boxes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from signage.check.rule import SheetSubject
from signage.drawing.marks import Fill, FormMark, Group, Mark, Page, PathMark, TextMark
from signage.drawing.roles import GroupRole
from signage.ground.box_index import BoxIndex
from signage.ground.geometry import IDENTITY, Affine, Box, Path, path_box, rectangle, transform_path
from signage.text.ink import ink_box

Point = tuple[float, float]

_CURVE_STEPS = 6
"""Chords of a Bézier curve; the curves of sheets are short."""


@dataclass(frozen=True)
class TextInk:
    """The ink boxes of the lines of a text, and its place in the order of painting."""

    mark: TextMark
    lines: tuple[Box, ...]
    order: int


@dataclass(frozen=True)
class ShapeInk:
    """A filled or stroked path, and the role of the group that it belongs to. ``box`` is without stroke."""

    path: Path
    box: Box
    fill: Fill | None
    stroke_width: float
    role: str
    order: int

    @cached_property
    def outlines(self) -> tuple[tuple[Point, ...], ...]:
        """Its outlines as corner points, curves as chords."""
        return outlines_of(self.path)

    @cached_property
    def edges(self) -> tuple[tuple[float, float, float, float], ...]:
        """The straight pieces of its outlines: x and y of both ends."""
        return tuple((*start, *end) for outline in self.outlines for start, end in pairwise(outline))


@dataclass(frozen=True)
class PageInk:
    """The texts of a page, and the shapes that come near one of them."""

    texts: tuple[TextInk, ...]
    shapes: tuple[ShapeInk, ...]

    @cached_property
    def _index(self) -> BoxIndex:
        return BoxIndex([shape.box for shape in self.shapes])

    @cached_property
    def _widest_stroke(self) -> float:
        return max((shape.stroke_width for shape in self.shapes), default=0.0)

    def shapes_near(self, line: Box) -> list[ShapeInk]:
        """The shapes whose boxes, as thick as the widest stroke, come near a line, in painting order."""
        return [self.shapes[i] for i in self._index.near(line, self._widest_stroke / 2)]


def ink_of_pages(subject: SheetSubject) -> list[PageInk]:
    """The ink of every page, found once for all rules of a run."""
    known = subject.cache.get("ink")
    if isinstance(known, list):
        return known
    found = [_ink_of(page) for page in subject.sheet.pages]
    subject.cache["ink"] = found
    return found


def _ink_of(page: Page) -> PageInk:
    texts: list[TextInk] = []
    painted: list[tuple[int, PathMark | FormMark, Affine, str]] = []
    for order, (mark, transform, role) in enumerate(_painted(page.marks, IDENTITY, "")):
        if isinstance(mark, TextMark):
            texts.append(TextInk(mark, tuple(_line_boxes(mark, transform)), order))
        else:
            painted.append((order, mark, transform, role))
    words = BoxIndex([line for text in texts for line in text.lines])
    shapes = [shape for each in painted for shape in _shapes(*each, words)]
    return PageInk(tuple(texts), tuple(shapes))


def _painted(
    marks: Sequence[Mark], transform: Affine, role: str
) -> Iterator[tuple[TextMark | PathMark | FormMark, Affine, str]]:
    """What is painted, in order; what a clip cuts counts as the clip, a code as its square."""
    for mark in marks:
        if not isinstance(mark, Group):
            yield mark, transform, role
        elif mark.clip is not None or (mark.role is GroupRole.QR and mark.box is not None):
            outline = mark.clip or rectangle(mark.box or Box(0, 0, 0, 0))
            yield PathMark(outline, "#000000"), transform @ mark.transform, mark.role
        else:
            inner = transform if mark.transform is IDENTITY else transform @ mark.transform
            yield from _painted(mark.marks, inner, mark.role or role)


def _shapes(
    order: int, mark: PathMark | FormMark, transform: Affine, role: str, words: BoxIndex
) -> Iterator[ShapeInk]:
    """The paths of a mark whose boxes come near a line of text."""
    if isinstance(mark, FormMark):
        square = Box(0, 0, mark.form.size, mark.form.size)
        inner = transform @ mark.transform
        if words.near(inner.box(square)):
            for path in mark.form.marks:
                yield from _shapes(order, path, inner, role, words)
        return
    width = mark.width * transform.scale if mark.stroke else 0.0
    box = transform.box(path_box(mark.path))
    if words.near(box, width / 2):
        yield ShapeInk(transform_path(mark.path, transform), box, mark.fill, width, role, order)


def _line_boxes(mark: TextMark, transform: Affine) -> Iterator[Box]:
    if mark.rotation:
        yield transform.box(mark.box)
        return
    for line in mark.lines:
        ink = ink_box(line.runs)
        if ink.height:
            left, top = line.x + ink.left * mark.size, line.baseline - ink.top * mark.size
            box = Box(left, top, (ink.right - ink.left) * mark.size, ink.height * mark.size)
            yield transform.box(box)


def outlines_of(path: Path) -> tuple[tuple[Point, ...], ...]:
    """The outlines of a path as corner points, curves as chords."""
    outlines: list[list[Point]] = []
    for segment in path:
        numbers = [float(value) for value in segment[1:]]
        if segment[0] == "M":
            outlines.append([(numbers[0], numbers[1])])
        elif segment[0] == "L":
            outlines[-1].append((numbers[0], numbers[1]))
        elif segment[0] == "C":
            outlines[-1] += _chords(outlines[-1][-1], numbers)
        else:
            outlines[-1].append(outlines[-1][0])
    return tuple(tuple(outline) for outline in outlines)


def _chords(start: Point, numbers: Sequence[float]) -> Iterator[Point]:
    x1, y1, x2, y2, x3, y3 = numbers
    for step in range(1, _CURVE_STEPS + 1):
        t = step / _CURVE_STEPS
        s = 1 - t
        yield (
            s**3 * start[0] + 3 * s * s * t * x1 + 3 * s * t * t * x2 + t**3 * x3,
            s**3 * start[1] + 3 * s * s * t * y1 + 3 * s * t * t * y2 + t**3 * y3,
        )


def touches(shape: ShapeInk, box: Box, tolerance: float) -> bool:
    """Whether an edge of the shape, as thick as its stroke, runs more than ``tolerance`` into the box."""
    grow = shape.stroke_width / 2 - tolerance
    left, top, right, bottom = box.x - grow, box.y - grow, box.right + grow, box.bottom + grow
    if right <= left or bottom <= top:
        return False
    ground = shape.box
    if right < ground.x or left > ground.right or bottom < ground.y or top > ground.bottom:
        return False
    for edge in shape.edges:
        x0, y0, x1, y1 = edge
        if (x0 < left and x1 < left) or (x0 > right and x1 > right):
            continue
        if (y0 < top and y1 < top) or (y0 > bottom and y1 > bottom):
            continue
        if _meets(left, top, right, bottom, edge):
            return True
    return False


def covers(shape: ShapeInk, box: Box, tolerance: float) -> bool:
    """Whether the fill of the shape lies over more than ``tolerance`` of the box, in both directions."""
    if shape.fill is None or min(box.overlap(shape.box)) <= tolerance:
        return False
    centre = (box.x + box.width / 2, box.y + box.height / 2)
    return _is_inside(shape, centre) or touches(shape, box, tolerance)


def _is_inside(shape: ShapeInk, point: Point) -> bool:
    """By the non-zero rule of fills: windings about the point."""
    x, y = point
    winding = 0
    for outline in shape.outlines:
        closed = (*outline, outline[0])
        for (x0, y0), (x1, y1) in pairwise(closed):
            if (y0 <= y) != (y1 <= y) and x0 + (y - y0) / (y1 - y0) * (x1 - x0) > x:
                winding += 1 if y1 > y0 else -1
    return winding != 0


def _meets(left: float, top: float, right: float, bottom: float, edge: tuple[float, ...]) -> bool:
    """Whether a straight line has a part in a box (Liang and Barsky's clipping by four half planes)."""
    x0, y0, x1, y1 = edge
    dx, dy = x1 - x0, y1 - y0
    first, last = 0.0, 1.0
    for step, room in ((-dx, x0 - left), (dx, right - x0), (-dy, y0 - top), (dy, bottom - y0)):
        if step == 0:
            if room < 0:
                return False
        elif step < 0:
            first = max(first, room / step)
        else:
            last = min(last, room / step)
    return first <= last
