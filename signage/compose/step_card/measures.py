"""What all cards of a set share: boxes and sizes, found for the worst of their words before any is drawn."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import inf

from signage.compose import parts, qr
from signage.compose.arrangement import NumberedStep
from signage.compose.context import SheetContext
from signage.compose.step_card.card_words import CardWords, card_words
from signage.compose.step_card.words import CONDITION_GAP, SIZES, STACK_GAP
from signage.compose.typesetting import Face, Fitted, Room, common_size, fit, line_width, measure, sizes_down
from signage.ground.length import MM_PER_POINT

MARGIN = 7.0
HEAD = 9.5
RAIL = 3.6
TOP = MARGIN + HEAD + 3.0
CONTROL_POINTS = 7.0
_RULER_AIR = 1.0
POLICY_TOP = 2.4
POLICY_LINES = 4
_TAG_HEIGHT = 17.8
"""A container with the word under it."""

_PICTURE = 48.5
LEAST_PICTURE = 27.0
ABOVE_WORDS = 2.8
"""From the foot of the picture to the headline."""

_LEAST_BLOCK = 9.0
_UNDER_BLOCK = 26.0
_BESIDE = 31.0
"""From the start of the number to a container beside it."""

_DETAIL, LEAST_DETAIL = 13.5, 11.5
_COMFORTABLE_PICTURE = 44.0
"""Details give way to it, all of a set together, down to their floor."""

_RUNGS = (
    *((24.0, detail, _COMFORTABLE_PICTURE) for detail in sizes_down(_DETAIL, LEAST_DETAIL)),
    *((most, detail, LEAST_PICTURE) for most, detail in ((24.0, LEAST_DETAIL), (20.0, 10.0), (17.0, 10.0))),
    (15.0, 10.0, LEAST_PICTURE),
)
"""Most for headlines, size of details, least picture: the next where words leave the picture less room."""

_FIGURE_HEIGHT = 0.714
"""Height of a digit of Noto Sans over its em, as drawn in the font."""


@dataclass(frozen=True)
class NumberBlock:
    """The places of number and container under the zone's name, from the head of the picture, in millimetres.

    ``tag_x`` is the start of the container from that of the zone's name.
    """

    top: float
    height: float
    points: float
    critical_points: float
    tag_x: float
    tag_top: float

    @property
    def middle(self) -> float:
        """The centre line of the number."""
        return self.top + self.height / 2


@dataclass(frozen=True)
class ZoneName:
    """How the names of all zones of a set are set."""

    points: float
    lines: int
    height: float


@dataclass(frozen=True)
class CriticalWord:
    """The word under the block of a critical step, with the width of its box in millimetres."""

    fitted: Fitted
    width: float

    @property
    def height(self) -> float:
        """Of its lines."""
        return self.fitted.measured.height

    @property
    def is_centred(self) -> bool:
        """Whether it stands under the middle of the block."""
        return self.width <= _UNDER_BLOCK


@dataclass(frozen=True)
class CardSet:
    """What all cards of a set share: their size and the boxes in it, in millimetres; ``words`` by step."""

    width: float
    height: float
    picture: float
    qr_side: float
    headline_points: float
    headline_lines: int
    detail_points: float
    zone: ZoneName
    number: NumberBlock
    critical: CriticalWord
    draft_height: float
    control_height: float
    words: Mapping[str, CardWords]

    @property
    def inner_width(self) -> float:
        """Between the margins."""
        return self.width - 2 * MARGIN

    @property
    def control_top(self) -> float:
        """The rule above caution, control text and code."""
        return self.height - MARGIN - self.control_height

    @property
    def column(self) -> float:
        """The width beside the picture, for zone, number and container."""
        return self.inner_width - RAIL - 1 - self.picture


def card_set(
    context: SheetContext, steps: Sequence[tuple[str, str, NumberedStep]], width: float, height: float
) -> CardSet:
    """The measures for steps, each with its phase and the words that say which card it is."""
    wording = context.wording
    inner = width - 2 * MARGIN
    cards = [card_words(context, numbered, inner) for *_, numbered in steps]
    points, lines = _headlines([card.headline for card in cards], Face.of(wording, 700), inner)
    side = max(21.0, *(qr.smallest_side_mm(context.training_link(numbered.step)) for *_, numbered in steps))
    draft = draft_sentence(context)
    draft_height = fit_draft(context, draft, inner).height + 1.2 if draft else 0.0
    left = inner - side - 3
    control = draft_height + max(
        side + 1.4, *(_control_height(context, phase, card, left) for phase, card, _ in steps)
    )
    points, detail, free = _climb(context, cards, height - MARGIN - control, inner, points, lines)
    picture = max(LEAST_PICTURE, min(_PICTURE, free))
    zones = [context.zone_name(zone) for zone in dict.fromkeys(numbered.zone for *_, numbered in steps)]
    zone = _zone_name(zones, Face.of(wording, 600), inner - RAIL - 1 - picture)
    critical = _critical_word(context, inner - RAIL - 1 - picture)
    number = _number_block(zone, critical.height + 1.4, picture)
    if number.tag_x >= _BESIDE:
        critical = _critical_word(context, _BESIDE - 2)
        number = _number_block(zone, critical.height + 1.4, picture)
    return CardSet(
        width,
        height,
        picture,
        side,
        points,
        lines,
        detail,
        zone,
        number,
        critical,
        draft_height,
        control,
        {card.numbered.step.id: card for card in cards},
    )


def _climb(
    context: SheetContext,
    cards: Sequence[CardWords],
    room: float,
    width: float,
    points: float,
    lines: int,
) -> tuple[float, float, float]:
    """Points of headlines and details, and the height that the words of every card leave for its picture.

    A rung is left at the first card that has too little; that one is asked first on the next.
    """
    worst_first = list(cards)
    for rung in _RUNGS:
        smaller, detail, least = rung
        points, free = min(points, smaller), inf
        for index, card in enumerate(worst_first):
            words = _words_height(context, card, width, points, lines, detail)
            free = min(free, room - words - TOP - ABOVE_WORDS)
            if free < least and rung is not _RUNGS[-1]:
                worst_first.insert(0, worst_first.pop(index))
                break
        if free >= least:
            break
    return points, detail, free


def _words_height(
    context: SheetContext, words: CardWords, width: float, points: float, lines: int, detail_points: float
) -> float:
    """What all words of a step need, its detail at a size; a very long one may be smaller."""
    face = Face.of(context.wording, 700)
    height = fit(words.headline, face, points, points, Room(width, lines=lines)).measured.height
    if words.detail:
        height += 2.4 + fit_detail(context, words.detail, width, None, detail_points).measured.height
    for stack, gap in ((words.condition, CONDITION_GAP), (words.facts, STACK_GAP)):
        if stack.pieces:
            height += stack.height(SIZES) + gap
    return height + sum(row.height for row in words.rows)


def detail_face(context: SheetContext) -> Face:
    """The face of details."""
    return Face.of(context.wording, is_body=True)


def fit_detail(context: SheetContext, text: str, width: float, height: float | None, points: float) -> Fitted:
    """Three lines of a good size, else four, else smaller."""
    face = detail_face(context)
    for lines, floor in ((3, points), (3, LEAST_DETAIL), (4, LEAST_DETAIL), (4, 10.0)):
        found = fit(text, face, points, floor, Room(width, height, lines))
        if not found.excess:
            break
    return found


def _headlines(texts: Sequence[str], face: Face, width: float) -> tuple[float, int]:
    """One size for all: one line if all have one at it, else two, else smaller, else three lines."""
    for lines, floor in ((2, 20.0), (2, 17.0), (3, 17.0)):
        points = common_size(texts, face, 24, floor, Room(width, lines=lines))
        if not any(fit(text, face, points, points, Room(width, lines=lines)).excess for text in texts):
            break
    on_one_line = common_size(texts, face, 24, 20, Room(width, lines=1))
    if all(line_width(text, face, on_one_line) <= width for text in texts):
        return on_one_line, 1
    return points, lines


def _zone_name(names: Sequence[str], face: Face, width: float) -> ZoneName:
    """One line, a little smaller before two, then two and three."""
    for lines, points, floor in ((1, 10.5, 9.5), (2, 10.5, 8.0), (3, 8.0, 8.0)):
        size = common_size(names, face, points, floor, Room(width, lines=lines))
        found = [fit(name, face, size, size, Room(width, lines=lines)) for name in names]
        if not any(each.excess for each in found):
            break
    return ZoneName(size, lines, max(each.measured.height for each in found))


def _critical_word(context: SheetContext, column: float) -> CriticalWord:
    """On one line under the block, else in the column, on two lines where it must be."""
    face = Face.of(context.wording, 700)
    word = context.wording.fixed("critical")
    for width, lines in ((_UNDER_BLOCK, 1), (column, 1), (column, 3)):
        found = fit(word, face, 9, 7, Room(width, lines=lines))
        if not found.excess:
            break
    return CriticalWord(found, width)


def _number_block(zone: ZoneName, critical_word: float, picture: float) -> NumberBlock:
    """Under the zone's name, the container below it, or beside it where the picture is small.

    The number shrinks where a long name takes its room.
    """
    top = max(6.4, zone.height + 1.6)
    foot = picture - 1.5
    tag_x, tag_top = 5.5, foot - _TAG_HEIGHT
    room = tag_top - critical_word - top
    if room < _LEAST_BLOCK:
        tag_x, room = _BESIDE, foot - critical_word - top
    height = min(15.6, room)
    highest = (height - 3.2) / MM_PER_POINT / _FIGURE_HEIGHT
    return NumberBlock(top, height, min(42.0, highest + 6), min(38.0, highest), tag_x, tag_top)


def draft_sentence(context: SheetContext) -> str:
    """What a cut card must still say: not for clinical use, that a translation is unverified, who signed."""
    sentences = [parts.state_sentence(context, context.wording)] if context.has_state else []
    joint = " " if context.is_draft else " · "
    return joint.join((*sentences, *context.state_notes()))


@dataclass(frozen=True)
class SetText:
    """A text at the size that fits, with its height."""

    points: float
    height: float


def fit_draft(context: SheetContext, sentence: str, width: float) -> SetText:
    """The draft sentence on one line, smaller before two."""
    face = draft_face(context)
    found = fit(sentence, face, 8, 7, Room(width, lines=1))
    if found.excess:
        found = fit(sentence, face, 8, 7, Room(width, lines=3))
    return SetText(found.points, found.measured.height)


def draft_face(context: SheetContext) -> Face:
    """The face of the draft sentence."""
    return Face.of(context.wording, 600)


def card_lines(context: SheetContext, phase: str, card: str, width: float) -> list[str]:
    """Control text in as few lines as its items fit."""
    revision, page, owner, review = parts.control_lines(context, card)
    code = context.wording.code(f"{context.protocol.code}-{phase}")
    face = Face.of(context.wording)
    return parts.packed(
        (code, revision, *parts.copy_items(context), page, owner, review), face, CONTROL_POINTS, width
    )


def _control_height(context: SheetContext, phase: str, card: str, width: float) -> float:
    """Caution, control lines and ruler, one below the other."""
    wording = context.wording
    policy = fit(
        wording.fixed("local-policy"), draft_face(context), 8.6, 7.5, Room(width, lines=POLICY_LINES)
    ).measured.height
    face = Face.of(wording)
    lines = card_lines(context, phase, card, width)
    heights = [measure(line, face, CONTROL_POINTS, width).height + 0.6 for line in lines]
    return POLICY_TOP + policy + sum(heights) + _RULER_AIR + parts.RULER_HEIGHT + 0.2
