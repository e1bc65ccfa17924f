"""One step on a card of a quarter of A4 or Letter.

Picture and text boxes are the same on every card of a set, whatever the text; so is the size of the
headline.
"""

from __future__ import annotations

from dataclasses import dataclass

from signage.compose import parts, qr
from signage.compose.arrangement import NumberedStep, numbered_steps
from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.theme import Band, Style, style_of
from signage.compose.typesetting import Face, Room, common_size, line_width
from signage.compose.zones import draw_rail
from signage.drawing.marks import Page, Sheet, Structure
from signage.model.library import Phase

MARGIN = 7.0
_HEAD = 9.5
_RAIL = 3.6
_TOP = MARGIN + _HEAD + 3.0
_LABELLED_ROW = 5.8


@dataclass(frozen=True)
class CardSet:
    """What all cards of a set share: their size and the boxes in it, in millimetres."""

    width: float
    height: float
    picture: float
    qr_side: float
    headline_points: float

    @property
    def inner_width(self) -> float:
        """Between the margins."""
        return self.width - 2 * MARGIN

    @property
    def control_top(self) -> float:
        """The rule above caution, control text and code."""
        return self.height - MARGIN - self.qr_side - 1.4


def compose_step_cards(context: SheetContext, width: float = 105.0, height: float = 148.0) -> Sheet:
    """All steps of the protocol, one card a page; numbers run inside each phase."""
    pages: list[Page] = []
    fit = []
    overflows = []
    by_phase = [(phase, numbered_steps(context.protocol, phase)) for phase in context.protocol.phases]
    cards = _card_set(context, tuple(step for _, steps in by_phase for step in steps), width, height)
    for phase, steps in by_phase:
        for numbered in steps:
            canvas = _card(context, phase, numbered, cards)
            pages.append(canvas.page())
            fit += canvas.fit_steps
            overflows += canvas.overflows
    wording = context.wording
    return Sheet(
        kind="step-cards",
        protocol=context.protocol.id,
        locale=wording.tag,
        title=f"{context.protocol.code} {wording.content(f'{context.protocol.id}/title')}",
        paper="A6",
        revision=context.revision,
        is_right_to_left=wording.is_right_to_left,
        pages=tuple(pages),
        file_stem=f"{context.protocol.id}-step-cards-{wording.tag}",
        mark=context.mark.value,
        fit=tuple(fit),
        overflows=tuple(overflows),
    )


def _card_set(context: SheetContext, steps: tuple[NumberedStep, ...], width: float, height: float) -> CardSet:
    wording = context.wording
    texts = [wording.step_text(context.protocol, numbered.step, "text") or "" for numbered in steps]
    face = Face(wording.tag, wording.script, 700)
    points = common_size(texts, face, 24, 20, Room(width - 2 * MARGIN, lines=2))
    on_one_line = common_size(texts, face, 24, 20, Room(width - 2 * MARGIN, lines=1))
    if all(line_width(text, face, on_one_line) <= width - 2 * MARGIN for text in texts):
        points = on_one_line
    side = max(21.0, *(qr.smallest_side_mm(context.training_link(numbered.step)) for numbered in steps))
    picture = 48.5 - max(0.0, 148.0 - height)
    return CardSet(width, height, picture, side, points)


def _card(context: SheetContext, phase: Phase, numbered: NumberedStep, cards: CardSet) -> Canvas:
    style = style_of(phase.theme, context.tone)
    canvas = Canvas(cards.width, cards.height, context.wording, style, 1.0, MARGIN)
    with canvas.group(
        "step",
        numbered.step.id,
        structure=Structure.SECTION,
        box=canvas.box(0, 0, cards.width, cards.height),
        number=numbered.number,
        zone=numbered.zone,
        kind="card",
    ):
        _head(canvas, context, phase, cards)
        _upper_half(canvas, context, numbered, cards)
        _words(canvas, context, numbered, cards)
        _control(canvas, context, phase, numbered, cards)
    return canvas


