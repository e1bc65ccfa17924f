"""The foot of a poster: code and revision, owner and review date, local-policy caution, ruler."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.parts import RULER_MM, control_lines, packed, ruler
from signage.compose.poster_measures import Grid
from signage.compose.typesetting import Face, line_width
from signage.ground.length import MM_PER_POINT
from signage.model.library import Phase
from signage.text.metrics import metrics_of

_LEAST_CONTROL = 7.0
_CODE_LINE = 7.2
_TOP = 3.0
_JOINER = " · "


@dataclass(frozen=True)
class Block:
    """One of the four blocks of a footer, in millimetres."""

    x: float
    width: float


def control_points(scale: float) -> float:
    """The size of control text."""
    return max(_LEAST_CONTROL, 9.5 * scale)


def line_pitch(context: SheetContext, scale: float) -> float:
    """The distance of the baselines of control text."""
    metrics = metrics_of(context.wording.script)
    return control_points(scale) * metrics.size_factor * metrics.body_leading * MM_PER_POINT


def footer_height(context: SheetContext, scale: float, *, is_landscape: bool) -> float:
    """The height that the control text needs: its second block has two lines where it is wide, else four."""
    pitch = line_pitch(context, scale)
    return _TOP * scale + max((2 if is_landscape else 4) * pitch, _CODE_LINE * scale + 2 * pitch)


def footer_blocks(x: float, width: float, grid: Grid | None) -> tuple[Block, Block, Block, Block]:
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


def draw_footer(
    canvas: Canvas,
    context: SheetContext,
    phase: Phase,
    blocks: tuple[Block, Block, Block, Block],
    y: float,
    height: float,
    page: int,
    pages: int,
) -> None:
    """The rule, then the four blocks in reading order."""
    k, wording = canvas.scale, context.wording
    canvas.line(canvas.margin, y, canvas.width - canvas.margin, y, None, 0.5 * k, has_butt_caps=True)
    top = y + _TOP * k
    of_pages = wording.fixed("page-of", page=wording.number(page), pages=wording.number(pages))
    revision, _, owner, review = control_lines(context, of_pages)
    language = [wording.name]
    if context.is_draft and not context.is_source_language:
        language.append(wording.fixed("translation-unverified"))
    _code_line(canvas, context, phase, blocks[0], top)
    _lines(
        canvas,
        context,
        [_JOINER.join((revision, of_pages)), _JOINER.join(language)],
        blocks[0],
        top + _CODE_LINE * k,
    )
    names = [wording.content("library/name"), wording.content(f"ward/{context.ward.id}/name")]
    duties = [owner, review, *names]
    if canvas.width > canvas.height:
        duties = _in_two_lines(canvas, duties, blocks[1].width)
    _lines(canvas, context, duties, blocks[1], top)
    canvas.text(
        wording.fixed("local-policy"),
        blocks[2].x,
        top,
        blocks[2].width,
        12 * k,
        "caution",
        _caution_face(canvas),
        floor=max(9.0 * k, 8.5),
        height=height - _TOP * k,
        message="interface/local-policy",
    )
    ruler(
        canvas,
        context,
        blocks[3].x,
        top + 2.5,
        "below",
        width=blocks[3].width,
        points=max(7.5, 7.5 * k * 0.8),
    )


def _caution_face(canvas: Canvas) -> Face:
    return canvas.face(600, leading=1.2 if canvas.wording.script == "Latn" else None)


def _code_line(canvas: Canvas, context: SheetContext, phase: Phase, block: Block, top: float) -> None:
    """The code of the protocol and, so that a torn foot still says what it was, the title of its phase."""
    k, wording = canvas.scale, context.wording
    code = wording.code(context.protocol.code)
    centre = top + 2.4 * k
    width = canvas.ink_line(code, block.x, block.width, centre, 17 * k, "code", canvas.face(700))
    canvas.text(
        wording.content(f"{context.protocol.id}/phase/{phase.id}/title"),
        block.x + width + 2.4 * k,
        centre,
        block.width - width - 2.4 * k,
        control_points(k) * 1.25,
        "code-title",
        canvas.face(600),
        floor=control_points(k),
        lines=1,
        valign="middle",
    )


def _in_two_lines(canvas: Canvas, items: Sequence[str], width: float) -> list[str]:
    """Two and two where that fits at any size, else packed as the widths have it."""
    face = canvas.face(is_body=True)
    pairs = [_JOINER.join(items[:2]), _JOINER.join(items[2:])]
    if max(line_width(pair, face, _LEAST_CONTROL) for pair in pairs) <= width:
        return pairs
    return packed(items, face, _LEAST_CONTROL, width)


def _lines(canvas: Canvas, context: SheetContext, texts: list[str], block: Block, top: float) -> None:
    pitch = line_pitch(context, canvas.scale)
    for index, text in enumerate(texts):
        canvas.text(
            text,
            block.x,
            top + index * pitch,
            block.width,
            control_points(canvas.scale),
            "control",
            canvas.face(is_body=True),
            floor=_LEAST_CONTROL,
            lines=1,
        )
