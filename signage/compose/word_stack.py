"""The words of one step, one below the other: measured and drawn by the same description.

A condition stands above the headline in a dashed frame; a caution stands last, behind a bar of ink. Both
are told by their form on a copy in black and white.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property

from signage.compose.canvas import Canvas
from signage.compose.lettering import Lettering, TextPlace
from signage.compose.typesetting import Face, Fitted, Room, fit
from signage.drawing.marks import Structure
from signage.drawing.roles import GroupRole, TypeRole
from signage.words.wording import Wording

_GAP = 1.4
_GAP_BY_LOOK = 2.0
"""Before a text that is set off, and after one."""
_GAP_BELOW_FRAME = 3.0
"""The first letter below may carry one accent or two, which rise above the box of its line."""
_FRAME_PAD_X, _FRAME_PAD_Y = 1.8, 1.3
_BAR, _BAR_GAP = 1.0, 1.6


class Look(StrEnum):
    """How a text is set off: not at all, in a dashed frame, behind a bar."""

    PLAIN = "plain"
    FRAME = "frame"
    BAR = "bar"


class Size(StrEnum):
    """Which of the sizes of a sheet a text takes."""

    HEADLINE = "headline"
    DETAIL = "detail"


@dataclass(frozen=True)
class StackSizes:
    """Type sizes in points, and those that their roles asked for before the fit ladder."""

    headline: float
    detail: float
    wanted_headline: float = 0.0
    wanted_detail: float = 0.0

    def of(self, size: Size) -> float:
        """The size in points."""
        return self.headline if size is Size.HEADLINE else self.detail

    def wanted(self, size: Size) -> float:
        """The size that the role asked for."""
        wanted = self.wanted_headline if size is Size.HEADLINE else self.wanted_detail
        return max(wanted, self.of(size))


@dataclass(frozen=True)
class Piece:
    """One text of a stack. ``message`` is the context of the text; ``role`` its type role."""

    role: TypeRole
    text: str
    message: str
    weight: int
    size: Size = Size.DETAIL
    lines: int = 3
    look: Look = Look.PLAIN
    is_care: bool = False


@dataclass(frozen=True)
class WordStack:
    """Texts below each other in a column; ``width`` in mm, ``scale`` the k of the sheet."""

    pieces: tuple[Piece, ...]
    width: float
    scale: float
    wording: Wording
    _fits: dict[tuple[int, float], Fitted] = field(
        init=False, default_factory=dict, compare=False, repr=False
    )
    _heights: dict[tuple[float, float], float] = field(
        init=False, default_factory=dict, compare=False, repr=False
    )

    @classmethod
    def of(cls, pieces: Sequence[Piece], width: float, scale: float, wording: Wording) -> WordStack:
        """The stack in the language of a wording."""
        return cls(tuple(pieces), width, scale, wording)

    @cached_property
    def _spaces(self) -> tuple[tuple[Face, Room], ...]:
        """Face and space of each text."""
        return tuple((self._face(piece), self._room(piece)) for piece in self.pieces)

    def _face(self, piece: Piece) -> Face:
        """Headlines are set tightly, the others for reading on."""
        return Face.of(self.wording, piece.weight, is_body=piece.size is Size.DETAIL)

    def _room(self, piece: Piece) -> Room:
        """The space of a text between what sets it off."""
        k = self.scale
        beside = {Look.FRAME: 2 * _FRAME_PAD_X * k, Look.BAR: (_BAR + _BAR_GAP) * k}.get(piece.look, 0.0)
        return Room(max(1.0, self.width - beside), lines=piece.lines)

    def _fitted(self, index: int, sizes: StackSizes) -> Fitted:
        points = sizes.of(self.pieces[index].size)
        known = self._fits.get((index, points))
        if known is None:
            face, room = self._spaces[index]
            known = fit(self.pieces[index].text, face, points, points, room)
            self._fits[index, points] = known
        return known

    def _height_of(self, index: int, sizes: StackSizes) -> float:
        height = self._fitted(index, sizes).measured.height
        return height + (2 * _FRAME_PAD_Y * self.scale if self.pieces[index].look is Look.FRAME else 0.0)

    def height(self, sizes: StackSizes) -> float:
        """The height of all texts with the gaps between them."""
        key = sizes.headline, sizes.detail
        if key not in self._heights:
            self._heights[key] = sum(
                self._gap(index) + self._height_of(index, sizes) for index in range(len(self.pieces))
            )
        return self._heights[key]

    def _gap(self, index: int) -> float:
        """The gap before a text."""
        if not index:
            return 0.0
        if self.pieces[index - 1].look is Look.FRAME:
            return _GAP_BELOW_FRAME * self.scale
        is_plain = all(piece.look is Look.PLAIN for piece in self.pieces[index - 1 : index + 1])
        return (_GAP if is_plain else _GAP_BY_LOOK) * self.scale

    def excess(self, sizes: StackSizes) -> Iterator[tuple[Piece, float]]:
        """The texts that are too wide or have too many lines, and by how many millimetres."""
        for index, piece in enumerate(self.pieces):
            excess = self._fitted(index, sizes).excess
            if excess:
                yield piece, excess

    def draw(self, canvas: Canvas, x: float, y: float, sizes: StackSizes) -> float:
        """Draw the texts from y downwards; returns the foot of the last."""
        for index in range(len(self.pieces)):
            y = self._draw_piece(canvas, index, x, y + self._gap(index), sizes)
        return y

    def _draw_piece(self, canvas: Canvas, index: int, x: float, y: float, sizes: StackSizes) -> float:
        piece, (face, room) = self.pieces[index], self._spaces[index]
        k, height = self.scale, self._height_of(index, sizes)
        text_x, text_y = x, y
        if piece.look is Look.FRAME:
            widest = self._fitted(index, sizes).measured.width
            dashed_frame(canvas, x, y, widest + 2 * _FRAME_PAD_X * k, height, k)
            text_x, text_y = x + _FRAME_PAD_X * k, y + _FRAME_PAD_Y * k
        elif piece.look is Look.BAR:
            with canvas.artefact():
                canvas.rect(x, y, _BAR * k, height, canvas.style.ink)
            text_x = x + (_BAR + _BAR_GAP) * k
        with canvas.group(_group_role(piece), structure=Structure.PARAGRAPH):
            canvas.text(
                piece.text,
                Lettering(
                    piece.role,
                    face,
                    sizes.of(piece.size),
                    wanted=sizes.wanted(piece.size),
                    colour=canvas.style.care_deep if piece.is_care else None,
                ),
                TextPlace(text_x, text_y, room.width, lines=piece.lines),
                message=piece.message,
            )
        return y + height


def _group_role(piece: Piece) -> GroupRole:
    """A text that is set off is a group of its own; one that is not belongs to what surrounds it."""
    return GroupRole.NONE if piece.look is Look.PLAIN else GroupRole(piece.role)


def dashed_frame(canvas: Canvas, x: float, y: float, width: float, height: float, k: float) -> None:
    """The frame round a condition: what is inside it holds only sometimes."""
    with canvas.artefact():
        corners = [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]
        canvas.polygon(corners, None, canvas.style.ink, 0.5 * k, dash=(1.6 * k, 1.2 * k))