def _head(canvas: Canvas, context: SheetContext, phase: Phase, cards: CardSet) -> None:
    style, width, middle = canvas.style, cards.inner_width, MARGIN + _HEAD / 2
    colour = draw_band(canvas, style, MARGIN, MARGIN, width, _HEAD)
    title = context.wording.content(f"{context.protocol.id}/title")
    phase_title = context.wording.content(f"{context.protocol.id}/phase/{phase.id}/title")
    tag = parts.draft_tag(canvas, context, MARGIN + width - 3, middle, _HEAD - 4, 10, colour, is_at_end=True)
    phase_face = canvas.face(700)
    phase_width = min(line_width(phase_title, phase_face, 12) + 1, width * 0.45)
    phase_x = MARGIN + width - tag - phase_width - (6 if tag else 3)
    with canvas.group(structure=Structure.HEADING_1):
        canvas.text(
            f"{context.wording.code(context.protocol.code)}  {title}",
            MARGIN + 3,
            middle,
            phase_x - MARGIN - 5,
            10.5,
            "over",
            canvas.face(),
            floor=8,
            lines=1,
            valign="middle",
            colour=colour,
        )
        canvas.text(
            phase_title,
            phase_x,
            middle,
            phase_width,
            12,
            "over",
            phase_face,
            floor=9,
            lines=1,
            valign="middle",
            align="end",
            colour=colour,
        )


def draw_band(canvas: Canvas, style: Style, x: float, y: float, width: float, height: float) -> str:
    """A head band in the form of its theme; returns the colour of words on it."""
    form = style.theme.band
    with canvas.artefact():
        if form is Band.FILLED:
            canvas.rect(x, y, width, height, style.deep, radius=1.6)
            return style.paper
        if form is Band.OPEN:
            canvas.rect(x + 0.5, y + 0.5, width - 1, height - 1, style.paper, style.deep, 1.0, 1.4)
        else:
            canvas.rect(x, y, width, height, style.tint, radius=1.2, corners=(True, True, False, False))
            canvas.rect(x, y + height - 1.0, width, 1.0, style.deep)
    return style.ink


def _upper_half(canvas: Canvas, context: SheetContext, numbered: NumberedStep, cards: CardSet) -> None:
    style, step = canvas.style, numbered.step
    zone = context.ward.zones[numbered.zone]
    height = cards.picture - 1.5
    draw_rail(canvas, zone, MARGIN, _TOP, _RAIL, height, 0.8, 0.35)
    x = MARGIN + _RAIL + 3
    column = cards.inner_width - _RAIL - 3 - cards.picture + 2
    canvas.text(
        context.zone_name(zone.id), x, _TOP + 0.6, column, 10.5, "zone", canvas.face(600), floor=8, lines=2
    )
    number = context.wording.number(numbered.number)
    if step.critical:
        with canvas.group("critical", step.id, structure=Structure.PARAGRAPH):
            canvas.rect(x, _TOP + 6.4, 24, 15.6, style.ink, radius=1.6)
            canvas.ink_line(
                number, x, 24, _TOP + 14.2, 38, "number", canvas.face(700), colour=style.paper, align="center"
            )
            word = context.wording.fixed("critical")
            canvas.text(
                word,
                x - 1,
                _TOP + 22.8,
                26,
                9,
                "critical",
                canvas.face(700),
                floor=7,
                lines=1,
                align="center",
            )
    else:
        canvas.ink_line(number, x, 27, _TOP + 14.2, 42, "number", canvas.face(700))
    for container in context.containers(step)[:1]:
        parts.container_tag(canvas, context, container, x + 5.5, _TOP + height - 17.8, 13, 13)
    palette = style.care_palette if numbered.is_hygiene else style.palette
    canvas.picture(
        step.picture,
        MARGIN + cards.inner_width - cards.picture + 0.5,
        _TOP - 0.6,
        cards.picture,
        context.picture_words(step),
        palette,
    )


