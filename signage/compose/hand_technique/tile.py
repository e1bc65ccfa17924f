"""The cards of a hand-technique poster, and the sizes they share."""

from __future__ import annotations

from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.hand_technique.layout import Cell, Form, HandLayout, Stage
from signage.compose.lettering import Align, Lettering, TextPlace
from signage.compose.parts import container_tag
from signage.compose.poster.compact_card import READ_IN_ACTION
from signage.compose.poster.sizes import LEAST_PICTURE_MM
from signage.compose.poster.words import PosterWords, StepWords
from signage.compose.typesetting import Face, Room, common_size, sizes_down
from signage.compose.word_stack import StackSizes, WordStack
from signage.drawing.marks import FitStep, Overflow, Structure
from signage.drawing.roles import GroupRole, TypeRole
from signage.words.wording import Wording

_HEADLINE, _LEAST_HEADLINE = 19.0, 15.0
_DETAIL, _LEAST_DETAIL = 11.0, 10.0
_NUMBER = 28.0
_NUMBER_COLUMN = 13.0
_TEXT_PAD = 3.4
_ABOVE, _BETWEEN, _FOOT = 2.6, 2.2, 2.6
_LARGEST_PICTURE = 48.0
_BESIDE_SHARES = (0.42, 0.32, 0.24)
"""How much of a wide card its picture may take: less only where the words need it."""
_RADIUS = 2.0


@dataclass(frozen=True)
class HandSizes:
    """Type sizes in points for all cards; the side of the picture by stage, in millimetres."""

    headline: float
    detail: float
    pictures: dict[Stage, float]
    climbed: tuple[FitStep, ...]
    excess: tuple[Overflow, ...]


