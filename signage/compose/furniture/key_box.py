"""The box of the key rule in a title band: a reversed word and the sentence that a reader must not miss.

The word stands beside the sentence, or above it where the box is so narrow that this makes the sentence
larger.
"""

from __future__ import annotations

from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.theme import Band
from signage.compose.typesetting import Face, Fitted, Room, fit, line_width
from signage.drawing.roles import GroupRole, TypeRole

_WORD, _LEAST_WORD = 24.0, 11.0
_CELL, _WIDEST_CELL = 22.0, 44.0
_BAR = 8.4
LARGEST_RULE, WANTED_RULE, LEAST_RULE = 21.0, 15.5, 11.0
"""Points of the rule at k = 1: it grows where the title is short."""

_WORTH_STACKING = 1.12
"""The word goes above the sentence only where that makes the sentence so much larger."""


@dataclass(frozen=True)
class KeyWords:
    """The key word and the rule, with the id of the fixed word and the context of the rule."""

    word: str
    rule: str
    kind: str
    message: str


@dataclass(frozen=True)
class KeyFit:
    """How the box is set: the rule, by how much its word is too wide, and whether this stands above it."""

    rule: Fitted
    word_excess: float
    is_stacked: bool

    @property
    def excess(self) -> float:
        """Millimetres by which word and rule are too large at their floors."""
        return self.rule.excess + self.word_excess


@dataclass(frozen=True)
class KeyBox:
    """Draws one box of a given height; its place and width come from the band."""

    canvas: Canvas
    words: KeyWords
    y: float
    height: float
    scale: float

    @property
    def _is_on_filled(self) -> bool:
        return self.canvas.style.theme.band is Band.FILLED

    @property
    def _face(self) -> Face:
        return self.canvas.face(600, leading=1.2 if self.canvas.wording.script == "Latn" else None)

    def fit(self, width: float) -> KeyFit:
        """The larger of the two forms, the word beside the rule where they are much the same."""
        k = self.scale
        cell = self._cell(width)
        beside = KeyFit(
            self._fit_rule(self._beside_room(width)),
            max(0.0, self._least_word() - cell + 3 * k),
            is_stacked=False,
        )
        stacked = KeyFit(
            self._fit_rule(self._stacked_room(width)),
            max(0.0, self._least_word() - width + 3 * k),
            is_stacked=True,
        )
        if beside.excess or stacked.excess:
            return min(beside, stacked, key=lambda form: form.excess)
        is_larger = stacked.rule.points >= beside.rule.points * _WORTH_STACKING
        return stacked if is_larger else beside

    def draw(self, x: float, width: float) -> None:
        """The box with its start edge at x."""
        fitted = self.fit(width)
        canvas = self.canvas
        with canvas.group(GroupRole.KEY, self.words.kind, box=canvas.box(x, self.y, width, self.height)):
            if fitted.is_stacked:
                self._word(x, self.y, width, _BAR * self.scale, (True, True, False, False), _WORD * 0.75)
                top, height = self.y + _BAR * self.scale, self.height - _BAR * self.scale
                room = self._stacked_room(width)
                self._rule(fitted.rule, x + 3 * self.scale, room, top + height / 2)
            else:
                cell = self._cell(width)
                self._word(x, self.y, cell, self.height, (True, False, False, True), _WORD)
                room = self._beside_room(width)
                self._rule(fitted.rule, x + cell + 3 * self.scale, room, self.y + self.height / 2)
            canvas.rect(x, self.y, width, self.height, None, self._ground, 0.7 * self.scale, 1.6 * self.scale)

    @property
    def _ground(self) -> str:
        style = self.canvas.style
        return style.paper if self._is_on_filled else style.ink

    def _cell(self, width: float) -> float:
        """The width of the cell of the word: the word at its full size, at most a third of the box."""
        word = line_width(self.words.word, self.canvas.face(700), _WORD * self.scale) + 8 * self.scale
        return max(_CELL * self.scale, min(word, _WIDEST_CELL * self.scale, width / 3))

    def _least_word(self) -> float:
        return line_width(self.words.word, self.canvas.face(700), _LEAST_WORD * self.scale) + 0.1

    def _beside_room(self, width: float) -> Room:
        free = width - self._cell(width) - 6 * self.scale
        return Room(max(free, 1.0), self.height - 4.5 * self.scale)

    def _stacked_room(self, width: float) -> Room:
        return Room(max(width - 6 * self.scale, 1.0), self.height - (_BAR + 3.4) * self.scale)

    def _fit_rule(self, room: Room) -> Fitted:
        return fit(self.words.rule, self._face, LARGEST_RULE * self.scale, LEAST_RULE * self.scale, room)

    def _word(
        self, x: float, y: float, width: float, height: float, corners: tuple[bool, ...], points: float
    ) -> None:
        canvas, k, style = self.canvas, self.scale, self.canvas.style
        canvas.rect(x, y, width, height, self._ground, radius=1.6 * k, corners=corners)
        canvas.ink_line(
            self.words.word,
            Lettering(
                TypeRole.KEY_WORD,
                canvas.face(700),
                points * k,
                floor=_LEAST_WORD * k,
                colour=style.deep if self._is_on_filled else style.paper,
            ),
            TextPlace(
                x + 1.5 * k, y + height / 2, width - 3 * k, height=height - 1.6 * k, align=Align.CENTRE
            ),
            message=f"interface/{self.words.kind}",
        )

    def _rule(self, rule: Fitted, x: float, room: Room, middle: float) -> None:
        canvas, k = self.canvas, self.scale
        canvas.text(
            self.words.rule,
            Lettering(
                TypeRole.KEY_RULE,
                self._face,
                rule.points,
                wanted=max(WANTED_RULE * k, rule.points),
                colour=canvas.style.paper if self._is_on_filled else canvas.style.ink,
            ),
            TextPlace(x, middle, room.width, height=room.height, anchor=Anchor.MIDDLE),
            message=self.words.message,
        )
