"""The foot of a poster: code and revision, owner and review date, local-policy caution, ruler."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.furniture.grid import Grid
from signage.compose.lettering import Anchor, Lettering, TextPlace
from signage.compose.parts import RULER_MM, control_lines, copy_items, packed, ruler
from signage.compose.typesetting import Face, Room, fit, line_width, measure, sizes_down
from signage.drawing.marks import FitStep
from signage.drawing.roles import TypeRole
from signage.ground.length import MM_PER_POINT

_LEAST_CONTROL = 7.0
_CAUTION, _LEAST_CAUTION = 12.0, 9.0
_CODE_LINE = 7.2
_TOP = 3.0
_LONGEST_PAGE = 8
"""Heights are found before the number of sheets is known; one digit is as wide as another."""


@dataclass(frozen=True)
class Block:
    """One of the four blocks of a footer, in millimetres."""

    x: float
    width: float


Blocks = tuple[Block, Block, Block, Block]


@dataclass(frozen=True)
class ControlText:
    """Texts at one size, one below the other; ``lines`` counts the lines of each."""

    points: float
    texts: tuple[str, ...]
    lines: tuple[int, ...]


@dataclass(frozen=True)
class Footer:
    """A planned footer. ``height`` is what its words need, in millimetres."""

    scale: float
    blocks: Blocks
    identity: ControlText
    duties: ControlText
    pitch: float
    height: float


def footer_blocks(x: float, width: float, grid: Grid | None) -> Blocks:
    """On the columns where there are four wide ones or six; else where the words need it."""
    columns = 0 if grid is None else len(grid.starts)
    if grid is not None and columns == 4 and grid.width >= RULER_MM:
        second, third, fourth = grid.starts[1:]
        first = Block(x, second - x - grid.gutter)
        return first, Block(second, grid.width), Block(third, grid.width), Block(fourth, grid.width)
    if grid is not None and columns == 6 and grid.width >= RULER_MM:
        _, second, _, fourth, _, sixth = grid.starts
        first = Block(x, second - x - grid.gutter)
        return first, Block(second, grid.span(2)), Block(fourth, grid.span(2)), Block(sixth, grid.width)
    gap = width * 0.02
    last = max(RULER_MM, width * 0.24)
    rest = width - last - 3 * gap
    shares = (0.31, 0.38, 0.31)
    starts = [x, x + rest * shares[0] + gap, x + rest * (shares[0] + shares[1]) + 2 * gap]
    blocks = [Block(start, rest * share) for start, share in zip(starts, shares, strict=True)]
    return blocks[0], blocks[1], blocks[2], Block(x + width - last, last)


def plan_footer(
    context: SheetContext,
    scale: float,
    x: float,
    width: float,
    *,
    is_landscape: bool,
    grid: Grid | None = None,
    page: int = _LONGEST_PAGE,
    pages: int = _LONGEST_PAGE,
) -> Footer:
    """Lines and height of a footer that starts at x; two lines a block where it lies wide, else four."""
    wording = context.wording
    face = Face.of(wording, is_body=True)
    blocks = footer_blocks(x, width, grid)
    of_pages = wording.fixed("page-of", page=wording.number(page), pages=wording.number(pages))
    revision, _, owner, review = control_lines(context, of_pages)
    identity_items = [revision, *copy_items(context), of_pages, wording.name, *context.state_notes()]
    names = [wording.content("library/name"), wording.content(f"ward/{context.ward.id}/name")]
    identity = _set_lines(identity_items, face, scale, blocks[0].width, 2)
    duties = _set_lines([owner, review, *names], face, scale, blocks[1].width, 2 if is_landscape else 4)
    points = control_points(scale)
    pitch = points * face.metrics.size_factor * face.metrics.body_leading * MM_PER_POINT
    caution = fit(
        wording.fixed("local-policy"),
        caution_face(context),
        _least_caution(scale),
        _least_caution(scale),
        Room(blocks[2].width),
    )
    height = _TOP * scale + max(
        _CODE_LINE * scale + sum(identity.lines) * pitch,
        sum(duties.lines) * pitch,
        caution.measured.height + 0.4 * scale,
    )
    return Footer(scale, blocks, identity, duties, pitch, height)


def control_points(scale: float) -> float:
    """The size of control text."""
    return max(_LEAST_CONTROL, 9.5 * scale)


def caution_face(context: SheetContext) -> Face:
    """The face of the local-policy caution."""
    script = context.wording.script
    return Face.of(context.wording, 600, leading=1.2 if script == "Latn" else None)


def _least_caution(scale: float) -> float:
    return max(_LEAST_CAUTION * scale, 8.5)


def _set_lines(items: Sequence[str], face: Face, scale: float, width: float, wanted: int) -> ControlText:
    """One item a line where that makes no more lines than wanted, else packed; smaller before more lines."""
    for points in sizes_down(control_points(scale), _LEAST_CONTROL):
        lines = items if len(items) <= wanted else _evenly(items, face, points, width, wanted)
        if len(lines) <= wanted and max(line_width(line, face, points) for line in lines) <= width:
            return ControlText(points, tuple(lines), (1,) * len(lines))
    texts = packed(items, face, _LEAST_CONTROL, width)
    counts = tuple(len(measure(text, face, _LEAST_CONTROL, width).lines) for text in texts)
    return ControlText(_LEAST_CONTROL, tuple(texts), counts)


def _evenly(items: Sequence[str], face: Face, points: float, width: float, lines: int) -> Sequence[str]:
    """As many items on each line where that fits, else as they come."""
    share = -(-len(items) // lines)
    pairs = [" · ".join(items[start : start + share]) for start in range(0, len(items), share)]
    if max(line_width(pair, face, points) for pair in pairs) <= width:
        return pairs
    return packed(items, face, points, width)


def draw_footer(
    canvas: Canvas, context: SheetContext, footer: Footer, title: str, y: float, height: float
) -> None:
    """The rule, then the four blocks in reading order; ``title`` stands beside the code."""
    k, blocks = footer.scale, footer.blocks
    canvas.line(canvas.margin, y, canvas.width - canvas.margin, y, None, 0.5 * k, has_butt_caps=True)
    top = y + _TOP * k
    _code_line(canvas, context, title, blocks[0], top, k)
    _lines(canvas, footer.identity, blocks[0], top + _CODE_LINE * k, footer.pitch)
    _lines(canvas, footer.duties, blocks[1], top, footer.pitch)
    canvas.text(
        context.wording.fixed("local-policy"),
        Lettering(TypeRole.LOCAL_POLICY, caution_face(context), _CAUTION * k, floor=_least_caution(k)),
        TextPlace(blocks[2].x, top, blocks[2].width, height=height - _TOP * k),
        message="interface/local-policy",
    )
    points = max(7.5, 6.0 * k)
    ruler(canvas, context, blocks[3].x, top + 2.5, "below", width=blocks[3].width, points=points)


def _code_line(canvas: Canvas, context: SheetContext, title: str, block: Block, top: float, k: float) -> None:
    """The code of the protocol and, so that a torn foot still says what it was, a title if it fits."""
    code = context.wording.code(context.protocol.code)
    centre = top + 2.4 * k
    width = canvas.ink_line(
        code, Lettering(TypeRole.CODE, canvas.face(700), 17 * k), TextPlace(block.x, centre, block.width)
    )
    room = Room(block.width - width - 2.4 * k, _CODE_LINE * k, lines=2)
    points, face = control_points(k) * 1.25, canvas.face(600)
    if fit(title, face, points, _LEAST_CONTROL, room).excess:
        canvas.fit_steps.append(FitStep(TypeRole.CODE_TITLE, "dropped", points, 0.0))
        return
    canvas.text(
        title,
        Lettering(TypeRole.CODE_TITLE, face, points, floor=_LEAST_CONTROL),
        TextPlace(
            block.x + width + 2.4 * k,
            centre,
            room.width,
            height=room.height,
            lines=room.lines,
            anchor=Anchor.MIDDLE,
        ),
    )


def _lines(canvas: Canvas, text: ControlText, block: Block, top: float, pitch: float) -> None:
    face = canvas.face(is_body=True)
    y = top
    for line, count in zip(text.texts, text.lines, strict=True):
        canvas.text(
            line,
            Lettering(
                TypeRole.CONTROL, face, text.points, wanted=max(text.points, control_points(canvas.scale))
            ),
            TextPlace(block.x, y, block.width, lines=count),
        )
        y += count * pitch
