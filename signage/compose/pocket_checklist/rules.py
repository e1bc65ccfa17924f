"""The panels of a pocket checklist that hold its rules: every stop rule, what goes where, the key.

Cautions of phases stand there too where there is room, and the lines on local documents where the back has
none. Blocks are never divided; what one panel cannot hold goes on the next.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from signage.compose import parts
from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.furniture.band_form import draw_head_band
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.pocket_checklist.rows import MARGIN, phase_message
from signage.compose.theme import Style
from signage.compose.typesetting import Face, Room, fit
from signage.drawing.marks import Structure
from signage.drawing.roles import GroupRole, TypeRole
from signage.model.choices import PhaseTheme, RuleKind
from signage.model.library import Phase
from signage.model.messages import pointer_context
from signage.model.walk import contents_of_containers

HEAD = 9.0
HEAD_AIR = 2.0
"""Between the head of a panel and its rows."""

_BLOCK_AIR = 2.2
_NAME_POINTS, _CONTENT_POINTS = 9.5, 10.5
_LEAST_RULE = 9.5
_SIDE = 8.0

_LADDER: tuple[tuple[float, bool, bool], ...] = (
    (13.5, True, False),
    (12.0, True, False),
    (13.5, True, True),
    (12.0, True, True),
    (10.5, True, False),
    (10.5, True, True),
    (13.5, False, True),
    (12.0, False, True),
    (10.5, False, True),
    (_LEAST_RULE, False, True),
)
"""Size of the rules, whether cautions stand too, and whether several panels may be used."""


@dataclass(frozen=True)
class Block:
    """Something that stands on one panel; ``draw`` sets it at a height."""

    height: float
    draw: Callable[[Canvas, float], None]


Panel = tuple[PhaseTheme, Callable[[Canvas], Canvas]]
"""The theme of a panel and what draws it."""


def panel_head(
    canvas: Canvas, context: SheetContext, title: str, message: str | None = None, *, is_stop: bool = False
) -> float:
    """The band at the head of a panel with title and draft tag; returns where the rows begin."""
    inner = canvas.width - 2 * MARGIN
    middle = MARGIN + HEAD / 2
    if is_stop:
        colour = canvas.style.paper
        with canvas.artefact():
            canvas.rect(MARGIN, MARGIN, inner, HEAD, canvas.style.ink, radius=1.2)
    else:
        colour = draw_head_band(canvas, canvas.style, MARGIN, MARGIN, inner, HEAD)
    tag = parts.draft_tag(
        canvas, context, MARGIN + inner - 2, middle, HEAD - 4.6, 7.5, colour, is_at_end=True
    )
    width, face, height = inner - tag - 6, canvas.face(700, leading=1.05), HEAD - 3.2
    one = fit(title, face, 13, 9, Room(width, height, 1))
    with canvas.group(structure=Structure.HEADING_2):
        canvas.text(
            title,
            Lettering(TypeRole.PANEL_TITLE, face, 13, floor=7 if one.excess else 9, colour=colour),
            TextPlace(
                MARGIN + 2.4, middle, width, height=height, lines=2 if one.excess else 1, anchor=Anchor.MIDDLE
            ),
            message=message,
        )
    return MARGIN + HEAD + HEAD_AIR


def fewest_rule_panels(context: SheetContext, room: float, width: float, *, with_pointers: bool) -> int:
    """How many panels the rules need at least."""
    pointers = _pointers(context, width) if with_pointers else []
    return len(_flow([*_blocks(context, width, _LEAST_RULE, with_cautions=False), *pointers], room))


def rule_panels(
    context: SheetContext, room: float, width: float, most: int, *, with_pointers: bool
) -> list[Panel]:
    """The panels of rules in the best form that ``most`` panels can hold; none without anything to say."""
    flowed: list[list[Block]] = []
    pointers = _pointers(context, width) if with_pointers else []
    for points, with_cautions, may_spread in _LADDER:
        flowed = _flow([*_blocks(context, width, points, with_cautions=with_cautions), *pointers], room)
        if len(flowed) <= (most if may_spread else 1):
            break
    return [(_theme(context), _drawing(context, blocks)) for blocks in flowed]


def _theme(context: SheetContext) -> PhaseTheme:
    return PhaseTheme.DOFF if _of_kind(context, RuleKind.STOP) else PhaseTheme.PLAIN


def _drawing(context: SheetContext, blocks: Sequence[Block]) -> Callable[[Canvas], Canvas]:
    def draw(canvas: Canvas) -> Canvas:
        stops, cautions = _of_kind(context, RuleKind.STOP), _of_kind(context, RuleKind.CAUTION)
        kind = "stop" if stops else "caution" if cautions else _first_list(context)
        y = panel_head(canvas, context, context.wording.fixed(kind), is_stop=bool(stops))
        for block in blocks:
            block.draw(canvas, y)
            y += block.height
        return canvas

    return draw


def _flow(blocks: Sequence[Block], room: float) -> list[list[Block]]:
    panels: list[list[Block]] = []
    used = 0.0
    for block in blocks:
        if not panels or used + block.height > room:
            panels.append([])
            used = 0.0
        panels[-1].append(block)
        used += block.height
    return panels


def _of_kind(context: SheetContext, kind: RuleKind) -> list[Phase]:
    return [phase for phase in context.protocol.phases if phase.rule and phase.rule_kind is kind]


def _blocks(context: SheetContext, width: float, points: float, *, with_cautions: bool) -> list[Block]:
    stops, cautions = _of_kind(context, RuleKind.STOP), _of_kind(context, RuleKind.CAUTION)
    blocks = [_rule(context, phase, width, points, 700, None) for phase in stops]
    if with_cautions or not stops:
        word = context.wording.fixed("caution") if stops else None
        smaller = min(points, 11.0) if stops else points
        for phase in cautions:
            blocks.append(_rule(context, phase, width, smaller, 600, word))
            word = None
    blocks += _containers(context, width)
    if any(step.critical for step in context.protocol.steps):
        blocks.append(_critical_key(context, width))
    return blocks


def _first_list(context: SheetContext) -> str:
    """The fixed text that heads the panel of a protocol without rules."""
    takes = contents_of_containers(context.protocol, context.library.garments)
    return "where-it-goes" if takes or not context.protocol.pointers else "local-documents"


def _face(context: SheetContext, weight: int) -> Face:
    return Face.of(context.wording, weight)


def _rule(
    context: SheetContext, phase: Phase, width: float, points: float, weight: int, word: str | None
) -> Block:
    """The rule of a phase under the title of the phase, where the protocol has several."""
    wording = context.wording
    message = f"{context.protocol.id}/phase/{phase.id}/rule"
    face, name_face = _face(context, weight), _face(context, 600)
    names = [word] if word else []
    if len(context.protocol.phases) > 1:
        names.append(wording.content(phase_message(context, phase)))
    name = " · ".join(names)
    room = width - 2
    named = fit(name, name_face, _NAME_POINTS, 8, Room(room, lines=2)) if name else None
    name_height = named.measured.height + 1.4 if named else 0.0
    rule = wording.phase_rule(context.protocol, phase) or ""
    found = fit(rule, face, points, min(points, _LEAST_RULE), Room(room))
    line = 1.6 if word else 0.0

    def draw(canvas: Canvas, y: float) -> None:
        if word:
            with canvas.artefact():
                canvas.line(MARGIN, y, MARGIN + width, y, canvas.style.ink, 0.5)
        y += line
        if named:
            canvas.text(
                name,
                Lettering(TypeRole.LABEL, name_face, named.points, wanted=_NAME_POINTS),
                TextPlace(MARGIN + 1, y, room, lines=2),
            )
        canvas.text(
            rule,
            Lettering(TypeRole.KEY_RULE, face, found.points, wanted=points),
            TextPlace(MARGIN + 1, y + name_height, room),
            message=message,
        )

    return Block(line + name_height + found.measured.height + _BLOCK_AIR, draw)


def _containers(context: SheetContext, width: float) -> list[Block]:
    """What each bin and tub takes, the head of the list with its first row."""
    takes: dict[str, list[str]] = {}
    for bin_id, items in contents_of_containers(context.protocol, context.library.garments):
        if bin_id in context.ward.fixtures:
            names = takes.setdefault(bin_id, [])
            names += [name for name in map(context.garment_name, items) if name not in names]
    blocks = [_container_row(context, bin_id, names, width) for bin_id, names in takes.items()]
    if not blocks:
        return []
    return _headed(_list_head(context, "where-it-goes", width), blocks)


def _headed(head: Block, blocks: Sequence[Block]) -> list[Block]:
    """The head of a list on the panel of its first row."""

    def draw(canvas: Canvas, y: float) -> None:
        head.draw(canvas, y)
        blocks[0].draw(canvas, y + head.height)

    return [Block(head.height + blocks[0].height, draw), *blocks[1:]]


def _pointers(context: SheetContext, width: float) -> list[Block]:
    """The events for which a local document says what to do, each with the document."""
    blocks = [
        _pointer_row(context, pointer_context(context.protocol, hazard), width)
        for hazard in context.protocol.pointers
    ]
    return _headed(_list_head(context, "local-documents", width), blocks) if blocks else []


def _pointer_row(context: SheetContext, message: str, width: float) -> Block:
    words, face = context.wording.content(message), _face(context, 600)
    found = fit(words, face, _NAME_POINTS, 9, Room(width, lines=2))
    if found.excess:
        found = fit(words, face, 9, 9, Room(width))

    def draw(canvas: Canvas, y: float) -> None:
        canvas.text(
            words,
            Lettering(TypeRole.CONTENTS, face, found.points, wanted=_NAME_POINTS),
            TextPlace(MARGIN, y + 0.4, width),
            message=message,
        )

    return Block(found.measured.height + 1.2, draw)


def _list_head(context: SheetContext, name: str, width: float) -> Block:
    words, face = context.wording.fixed(name), _face(context, 700)
    found = fit(words, face, _NAME_POINTS, 8, Room(width, lines=2))

    def draw(canvas: Canvas, y: float) -> None:
        with canvas.artefact():
            canvas.line(MARGIN, y, MARGIN + width, y, canvas.style.ink, 0.5)
        canvas.text(
            words,
            Lettering(TypeRole.LABEL, face, found.points, wanted=_NAME_POINTS),
            TextPlace(MARGIN, y + 1.6, width, lines=2),
        )

    return Block(1.6 + found.measured.height + 0.6, draw)


def _container_row(context: SheetContext, bin_id: str, names: Sequence[str], width: float) -> Block:
    wording, fixture = context.wording, context.ward.fixtures[bin_id]
    named, items = context.container_name(fixture), wording.join(names)
    words = wording.fixed("container-takes", container=named, items=items) if named else items
    face, room = _face(context, 600), width - 15
    found = fit(words, face, _CONTENT_POINTS, 9, Room(room, lines=3))
    if found.excess:
        found = fit(words, face, 9, 9, Room(room))
    height = max(_SIDE + 2.2, found.measured.ink_height + 2.4, found.measured.height + 0.8)

    def draw(canvas: Canvas, y: float) -> None:
        with canvas.group(GroupRole.CONTAINER_ROW, bin_id, structure=Structure.PARAGRAPH):
            top = y + (height - _SIDE) / 2
            parts.container_tag(canvas, context, fixture, MARGIN + 2, top, _SIDE, _SIDE, with_word=False)
            canvas.text(
                words,
                Lettering(TypeRole.CONTENTS, face, found.points, wanted=_CONTENT_POINTS),
                TextPlace(MARGIN + 14, y + height / 2, room, height=height - 0.8, anchor=Anchor.MIDDLE),
            )
        with canvas.artefact():
            _hairline(canvas, canvas.style, y + height, width)

    return Block(height, draw)


def _hairline(canvas: Canvas, style: Style, y: float, width: float) -> None:
    canvas.line(MARGIN, y, MARGIN + width, y, style.line, style.line_width(0.25))


def _critical_key(context: SheetContext, width: float) -> Block:
    """What a number on a block of ink means."""
    wording, face = context.wording, _face(context, 600)
    room = Room(width - 10, lines=2)
    found = fit(wording.fixed("critical"), face, _NAME_POINTS, 8, room)

    def draw(canvas: Canvas, y: float) -> None:
        with canvas.group(GroupRole.CRITICAL, "key", structure=Structure.PARAGRAPH):
            canvas.rect(MARGIN, y + 1.6, 7, 5.6, canvas.style.ink, radius=0.6)
            canvas.ink_line(
                wording.number(1),
                Lettering(TypeRole.NUMBER, canvas.face(700), 10, colour=canvas.style.paper),
                TextPlace(MARGIN, y + 4.4, 7, align=Align.CENTRE),
            )
            canvas.text(
                wording.fixed("critical"),
                Lettering(TypeRole.LEGEND, face, found.points, wanted=_NAME_POINTS),
                TextPlace(MARGIN + 9.5, y + 4.4, room.width, lines=2, anchor=Anchor.MIDDLE),
            )

    return Block(8.6, draw)
