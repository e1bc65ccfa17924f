"""One step on a card of a quarter of A4 or Letter.

Picture and text boxes are the same on every card of a set, whatever the text; so is the size of the
headline.
"""

from __future__ import annotations

from signage.compose import parts
from signage.compose.arrangement import NumberedStep, numbered_steps
from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.envelope import finished_sheet
from signage.compose.furniture.band_form import draw_head_band
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.step_card.measures import (
    ABOVE_WORDS,
    CONTROL_POINTS,
    HEAD,
    MARGIN,
    POLICY_LINES,
    POLICY_TOP,
    RAIL,
    TOP,
    CardSet,
    card_lines,
    card_set,
    detail_face,
    draft_face,
    draft_sentence,
    fit_detail,
    fit_draft,
)
from signage.compose.step_card.row import draw_ruled_row
from signage.compose.step_card.words import CONDITION_GAP, SIZES, STACK_GAP
from signage.compose.theme import style_of
from signage.compose.typesetting import Room, fit, line_width
from signage.compose.zones import draw_rail
from signage.drawing.marks import FitStep, Sheet, Structure
from signage.drawing.roles import GroupRole, TypeRole
from signage.model.library import Phase

_TIGHT = 1.05
"""Leading of titles of two lines in the head."""


def compose_step_cards(context: SheetContext, width: float = 105.0, height: float = 148.0) -> Sheet:
    """All steps of the protocol, one card a page; numbers run inside each phase."""
    by_phase = [(phase, numbered_steps(context.protocol, phase)) for phase in context.protocol.phases]
    cards = card_set(
        context,
        [(phase.id, _card_words(context, phase, step), step) for phase, steps in by_phase for step in steps],
        width,
        height,
    )
    protocol = context.protocol
    return finished_sheet(
        context,
        "step-cards",
        f"{protocol.code} {context.wording.content(f'{protocol.id}/title')}",
        [_card(context, phase, numbered, cards) for phase, steps in by_phase for numbered in steps],
        protocol=protocol,
        paper="A6",
    )


def _card_words(context: SheetContext, phase: Phase, numbered: NumberedStep) -> str:
    """Which card of its phase it is."""
    wording = context.wording
    number, count = wording.number(numbered.number), wording.number(len(phase.steps))
    return wording.fixed("card-of", card=number, cards=count)