def _words(canvas: Canvas, context: SheetContext, numbered: NumberedStep, cards: CardSet) -> None:
    protocol, step, wording = context.protocol, numbered.step, context.wording
    rows = [
        (field, text)
        for field in ("why", "caution")
        if (text := wording.step_text(protocol, step, "why" if field == "why" else "caution"))
    ]
    foot = cards.control_top - _LABELLED_ROW * len(rows)
    y = _TOP + cards.picture + 2.8
    headline = wording.step_text(protocol, step, "text") or ""
    with canvas.group(structure=Structure.HEADING_2):
        y = canvas.text(
            headline,
            MARGIN,
            y,
            cards.inner_width,
            cards.headline_points,
            "headline",
            canvas.face(700),
            lines=2,
            message=f"{protocol.id}/{step.id}/text",
        )
    detail = wording.step_text(protocol, step, "detail")
    if detail:
        y += 1.6
        canvas.text(
            detail,
            MARGIN,
            y,
            cards.inner_width,
            13.5,
            "detail",
            canvas.face(is_body=True),
            floor=11.5,
            lines=3,
            height=foot - 0.8 - y,
            message=f"{protocol.id}/{step.id}/detail",
        )
    for index, (field, text) in enumerate(rows):
        _labelled_row(
            canvas,
            context,
            field,
            text,
            foot + _LABELLED_ROW * index,
            cards,
            f"{protocol.id}/{step.id}/{field}",
        )


def _labelled_row(
    canvas: Canvas, context: SheetContext, field: str, text: str, y: float, cards: CardSet, message: str
) -> None:
    width = cards.inner_width
    label_face = canvas.face(700)
    labels = [context.wording.fixed(name) for name in ("why", "caution")]
    label = max(17.5, *(line_width(text, label_face, 9.5) + 2.5 for text in labels))
    with canvas.artefact():
        canvas.line(MARGIN, y, MARGIN + width, y, canvas.style.line, canvas.style.line_width(0.3))
    weight = 600 if field == "caution" else 400
    with canvas.group("labelled", field, structure=Structure.PARAGRAPH):
        canvas.text(
            context.wording.fixed(field),
            MARGIN,
            y + _LABELLED_ROW / 2,
            label - 1,
            9.5,
            "label",
            label_face,
            floor=7.5,
            lines=1,
            valign="middle",
        )
        canvas.text(
            text,
            MARGIN + label,
            y + _LABELLED_ROW / 2,
            width - label,
            10,
            field,
            canvas.face(weight),
            floor=8.5,
            lines=1,
            valign="middle",
            message=message,
        )


def _control(
    canvas: Canvas, context: SheetContext, phase: Phase, numbered: NumberedStep, cards: CardSet
) -> None:
    style, wording, top, side = canvas.style, context.wording, cards.control_top, cards.qr_side
    width = cards.inner_width - side - 3
    with canvas.artefact():
        canvas.line(MARGIN, top, MARGIN + cards.inner_width, top, style.ink, 0.4)
    link = context.training_link(numbered.step)
    canvas.qr_code(
        link,
        MARGIN + cards.inner_width - side,
        top + 1.4,
        side,
        f"{wording.fixed('training-page')}: {wording.code(link)}",
    )
    y = canvas.text(
        wording.fixed("local-policy"),
        MARGIN,
        top + 2.4,
        width,
        8.6,
        "local-policy",
        canvas.face(600),
        floor=7.5,
        lines=3,
    )
    card = wording.fixed(
        "card-of", card=wording.number(numbered.number), cards=wording.number(len(phase.steps))
    )
    revision, page, owner, review = parts.control_lines(context, card)
    code = wording.code(f"{context.protocol.code}-{phase.id}")
    face = canvas.face()
    for line in parts.packed((code, revision, page, owner, review), face, 7, width):
        y = canvas.text(line, MARGIN, y + 0.6, width, 7, "control", face, lines=2, colour=style.ink_2)
    parts.ruler(canvas, context, MARGIN, cards.height - MARGIN - 0.2, "after")