class HandSizeFinder:
    """Finds the sizes at which the words of all cards fit and pictures stay large."""

    def __init__(self, layout: HandLayout, words: PosterWords, wording: Wording) -> None:
        self.layout, self.words, self.wording = layout, words, wording
        self.k = layout.scale
        self.beside_share = _BESIDE_SHARES[0]
        self._stacks: dict[tuple[str, float], WordStack] = {}
        self.headline_face = Face.of(wording, 700)

    def find(self) -> HandSizes:
        """The best sizes; pictures of wide cards give way where the words would not fit otherwise."""
        sizes = self._find()
        for share in _BESIDE_SHARES[1:]:
            if not sizes.excess:
                break
            self.beside_share = share
            sizes = self._find()
        return sizes

    def _find(self) -> HandSizes:
        """The largest pictures among the headline sizes between wish and floor."""
        floor = max(_LEAST_HEADLINE * self.k, READ_IN_ACTION)
        wanted = max(_HEADLINE * self.k, floor)
        largest = self._largest_headline(wanted, floor)
        candidates = [
            self._sizes(size, detail) for size in sizes_down(largest, floor) for detail in self._details()
        ]
        good = [sizes for sizes in candidates if not sizes.excess] or candidates
        best = max(good, key=self._worth)
        climbed = list(best.climbed)
        if best.headline < wanted:
            climbed.append(FitStep(TypeRole.HEADLINE, "smaller", wanted, best.headline))
        if best.detail < _DETAIL * self.k:
            climbed.append(FitStep(TypeRole.DETAIL, "smaller", _DETAIL * self.k, best.detail))
        return HandSizes(best.headline, best.detail, best.pictures, tuple(climbed), best.excess)

    def _worth(self, sizes: HandSizes) -> float:
        """A millimetre of picture counts as much as a point of headline or half a point of detail."""
        lacking = sum(overflow.excess_mm for overflow in sizes.excess)
        picture = sizes.pictures.get(Stage.MOVEMENT, 0.0) / self.k
        return picture + 1.0 * sizes.headline / self.k + 2.0 * sizes.detail / self.k - 100 * lacking

    def _details(self) -> list[float]:
        least = max(_LEAST_DETAIL * self.k, READ_IN_ACTION)
        return sizes_down(max(_DETAIL * self.k, least), least)

    def _largest_headline(self, wanted: float, floor: float) -> float:
        size = wanted
        for cell in self.layout.cells:
            room = Room(self.text_width(cell), lines=2)
            size = common_size([self.words.of(cell.numbered).headline], self.headline_face, size, floor, room)
        return size

    def _sizes(self, headline: float, detail: float) -> HandSizes:
        excess: list[Overflow] = []
        pictures: dict[Stage, float] = {}
        for cell in self.layout.cells:
            side = self._picture(cell, headline, detail)
            pictures[cell.stage] = min(side, pictures.get(cell.stage, side))
        for cell in self.layout.cells:
            if cell.form is Form.BELOW and Stage.MOVEMENT in pictures:
                # The movements are what the sheet is for: no picture of the same form is larger.
                pictures[cell.stage] = min(pictures[cell.stage], pictures[Stage.MOVEMENT])
        for cell in self.layout.cells:
            excess += self._excess(cell, headline, detail, pictures[cell.stage])
        return HandSizes(headline, detail, pictures, (), tuple(excess))

    def _picture(self, cell: Cell, headline: float, detail: float) -> float:
        """The largest square beside the number; above the words, or as high as the card."""
        k, box = self.k, cell.box
        if cell.form is Form.BESIDE:
            return min(box.height - 2 * _ABOVE * k, _LARGEST_PICTURE * k, box.width * self.beside_share)
        room = box.height - (_ABOVE + _BETWEEN + _FOOT) * k - self.words_height(cell, headline, detail)
        return min(box.width - (_NUMBER_COLUMN + 1.6) * k, _LARGEST_PICTURE * k, room)

    def text_width(self, cell: Cell) -> float:
        """The measure of the words on a card."""
        k, box = self.k, cell.box
        if cell.form is Form.BELOW:
            return box.width - 2 * _TEXT_PAD * k
        return box.width - (_NUMBER_COLUMN + 2.0 + _TEXT_PAD) * k - self._picture(cell, 0, 0)

    def stack(self, cell: Cell) -> WordStack:
        """The words of a card, below each other."""
        key = cell.numbered.step.id, self.text_width(cell)
        if key not in self._stacks:
            pieces = self.words.of(cell.numbered).all(self.words.protocol)
            self._stacks[key] = WordStack.of(pieces, key[1], self.k, self.wording)
        return self._stacks[key]

    def words_height(self, cell: Cell, headline: float, detail: float) -> float:
        """The height of all words of a card."""
        return self.stack(cell).height(StackSizes(headline, detail))

    def _excess(self, cell: Cell, headline: float, detail: float, picture: float) -> list[Overflow]:
        words = self.words.of(cell.numbered)
        found = [
            Overflow(piece.role, piece.message, piece.text, round(excess, 2))
            for piece, excess in self.stack(cell).excess(StackSizes(headline, detail))
        ]
        if picture < LEAST_PICTURE_MM:
            short = LEAST_PICTURE_MM - picture
            found.append(self._no_room(words, short))
        elif cell.form is Form.BESIDE:
            high = self.words_height(cell, headline, detail) - cell.box.height + 2 * self.k
            if high > 0:
                found.append(self._no_room(words, high))
        return found

    def _no_room(self, words: StepWords, excess: float) -> Overflow:
        context = f"{self.words.protocol}/{words.numbered.step.told_as}/detail"
        return Overflow(TypeRole.DETAIL, context, words.detail or words.headline, round(excess, 2))


def draw_hand_card(
    canvas: Canvas, context: SheetContext, cell: Cell, finder: HandSizeFinder, sizes: HandSizes
) -> None:
    """One step: number at the start, picture, words below or beside it."""
    k, box, style, step = finder.k, cell.box, canvas.style, cell.numbered.step
    side = sizes.pictures[cell.stage]
    with canvas.group(
        GroupRole.STEP,
        step.id,
        structure=Structure.ITEM,
        box=canvas.box(box.x, box.y, box.width, box.height),
        number=cell.numbered.number,
        zone=cell.numbered.zone,
        kind=cell.numbered.kind.value,
        critical=step.critical,
    ):
        canvas.rect(
            box.x,
            box.y,
            box.width,
            box.height,
            style.paper,
            style.line,
            style.line_width(0.35 * k),
            _RADIUS * k,
        )
        _number(canvas, context, cell, finder, sizes)
        x, y = _picture_corner(cell, finder, sizes)
        with canvas.group(structure=Structure.BODY):
            canvas.picture(step.picture, x, y, side, context.picture_words(step), style.care_palette)
            if step.critical:
                _critical_word(canvas, context, cell, finder, sizes)
            _containers(canvas, context, cell, finder, sizes)
            _draw_words(canvas, cell, finder, sizes)


