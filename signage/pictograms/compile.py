"""From painted operations to few filled paths with transparent gaps.

A ``ground`` operation is cut out of everything beneath it; strokes become outlines; paths of one
pigment are united where nothing lies between them; everything is cut to the canvas. The result needs
no strokes, no clips and no background colour.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import pathops

from signage.ground.geometry import Path, Segment, polygon
from signage.pictograms.kit.nodes import CANVAS, CompiledLayer, Member, Operation, Pigment, closed

_CRUMB = 0.3
"""Area in square units below which a contour is dust from the arithmetic, not drawing."""

_AREA_TOLERANCE = 0.4
"""By how many square units the areas of a boolean operation may disagree."""

_NUDGES = (0.003, -0.004, 0.007, -0.011)
_ATTEMPTS = 6

_TRAP = 0.36
"""Twice how far ink stays behind the edge that cuts it and the fill above it."""

_CONIC_TOLERANCE = 0.02
_MITRE_LIMIT = 4


def compile_operations(operations: Iterable[Operation]) -> tuple[CompiledLayer, ...]:
    """The layers of a scene in painting order. Raises KeyError on an unknown path command."""
    layers: list[tuple[Pigment, pathops.Path]] = []
    for operation in _melt(operations):
        pigment, shape = operation
        if pigment == "ground":
            wide = _grown(shape)
            layers = [(other, _subtract(path, wide if other == "ink" else shape)) for other, path in layers]
            layers = [(other, path) for other, path in layers if not _is_empty(path)]
        else:
            _lay(layers, pigment, shape)
    square = closed(polygon([(0, 0), (CANVAS, 0), (CANVAS, CANVAS), (0, CANVAS)]))
    canvas, edge = _shape_of_members(square), _trap(square)
    compiled: list[CompiledLayer] = []
    for pigment, shape in layers:
        cut = combine(shape, canvas, pathops.PathOp.INTERSECTION)
        path = _path_of(_subtract(cut, edge) if pigment == "ink" else cut)
        if path:
            compiled.append((pigment, path))
    return tuple(compiled)


def _melt(operations: Iterable[Operation]) -> Iterable[tuple[Pigment, pathops.Path]]:
    """Shapes of neighbouring operations of one pigment and one clip, united before anything else."""
    pigment: Pigment | None = None
    within: tuple[tuple[Member, ...], ...] = ()
    pending: list[pathops.Path] = []

    def finished() -> pathops.Path:
        united = _unite(pending)
        for members in within:
            united = combine(united, _shape_of_members(members), pathops.PathOp.INTERSECTION)
            if pigment == "ink":
                united = _subtract(united, _trap(members))
        return united

    for operation in operations:
        if pending and pigment is not None and (operation.pigment, operation.within) != (pigment, within):
            yield pigment, finished()
            pending = []
        pigment, within = operation.pigment, operation.within
        pending.append(_shape(operation))
    if pending and pigment is not None:
        yield pigment, finished()


def _lay(layers: list[tuple[Pigment, pathops.Path]], pigment: Pigment, shape: pathops.Path) -> None:
    """Put a shape on top, or into a lower layer of its pigment if nothing between the two is touched."""
    for index in range(len(layers) - 1, -1, -1):
        other, path = layers[index]
        if other == pigment:
            layers[index] = (pigment, combine(path, shape, pathops.PathOp.UNION))
            return
        if _touch(path, shape):
            break
    layers.append((pigment, shape))


def _touch(first: pathops.Path, second: pathops.Path) -> bool:
    """Whether the boxes of any two contours meet: a test that errs towards yes."""
    if not _boxes_meet(first.bounds, second.bounds):
        return False
    boxes = [contour.bounds for contour in second.contours]
    return any(_boxes_meet(contour.bounds, box) for contour in first.contours for box in boxes)


def _boxes_meet(first: tuple[float, ...], second: tuple[float, ...]) -> bool:
    left, top, right, bottom = first
    other_left, other_top, other_right, other_bottom = second
    return not (right < other_left or other_right < left or bottom < other_top or other_bottom < top)


def _is_empty(path: pathops.Path) -> bool:
    return len(path) == 0


def _subtract(path: pathops.Path, shape: pathops.Path) -> pathops.Path:
    return combine(path, shape, pathops.PathOp.DIFFERENCE) if _boxes_meet(path.bounds, shape.bounds) else path


def combine(first: pathops.Path, second: pathops.Path, how: pathops.PathOp) -> pathops.Path:
    """A boolean operation whose areas add up.

    The arithmetic of the library now and then loses a contour where outlines nearly coincide. The areas
    of the union, the intersection and the difference of two shapes bind each other; where they do
    not, the second shape is nudged by a few thousandths of a unit and the operation done again.
    """
    result = pathops.op(first, second, how, fix_winding=True)
    for nudge in _NUDGES:
        if _adds_up(first, second, how, result):
            break
        moved = second.transform(1, 0, 0, 1, nudge, -nudge / 2)
        result = pathops.op(first, moved, how, fix_winding=True)
    return result


def _adds_up(first: pathops.Path, second: pathops.Path, how: pathops.PathOp, result: pathops.Path) -> bool:
    whole, other, found = abs(first.area), abs(second.area), abs(result.area)
    union, intersection = pathops.PathOp.UNION, pathops.PathOp.INTERSECTION
    if how == union:
        shared = abs(pathops.op(first, second, intersection, fix_winding=True).area)
        wanted = whole + other - shared
    elif how == intersection:
        wanted = whole - abs(pathops.op(first, second, pathops.PathOp.DIFFERENCE, fix_winding=True).area)
    else:
        wanted = whole - abs(pathops.op(first, second, intersection, fix_winding=True).area)
    return bool(abs(found - wanted) <= _AREA_TOLERANCE)


def _unite(shapes: Sequence[pathops.Path]) -> pathops.Path:
    united = shapes[0]
    for shape in shapes[1:]:
        united = combine(united, shape, pathops.PathOp.UNION)
    return united


def _shape(operation: Operation) -> pathops.Path:
    pieces: list[pathops.Path] = []
    if operation.is_filled:
        pieces.append(skia_shape(operation.path))
    if operation.width > 0:
        pieces.append(_stroked(operation.path, operation.width, operation.has_butt_caps))
    return _unite(pieces)


def _shape_of_members(members: Sequence[Member]) -> pathops.Path:
    return _unite(
        [
            _stroked(member.path, member.width, has_butt_caps=False)
            if member.width
            else skia_shape(member.path)
            for member in members
        ]
    )


def _trap(members: Sequence[Member]) -> pathops.Path:
    """The rim of a cut: ink stays off it, so that no hair of an outline shows along a cut fill."""
    return _unite([_stroked(member.path, member.width + _TRAP, has_butt_caps=False) for member in members])


def _grown(shape: pathops.Path) -> pathops.Path:
    return _unite([shape, rim(shape, _TRAP)])


def rim(shape: pathops.Path, width: float) -> pathops.Path:
    """A band of a width along the edge of a shape, half of it outside."""
    for attempt in range(_ATTEMPTS):
        band = pathops.Path(shape)
        band.stroke(
            width * (1 + 0.004 * attempt),
            pathops.LineCap.ROUND_CAP,
            pathops.LineJoin.ROUND_JOIN,
            _MITRE_LIMIT,
        )
        band.convertConicsToQuads(_CONIC_TOLERANCE)
        try:
            band.simplify(fix_winding=True)
        except pathops.PathOpsError:
            continue
        if abs(band.area) > _CRUMB:
            return band
    return pathops.Path()


def skia_shape(path: Path) -> pathops.Path:
    """A filled path as a shape of the geometry library, its contours free of overlaps."""
    shape = _outline(path)
    shape.simplify(fix_winding=True)
    return shape


def _stroked(path: Path, width: float, has_butt_caps: bool) -> pathops.Path:
    shape = _outline(path)
    cap = pathops.LineCap.BUTT_CAP if has_butt_caps else pathops.LineCap.ROUND_CAP
    shape.stroke(width, cap, pathops.LineJoin.ROUND_JOIN, _MITRE_LIMIT)
    shape.convertConicsToQuads(_CONIC_TOLERANCE)
    shape.simplify(fix_winding=True)
    return shape


def _outline(path: Path) -> pathops.Path:
    shape = pathops.Path()
    add = {"M": shape.moveTo, "L": shape.lineTo, "C": shape.cubicTo}
    for segment in path:
        command, numbers = str(segment[0]), [float(value) for value in segment[1:]]
        if command == "Z":
            shape.close()
        else:
            add[command](*numbers)
    return shape


def _path_of(shape: pathops.Path) -> Path:
    segments: list[Segment] = []
    for contour in shape.contours:
        if abs(contour.area) < _CRUMB:
            continue
        position = (0.0, 0.0)
        for verb, points in contour:
            if verb == pathops.PathVerb.MOVE:
                segments.append(("M", *_rounded(points)))
            elif verb == pathops.PathVerb.LINE:
                segments.append(("L", *_rounded(points)))
            elif verb == pathops.PathVerb.CUBIC:
                segments.append(("C", *_rounded(points)))
            elif verb == pathops.PathVerb.QUAD:
                segments.append(("C", *_rounded(_cubic(position, points))))
            elif verb == pathops.PathVerb.CLOSE:
                segments.append(("Z",))
            position = points[-1] if points else position
    return tuple(segments)


def _cubic(
    start: tuple[float, float], points: Sequence[tuple[float, float]]
) -> tuple[tuple[float, float], ...]:
    (x, y), end = points
    return (
        (start[0] + (x - start[0]) * 2 / 3, start[1] + (y - start[1]) * 2 / 3),
        (end[0] + (x - end[0]) * 2 / 3, end[1] + (y - end[1]) * 2 / 3),
        end,
    )


def _rounded(points: Iterable[tuple[float, float]]) -> list[float]:
    """Coordinates at a hundredth of a unit, which is 0.005 mm on the largest picture."""
    return [round(value, 2) + 0.0 for point in points for value in point]