def _card(context: SheetContext, phase: Phase, numbered: NumberedStep, cards: CardSet) -> Canvas:
    style = style_of(phase.theme, context.tone)
    canvas = Canvas(cards.width, cards.height, context, style, 1.0, MARGIN)
    with canvas.group(
        GroupRole.STEP,
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
    style, width, middle = canvas.style, cards.inner_width, MARGIN + HEAD / 2
    colour = draw_head_band(canvas, style, MARGIN, MARGIN, width, HEAD)
    title = context.wording.content(f"{context.protocol.id}/title")
    phase_title = context.wording.content(f"{context.protocol.id}/phase/{phase.id}/title")
    word = parts.state_word(context) if context.has_state else ""
    points = 10 if parts.tag_width(canvas, word, HEAD - 4, 10) <= width * 0.3 else 7
    tag = parts.draft_tag(
        canvas, context, MARGIN + width - 3, middle, HEAD - 4, points, colour, is_at_end=True
    )
    phase_face = canvas.face(700, leading=_TIGHT)
    phase_width = min(line_width(phase_title, phase_face, 12) + 1, (width - tag) * 0.45)
    phase_x = MARGIN + width - tag - phase_width - (6 if tag else 3)
    code = context.wording.code(context.protocol.code)
    with canvas.group(structure=Structure.HEADING_1):
        _head_text(
            canvas,
            f"{code}  {title}",
            (MARGIN + 3, middle, phase_x - MARGIN - 5),
            10.5,
            400,
            colour,
            f"{context.protocol.id}/title",
            short=code,
        )
        _head_text(
            canvas,
            phase_title,
            (phase_x, middle, phase_width),
            12,
            700,
            colour,
            f"{context.protocol.id}/phase/{phase.id}/title",
            align=Align.END,
        )


def _head_text(
    canvas: Canvas,
    text: str,
    place: tuple[float, float, float],
    points: float,
    weight: int,
    colour: str,
    message: str | None,
    align: Align = Align.START,
    short: str | None = None,
) -> None:
    """One line, smaller before two, then ``short``; ``place`` is x, the middle and the width."""
    x, middle, width = place
    face, height = canvas.face(weight, leading=_TIGHT), HEAD - 3.4
    one = fit(text, face, points, 8, Room(width, height, 1))
    if short is not None and one.excess and fit(text, face, 7, 7, Room(width, height, 2)).excess:
        canvas.fit_steps.append(FitStep(TypeRole.OVER, "title of the protocol dropped", points, 0.0))
        text, message = short, None
    canvas.text(
        text,
        Lettering(TypeRole.OVER, face, points, floor=7 if one.excess else 8, colour=colour),
        TextPlace(
            x, middle, width, height=height, lines=2 if one.excess else 1, align=align, anchor=Anchor.MIDDLE
        ),
        message=message,
    )


def _upper_half(canvas: Canvas, context: SheetContext, numbered: NumberedStep, cards: CardSet) -> None:
    style, step = canvas.style, numbered.step
    zone = context.ward.zones[numbered.zone]
    height = cards.picture - 1.5
    draw_rail(canvas, zone, MARGIN, TOP, RAIL, height, 0.8, 0.35)
    x = MARGIN + RAIL + 3
    canvas.text(
        context.zone_name(zone.id),
        Lettering(TypeRole.ZONE, canvas.face(600), cards.zone.points, wanted=10.5),
        TextPlace(x, TOP + 0.6, cards.column, lines=cards.zone.lines),
        message=f"ward/{context.ward.id}/zone/{zone.id}",
    )
    block = cards.number
    number = context.wording.number(numbered.number)
    if step.critical:
        with canvas.group(GroupRole.CRITICAL, step.id, structure=Structure.PARAGRAPH):
            canvas.rect(x, TOP + block.top, 24, block.height, style.ink, radius=1.6)
            canvas.ink_line(
                number,
                Lettering(
                    TypeRole.NUMBER, canvas.face(700), block.critical_points, floor=20, colour=style.paper
                ),
                TextPlace(x, TOP + block.middle, 24, align=Align.CENTRE),
            )
            word = cards.critical
            canvas.text(
                word.fitted.text,
                Lettering(TypeRole.CRITICAL, canvas.face(700), word.fitted.points, wanted=9),
                TextPlace(
                    x - 1 if word.is_centred else x,
                    TOP + block.top + block.height + 0.8,
                    word.width,
                    lines=3,
                    align=Align.CENTRE if word.is_centred else Align.START,
                ),
            )
    else:
        canvas.ink_line(
            number,
            Lettering(TypeRole.NUMBER, canvas.face(700), block.points, floor=20),
            TextPlace(x, TOP + block.middle, 27),
        )
    for index, container in enumerate(context.containers(step)):
        start = x + block.tag_x + index * 17
        parts.container_tag(canvas, context, container, start, TOP + block.tag_top, 13, 13)
    palette = style.care_palette if numbered.is_hygiene else style.palette
    canvas.picture(
        step.picture,
        MARGIN + cards.inner_width - cards.picture + 0.5,
        TOP - 0.6,
        cards.picture,
        context.picture_words(step),
        palette,
    )


def _words(canvas: Canvas, context: SheetContext, numbered: NumberedStep, cards: CardSet) -> None:
    protocol, step, words = context.protocol, numbered.step, cards.words[numbered.step.id]
    foot = cards.control_top - sum(row.height for row in words.rows)
    y = TOP + cards.picture + ABOVE_WORDS
    if words.condition.pieces:
        y = words.condition.draw(canvas, MARGIN, y, SIZES) + CONDITION_GAP
    with canvas.group(structure=Structure.HEADING_2):
        y = canvas.text(
            words.headline,
            Lettering(TypeRole.HEADLINE, canvas.face(700), cards.headline_points, wanted=24),
            TextPlace(MARGIN, y, cards.inner_width, lines=cards.headline_lines),
            message=f"{protocol.id}/{step.told_as}/text",
        )
    if words.facts.pieces:
        y = words.facts.draw(canvas, MARGIN, y + STACK_GAP, SIZES)
    if words.detail:
        message = f"{protocol.id}/{step.told_as}/detail"
        _detail(canvas, context, words.detail, y + 1.6, foot - 0.8, cards, message)
    for row in words.rows:
        draw_ruled_row(canvas, context, row, foot, cards)
        foot += row.height


def _detail(
    canvas: Canvas, context: SheetContext, text: str, y: float, foot: float, cards: CardSet, message: str
) -> None:
    width = cards.inner_width
    found = fit_detail(context, text, width, foot - y, cards.detail_points)
    lines = max(3, found.measured.count)
    canvas.text(
        text,
        Lettering(TypeRole.DETAIL, detail_face(context), found.points, wanted=13.5),
        TextPlace(MARGIN, y, width, height=foot - y, lines=lines),
        message=message,
    )


def _control(
    canvas: Canvas, context: SheetContext, phase: Phase, numbered: NumberedStep, cards: CardSet
) -> None:
    style, wording, side = canvas.style, context.wording, cards.qr_side
    width = cards.inner_width - side - 3
    with canvas.artefact():
        canvas.line(MARGIN, cards.control_top, MARGIN + cards.inner_width, cards.control_top, style.ink, 0.4)
    top = cards.control_top + cards.draft_height
    _draft_sentence(canvas, context, cards)
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
        Lettering(TypeRole.LOCAL_POLICY, canvas.face(600), 8.6, floor=7.5),
        TextPlace(MARGIN, top + POLICY_TOP, width, lines=POLICY_LINES),
    )
    face = canvas.face()
    for line in card_lines(context, phase.id, _card_words(context, phase, numbered), width):
        y = canvas.text(
            line,
            Lettering(TypeRole.CONTROL, face, CONTROL_POINTS, colour=style.ink_2),
            TextPlace(MARGIN, y + 0.6, width, lines=3),
        )
    parts.ruler(canvas, context, MARGIN, cards.height - MARGIN - 0.2, "after")


def _draft_sentence(canvas: Canvas, context: SheetContext, cards: CardSet) -> None:
    """Under the rule, over the full width: a card that was cut from its sheet says it too."""
    sentence = draft_sentence(context)
    if sentence:
        found = fit_draft(context, sentence, cards.inner_width)
        canvas.text(
            sentence,
            Lettering(TypeRole.DRAFT_SENTENCE, draft_face(context), found.points, wanted=8),
            TextPlace(MARGIN, cards.control_top + 1.2, cards.inner_width, lines=3),
        )