def _number(
    canvas: Canvas, context: SheetContext, cell: Cell, finder: HandSizeFinder, sizes: HandSizes
) -> None:
    """The number; on a block of ink where the step is critical."""
    k, box, style = finder.k, cell.box, canvas.style
    is_critical = cell.numbered.step.critical
    centre = box.y + 7.4 * k + _lowered(cell, finder, sizes)
    if is_critical:
        canvas.rect(box.x + 1.2 * k, centre - 5.6 * k, (_NUMBER_COLUMN - 1.6) * k, 11.2 * k, style.ink)
    with canvas.group(structure=Structure.LABEL):
        canvas.ink_line(
            context.wording.number(cell.numbered.number),
            Lettering(
                TypeRole.NUMBER,
                canvas.face(700),
                _NUMBER * k,
                floor=18 * k,
                colour=style.paper if is_critical else style.ink,
            ),
            TextPlace(
                box.x + (1.8 if is_critical else 3.0) * k,
                centre,
                (_NUMBER_COLUMN - 2.8 if is_critical else _NUMBER_COLUMN) * k,
                align=Align.CENTRE if is_critical else Align.START,
            ),
        )


def _critical_word(
    canvas: Canvas, context: SheetContext, cell: Cell, finder: HandSizeFinder, sizes: HandSizes
) -> None:
    k, box = finder.k, cell.box
    canvas.ink_line(
        context.wording.fixed("critical"),
        Lettering(TypeRole.CRITICAL, canvas.face(700), 9.0 * k, floor=7.0),
        TextPlace(
            box.x + 1.2 * k,
            box.y + 15.0 * k + _lowered(cell, finder, sizes),
            (_NUMBER_COLUMN - 1.6) * k,
            align=Align.CENTRE,
        ),
        message="interface/critical",
    )


def _slack(cell: Cell, finder: HandSizeFinder, sizes: HandSizes) -> float:
    """Height of a card that picture and words leave over."""
    words = finder.words_height(cell, sizes.headline, sizes.detail)
    used = (_ABOVE + _BETWEEN + _FOOT) * finder.k + sizes.pictures[cell.stage] + words
    return max(0.0, cell.box.height - used)


def _picture_corner(cell: Cell, finder: HandSizeFinder, sizes: HandSizes) -> tuple[float, float]:
    k, box, side = finder.k, cell.box, sizes.pictures[cell.stage]
    if cell.form is Form.BESIDE:
        return box.x + _NUMBER_COLUMN * k, box.y + (box.height - side) / 2
    middle = box.x + (box.width - side) / 2 + 3.2 * k
    x = min(max(middle, box.x + _NUMBER_COLUMN * k), box.x + box.width - side - 1.6 * k)
    return x, box.y + _ABOVE * k + _lowered(cell, finder, sizes)


def _lowered(cell: Cell, finder: HandSizeFinder, sizes: HandSizes) -> float:
    """On a card much higher than its content the content hangs a little above the middle."""
    if cell.form is Form.BESIDE:
        return 0.0
    slack = _slack(cell, finder, sizes)
    return slack * 0.4 if slack > 24 * finder.k else 0.0


def _containers(
    canvas: Canvas, context: SheetContext, cell: Cell, finder: HandSizeFinder, sizes: HandSizes
) -> None:
    """Bins and tubs in the number column, below the number."""
    k, box = finder.k, cell.box
    y = box.y + 17.0 * k + _lowered(cell, finder, sizes)
    for index, fixture in enumerate(context.containers(cell.numbered.step)):
        container_tag(canvas, context, fixture, box.x + 3.2 * k, y + index * 13.0 * k, 6.6 * k, 8.4 * k)


def _draw_words(canvas: Canvas, cell: Cell, finder: HandSizeFinder, sizes: HandSizes) -> None:
    k, box = finder.k, cell.box
    side = sizes.pictures[cell.stage]
    if cell.form is Form.BESIDE:
        x = box.x + (_NUMBER_COLUMN + 2) * k + side
        y = box.y + (box.height - finder.words_height(cell, sizes.headline, sizes.detail)) / 2
    else:
        x = box.x + _TEXT_PAD * k
        y = box.y + (_ABOVE + _BETWEEN) * k + side + _lowered(cell, finder, sizes)
    stack_sizes = StackSizes(sizes.headline, sizes.detail, _HEADLINE * k, _DETAIL * k)
    finder.stack(cell).draw(canvas, x, y, stack_sizes)
