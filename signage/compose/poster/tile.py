"""The cards of a poster: the tile of a big step with the strips that hang under it, and the gate card.

All lengths are those of the design system at k = 1 and grow with the scale of the sheet. A critical step
has a reversed number in a bar: the number, not the size, says that it is critical.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from signage.compose.arrangement import Module, NumberedStep
from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.furniture.grid import Grid
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.parts import container_tag
from signage.compose.poster.compact_card import TEXT_PAD, CompactCard
from signage.compose.poster.layer_signs import sign_of
from signage.compose.poster.measures import Measures
from signage.compose.poster.sizes import (
    ABOVE_PICTURE,
    NUMBER_COLUMN,
    SizeFinder,
    Sizes,
    small_text_width,
)
from signage.compose.poster.words import PosterWords
from signage.compose.typesetting import line_width
from signage.compose.word_stack import StackSizes
from signage.drawing.marks import Structure
from signage.drawing.roles import GroupRole, TypeRole
from signage.pictograms.palette import Palette

_ALL = (True, True, True, True)
_FOOT = (False, False, True, True)
_NONE = (False, False, False, False)
CARD_RADIUS = 2.4
_BAR = 6.2
_BIG_NUMBER = 30.0
_SMALL_NUMBER = 17.0


@dataclass(frozen=True)
class Drawing:
    """A poster page being drawn: where to, from what, and how large; ``cards`` are its strips and gates."""

    canvas: Canvas
    context: SheetContext
    finder: SizeFinder
    measures: Measures
    grid: Grid
    sizes: Sizes
    tile: float
    cards: Mapping[str, CompactCard]

    @property
    def words(self) -> PosterWords:
        """The words of the poster."""
        return self.finder.words

    @property
    def k(self) -> float:
        """The scale of the sheet."""
        return self.measures.scale

    def message(self, numbered: NumberedStep, field: str = "text") -> str:
        """The context of a text of a step."""
        return f"{self.context.protocol.id}/{numbered.step.told_as}/{field}"

    def palette(self, numbered: NumberedStep) -> Palette:
        """Hygiene has its own colour on every theme."""
        style = self.canvas.style
        return style.care_palette if numbered.is_hygiene else style.palette


def draw_module(drawing: Drawing, module: Module, x: float, y: float, strips: float) -> None:
    """One card: the tile and the strips that hang under it, in one outline.

    ``strips`` is the greatest height of the strips of any card of the row: all cards of a row end level,
    with their strips at the foot.
    """
    canvas, k, width = drawing.canvas, drawing.k, drawing.grid.width
    heights = [drawing.cards[numbered.step.id].height for numbered in module.hanging]
    height = drawing.tile + strips
    top = y + height - sum(heights)
    canvas.rect(x, y, width, height, canvas.style.paper, radius=CARD_RADIUS * k)
    draw_tile(drawing, module.big, x, y)
    for index, (numbered, pitch) in enumerate(zip(module.hanging, heights, strict=True)):
        corners = _FOOT if index == len(module.hanging) - 1 else _NONE
        draw_small_step(drawing, numbered, x, top, pitch, corners)
        canvas.line(x, top, x + width, top, canvas.style.line, canvas.style.line_width(0.3 * k))
        top += pitch
    draw_outline(drawing, x, y, width, height)


def draw_outline(drawing: Drawing, x: float, y: float, width: float, height: float) -> None:
    """The outline of a card, over all that fills it."""
    style, k = drawing.canvas.style, drawing.k
    drawing.canvas.rect(
        x, y, width, height, None, style.line, style.line_width(0.35 * k), radius=CARD_RADIUS * k
    )


def draw_tile(drawing: Drawing, numbered: NumberedStep, x: float, y: float) -> None:
    """A big step: number and container at the start, picture at the end, headline and detail below."""
    canvas, context, k, sizes = drawing.canvas, drawing.context, drawing.k, drawing.sizes
    width, step = drawing.grid.width, numbered.step
    with canvas.group(
        GroupRole.STEP,
        step.id,
        structure=Structure.ITEM,
        box=canvas.box(x, y, width, drawing.tile),
        number=numbered.number,
        zone=numbered.zone,
        kind=numbered.kind.value,
        critical=step.critical,
    ):
        _big_number(drawing, numbered, x, y)
        with canvas.group(structure=Structure.BODY):
            if step.critical:
                _critical_word(drawing, x, y)
            canvas.picture(
                step.picture,
                _picture_x(drawing, x),
                y + ABOVE_PICTURE * k + sizes.drop,
                sizes.picture,
                context.picture_words(step),
                drawing.palette(numbered),
            )
            _container(drawing, numbered, x, y)
            _tile_words(drawing, numbered, x, y)


def _picture_x(drawing: Drawing, x: float) -> float:
    """At the end edge; nearer to the middle of what is beside the number column on wide cards."""
    k, side = drawing.k, drawing.sizes.picture
    at_end = x + drawing.grid.width - 1.6 * k - side
    slack = drawing.grid.width - (NUMBER_COLUMN + 1.6) * k - side
    return at_end - max(0.0, slack - 8.0 * k) / 2


def _big_number(drawing: Drawing, numbered: NumberedStep, x: float, y: float) -> None:
    canvas, k = drawing.canvas, drawing.k
    style, width = canvas.style, drawing.grid.width
    is_critical = numbered.step.critical
    if is_critical:
        canvas.rect(
            x, y, width, _BAR * k, style.ink, radius=CARD_RADIUS * k, corners=(True, True, False, False)
        )
        canvas.rect(
            x,
            y + _BAR * k - 0.1,
            16.6 * k,
            9.4 * k + 0.1,
            style.ink,
            radius=CARD_RADIUS * k,
            corners=(False, False, True, False),
        )
    with canvas.group(structure=Structure.LABEL):
        canvas.ink_line(
            drawing.context.wording.number(numbered.number),
            Lettering(
                TypeRole.NUMBER,
                canvas.face(700),
                _BIG_NUMBER * k,
                floor=20 * k,
                colour=style.paper if is_critical else style.ink,
            ),
            TextPlace(
                x + (0.6 if is_critical else 2.8) * k,
                y + (_BAR + 3.2) * k,
                15.4 * k,
                align=Align.CENTRE if is_critical else Align.START,
            ),
        )


def _critical_word(drawing: Drawing, x: float, y: float) -> None:
    canvas, k = drawing.canvas, drawing.k
    canvas.ink_line(
        drawing.context.wording.fixed("critical"),
        Lettering(TypeRole.CRITICAL, canvas.face(700), 10.5 * k, floor=8 * k, colour=canvas.style.paper),
        TextPlace(x + 18 * k, y + _BAR * k / 2, drawing.grid.width - 20 * k, height=(_BAR - 1.2) * k),
        message="interface/critical",
    )


def _container(drawing: Drawing, numbered: NumberedStep, x: float, y: float) -> None:
    """The bin or tub, its word level with the foot of the picture."""
    k = drawing.k
    foot = y + ABOVE_PICTURE * k + drawing.sizes.drop + drawing.sizes.picture
    for fixture in drawing.context.containers(numbered.step)[:1]:
        left = x + (TEXT_PAD + 0.6) * k
        container_tag(drawing.canvas, drawing.context, fixture, left, foot - 16.2 * k, 9.2 * k, 12 * k)


def _tile_words(drawing: Drawing, numbered: NumberedStep, x: float, y: float) -> None:
    k, sizes = drawing.k, drawing.sizes
    wanted = StackSizes(
        sizes.headline, sizes.detail, (21 if drawing.measures.is_landscape else 23) * k, 11 * k
    )
    top = y + (ABOVE_PICTURE + 2.4) * k + sizes.drop + sizes.picture
    drawing.finder.stack(drawing.words.of(numbered)).draw(drawing.canvas, x + TEXT_PAD * k, top, wanted)


def draw_gate(drawing: Drawing, numbered: NumberedStep, x: float, y: float, height: float) -> None:
    """A gate: a small card of its own in the head of the zone that it opens."""
    draw_small_step(drawing, numbered, x, y, height, _ALL)
    draw_outline(drawing, x, y, drawing.grid.width, height)


def draw_small_step(
    drawing: Drawing, numbered: NumberedStep, x: float, y: float, height: float, corners: Sequence[bool]
) -> None:
    """A strip or gate: number, sign and words on a line, all else that it says above and below it.

    Hygiene is tinted and has its time at the end of the line.
    """
    canvas, k, step = drawing.canvas, drawing.k, numbered.step
    style, width, card = canvas.style, drawing.grid.width, drawing.cards[numbered.step.id]
    sign = card.line - 1.4 * k
    with canvas.group(
        GroupRole.STEP,
        step.id,
        structure=Structure.ITEM,
        box=canvas.box(x, y, width, height),
        number=numbered.number,
        zone=numbered.zone,
        kind=numbered.kind.value,
        critical=step.critical,
        line=card.line,
    ):
        ground = style.care_tint if numbered.is_hygiene else style.paper
        canvas.rect(x, y, width, height, ground, radius=CARD_RADIUS * k, corners=corners)
        line = y + card.line_top
        rounded = (corners[0] and not card.above.pieces, corners[3] and not card.below.pieces)
        _small_number(drawing, numbered, x, line, card.line, rounded)
        with canvas.group(structure=Structure.BODY):
            card.above.draw(canvas, x + TEXT_PAD * k, y + card.above_top, card.sizes)
            canvas.picture(
                sign_of(drawing.context, numbered),
                x + 11.6 * k,
                line + 0.7 * k,
                sign,
                drawing.context.picture_words(step),
                drawing.palette(numbered),
                is_sign=True,
            )
            _small_words(drawing, numbered, x + (11.6 + 1.6) * k + sign, line, card.line)
            card.below.draw(canvas, x + TEXT_PAD * k, y + card.below_top, card.sizes)


def _small_number(
    drawing: Drawing, numbered: NumberedStep, x: float, y: float, height: float, rounded: tuple[bool, bool]
) -> None:
    """``rounded`` tells whether the block of a critical number reaches into the top and the foot corner."""
    canvas, k, is_critical = drawing.canvas, drawing.k, numbered.step.critical
    style = canvas.style
    if is_critical:
        top, foot = rounded
        block = (top, False, False, foot)
        canvas.rect(x, y, 11.4 * k, height, style.ink, radius=CARD_RADIUS * k, corners=block)
    with canvas.group(structure=Structure.LABEL):
        canvas.ink_line(
            drawing.context.wording.number(numbered.number),
            Lettering(
                TypeRole.NUMBER,
                canvas.face(700),
                _SMALL_NUMBER * k,
                floor=12 * k,
                colour=style.paper if is_critical else style.ink,
            ),
            TextPlace(
                x + (1.2 if is_critical else 2.6) * k,
                y + height / 2,
                9 * k,
                align=Align.CENTRE if is_critical else Align.START,
            ),
        )


def _small_words(drawing: Drawing, numbered: NumberedStep, x: float, y: float, height: float) -> None:
    canvas, k, sizes = drawing.canvas, drawing.k, drawing.sizes
    words = drawing.words.of(numbered)
    width = small_text_width(drawing.grid.width, height, k)
    time = words.time if sizes.shows_times else None
    reserved = line_width(time, canvas.face(600), sizes.strip) if time else 0.0
    middle = y + height / 2
    canvas.text(
        words.headline,
        Lettering(TypeRole.STRIP, canvas.face(700), sizes.strip, wanted=12.5 * k),
        TextPlace(
            x,
            middle,
            width - (reserved + 1.5 * k if time else 0.0),
            height=height - 1.0 * k,
            lines=2,
            anchor=Anchor.MIDDLE,
        ),
        message=drawing.message(numbered),
    )
    if time:
        canvas.text(
            time,
            Lettering(
                TypeRole.TIME, canvas.face(600), sizes.strip, wanted=12.5 * k, colour=canvas.style.care_deep
            ),
            TextPlace(
                x + width - reserved - 0.2, middle, reserved + 0.2, align=Align.END, anchor=Anchor.MIDDLE
            ),
        )
