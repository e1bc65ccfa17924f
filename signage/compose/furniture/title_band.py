"""The title band of a poster: title, protocol, draft tag, key rule and code.

Themes differ in form: putting on is a filled band, taking off an open one inside a frame, hands a tinted
one on a heavy foot. Colour repeats it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.furniture.band_form import BandForm, draw_band_form
from signage.compose.furniture.key_box import WANTED_RULE, KeyBox, KeyWords
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.parts import draft_tag, state_word, tag_width
from signage.compose.theme import Band
from signage.compose.typesetting import Fitted, fit_ink, line_width, sizes_down
from signage.drawing.marks import FitStep, Structure
from signage.drawing.roles import TypeRole
from signage.model.library import Phase

_FORM = BandForm(radius=2.4, frame_radius=2.0, tint_radius=2.4, frame=1.8, foot=2.2)
_PAD = 5.0
_TITLE_TOP = 13.6
LEAST_OVER = 11.0
LEAST_TITLE = 22.0


@dataclass(frozen=True)
class BandPlace:
    """Where a band stands, in millimetres; ``scale`` is that of its constants."""

    x: float
    y: float
    width: float
    height: float
    scale: float
    title_points: float = 60.0

    @property
    def code_side(self) -> float:
        """The side of the QR code with its quiet zone."""
        return self.height - 8 * self.scale

    @property
    def code_x(self) -> float:
        """The start edge of the QR code."""
        return self.x + self.width - 4 * self.scale - self.code_side


@dataclass(frozen=True)
class BandWords:
    """The texts of a band. ``sheet`` is empty on posters of one sheet, ``rule`` where there is none."""

    code: str
    protocol: str
    title: str
    sheet: str
    key: str
    rule: str | None


def band_words(context: SheetContext, phase: Phase, page: int, pages: int) -> BandWords:
    """Look the texts up."""
    wording, protocol = context.wording, context.protocol
    base = f"{protocol.id}/phase/{phase.id}"
    return BandWords(
        code=wording.code(protocol.code),
        protocol=wording.content(f"{protocol.id}/title"),
        title=wording.content(f"{base}/title"),
        sheet=wording.fixed("sheet-of", page=wording.number(page), pages=wording.number(pages))
        if pages > 1
        else "",
        key=wording.fixed(phase.rule_kind),
        rule=wording.phase_rule(protocol, phase),
    )


class OverPiece(NamedTuple):
    """A piece of the overline: its weight, and the gap after it in millimetres."""

    text: str
    weight: int
    gap: float


class TitleBand:
    """Draws one band; ``columns`` are the places where its key box may start.

    ``names_protocol`` turns false where its overline had no room for the title of the protocol.
    """

    def __init__(
        self,
        canvas: Canvas,
        context: SheetContext,
        phase: Phase,
        words: BandWords,
        place: BandPlace,
        columns: Sequence[float],
    ) -> None:
        self.canvas, self.context, self.phase = canvas, context, phase
        self.words, self.place, self.columns = words, place, columns
        self.k = place.scale
        self.names_protocol = True
        self.key_box = KeyBox(
            canvas,
            KeyWords(
                words.key,
                words.rule or "",
                phase.rule_kind,
                f"{context.protocol.id}/phase/{phase.id}/rule",
            ),
            y=place.y + 4 * place.scale,
            height=place.code_side,
            scale=place.scale,
        )
        self.is_filled = canvas.style.theme.band is Band.FILLED
        self.colour = canvas.style.paper if self.is_filled else canvas.style.ink

    def draw(self) -> None:
        """Ground, overline, title, key rule and code, in reading order."""
        self._ground()
        box_x = self._key_start()
        end = (self.place.code_x if box_x is None else box_x) - 4 * self.k
        self._overline(end)
        self._title(end)
        if box_x is not None:
            self.key_box.draw(box_x, self._key_width(box_x))
        self._code()

    def _ground(self) -> None:
        place = (self.place.x, self.place.y, self.place.width, self.place.height)
        draw_band_form(self.canvas, self.canvas.style, place, _FORM.scaled(self.k))

    # -- overline and title ----------------------------------------------------------------------
    @property
    def _start(self) -> float:
        return self.place.x + _PAD * self.k

    def _tag_width(self) -> float:
        """The width of the draft tag, which ``draft_tag`` draws."""
        if not self.context.has_state:
            return 0.0
        word = state_word(self.context)
        return tag_width(self.canvas, word, 7 * self.k, 12 * self.k)

    def _overline(self, end: float) -> None:
        canvas, k = self.canvas, self.k
        centre = self.place.y + 7.9 * k
        x = self._start
        tag = draft_tag(canvas, self.context, x, centre, 7 * k, 12 * k, self.colour)
        x += tag + (3 * k if tag else 0.0)
        with_sheet = not self._has_sheet_beside_title(end - self._start)
        pieces = self._over_parts(with_sheet=with_sheet)
        if self._over_width(pieces, LEAST_OVER * k) > end - x:
            pieces = self._over_parts(with_sheet=with_sheet, is_short=True)
            self.names_protocol = False
            canvas.fit_steps.append(FitStep(TypeRole.OVER, "title of the protocol dropped", 15 * k, 0.0))
        points = self._over_points(pieces, end - x)
        with canvas.group(structure=Structure.PARAGRAPH):
            for text, weight, gap in pieces:
                width = line_width(text, canvas.face(weight), points)
                canvas.text(
                    text,
                    Lettering(TypeRole.OVER, canvas.face(weight), points, wanted=15 * k, colour=self.colour),
                    TextPlace(x, centre, width + 0.2, lines=1, anchor=Anchor.MIDDLE),
                )
                x += width + gap

    def _over_parts(self, *, with_sheet: bool, is_short: bool = False) -> list[OverPiece]:
        """Code, title of the protocol unless there is no room for it, and which of several sheets it is."""
        parts = [OverPiece(self.words.code, 700, 2.4 * self.k)]
        if not is_short:
            parts.append(OverPiece(self.words.protocol, 600, 4.5 * self.k))
        if with_sheet and self.words.sheet:
            parts.append(OverPiece(self.words.sheet, 700, 0.0))
        return parts

    def _sheet_width(self) -> float:
        return line_width(self.words.sheet, self.canvas.face(700), 15 * self.k)

    def _has_sheet_beside_title(self, width: float) -> bool:
        """Whether the number of the sheet has room at the end of the line of the title."""
        if not self.words.sheet:
            return False
        title = self._fit_title(1e6).measured.width
        return title + 6 * self.k + self._sheet_width() <= width

    def _over_width(self, pieces: Sequence[OverPiece], points: float) -> float:
        widths = [line_width(piece.text, self.canvas.face(piece.weight), points) for piece in pieces]
        return sum(widths) + sum(piece.gap for piece in pieces[:-1])

    def _over_points(self, pieces: Sequence[OverPiece], width: float) -> float:
        sizes = sizes_down(15 * self.k, LEAST_OVER * self.k)
        return next((points for points in sizes if self._over_width(pieces, points) <= width), sizes[-1])

    @property
    def _ink_height(self) -> float:
        foot = 3.4 + (1.6 if self.canvas.style.theme.band is Band.TINTED else 0.0)
        return self.place.height - (_TITLE_TOP + foot) * self.k

    def _fit_title(self, width: float) -> Fitted:
        points = self.place.title_points * self.k
        return fit_ink(
            self.words.title, self.canvas.face(700), points, LEAST_TITLE * self.k, width, self._ink_height
        )

    def _title(self, end: float) -> None:
        width = end - self._start + 0.4 * self.k
        fitted = self._fit_title(width)
        with self.canvas.group(structure=Structure.HEADING_1):
            self.canvas.ink_line(
                self.words.title,
                Lettering(TypeRole.TITLE, self.canvas.face(700), fitted.points, colour=self.colour),
                TextPlace(
                    self._start - 0.4 * self.k,
                    self.place.y + _TITLE_TOP * self.k + self._ink_height / 2,
                    width,
                    height=self._ink_height,
                ),
                message=f"{self.context.protocol.id}/phase/{self.phase.id}/title",
            )
        if self._has_sheet_beside_title(end - self._start):
            self._sheet(end)

    def _sheet(self, end: float) -> None:
        """The number of the sheet, on the line of the title."""
        width = self._sheet_width() + 0.2
        with self.canvas.group(structure=Structure.PARAGRAPH):
            self.canvas.text(
                self.words.sheet,
                Lettering(TypeRole.OVER, self.canvas.face(700), 15 * self.k, colour=self.colour),
                TextPlace(
                    end - width,
                    self.place.y + _TITLE_TOP * self.k + self._ink_height,
                    width,
                    lines=1,
                    align=Align.END,
                    anchor=Anchor.BOTTOM,
                ),
            )

    # -- key rule and code -----------------------------------------------------------------------
    def _key_start(self) -> float | None:
        """Where the key box starts: where title and rule together are largest, later where they tie."""
        if self.words.rule is None:
            return None
        return max(self.columns, key=self._worth_of_start)

    def _key_width(self, x: float) -> float:
        return self.place.code_x - 4 * self.k - x

    def _worth_of_start(self, x: float) -> tuple[float, float, float]:
        """Nothing too large first; then the title for twice as much as the rule, each against its wish."""
        width = x - 4 * self.k - self._start
        title, wanted = self._fit_title(width), self._fit_title(1e6)
        key = self.key_box.fit(self._key_width(x))
        overline = max(0.0, self._least_overline(width, is_short=True) - width)
        worth = 2 * title.points / wanted.points + key.rule.points / (WANTED_RULE * self.k)
        if self._least_overline(width, is_short=False) > width:
            worth -= 0.5
        return -(title.excess + key.excess + overline), worth, x

    def _least_overline(self, width: float, *, is_short: bool) -> float:
        tag = self._tag_width()
        with_sheet = not self._has_sheet_beside_title(width)
        pieces = self._over_parts(with_sheet=with_sheet, is_short=is_short)
        return (tag + 3 * self.k if tag else 0.0) + self._over_width(pieces, LEAST_OVER * self.k)

    def _code(self) -> None:
        canvas, k, place = self.canvas, self.k, self.place
        side = place.code_side
        if canvas.style.theme.band is not Band.OPEN:
            canvas.rect(
                place.code_x - k,
                place.y + 3 * k,
                side + 2 * k,
                side + 2 * k,
                canvas.style.paper,
                radius=1.2 * k,
            )
        link = self.context.training_link()
        alternative = f"{self.context.wording.fixed('training-page')} {link}"
        canvas.qr_code(link, place.code_x, place.y + 4 * k, side, alternative)
