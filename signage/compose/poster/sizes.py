"""One size for each type role of a poster: the rungs of the fit ladder that all steps climb together."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from signage.compose.arrangement import Kind
from signage.compose.poster.compact_card import READ_IN_ACTION, TEXT_PAD
from signage.compose.poster.layout import Panel, PosterLayout
from signage.compose.poster.stacks import PosterStacks
from signage.compose.poster.words import StepWords
from signage.compose.typesetting import Face, Room, common_size, fit, line_width, measure, sizes_down
from signage.compose.word_stack import Piece, Size, StackSizes, WordStack
from signage.drawing.marks import FitStep, Overflow
from signage.drawing.roles import GroupRole, TypeRole
from signage.words.wording import Wording

LEAST_PICTURE_MM = 15.0
NUMBER_COLUMN = 16.5
"""Beside the picture of a tile, at k = 1."""
ABOVE_PICTURE = 7.2
TALLEST_PICTURE = 56.0
LEAST_PICTURE = 30.0


@dataclass(frozen=True)
class Sizes:
    """Type sizes in points and the side of the picture in millimetres, the same on every tile.

    ``spare`` is the height that even the fullest tile leaves over.
    ``excess`` is what no rung could mend; ``climbed`` the rungs that were taken.
    """

    headline: float
    detail: float
    strip: float
    note: float
    zone: float
    picture: float
    spare: float
    shows_times: bool
    shows_notes: bool
    climbed: tuple[FitStep, ...]
    excess: tuple[Overflow, ...]

    @property
    def drop(self) -> float:
        """By how much pictures and words come down from the head of their tile."""
        return 0.35 * self.spare


@dataclass(frozen=True)
class _Faces:
    headline: Face
    detail: Face
    time: Face

    @classmethod
    def of(cls, wording: Wording) -> _Faces:
        return cls(Face.of(wording, 700), Face.of(wording, is_body=True), Face.of(wording, 600))


def small_text_width(card: float, height: float, scale: float) -> float:
    """The width for the words of a strip or gate: after number and sign, before the end."""
    return card - (11.6 + 1.6 + 2.2 - 1.4) * scale - height


def note_face(wording: Wording) -> Face:
    """The face of notes."""
    return Face.of(wording, is_body=True, leading=1.2 if wording.script == "Latn" else None)


def wanted_headline(layout: PosterLayout) -> float:
    """The largest size of headlines, in points."""
    return (21 if layout.measures.is_landscape else 23) * layout.measures.scale


def largest_picture(layout: PosterLayout) -> float:
    """The side of picture, in millimetres, that the columns of a layout have room for beside the numbers."""
    k = layout.measures.scale
    return min(layout.grid.width - NUMBER_COLUMN * k, TALLEST_PICTURE * k)


class SizeFinder:
    """Finds the sizes for one layout; what is too large at its floor is counted, not hidden."""

    def __init__(
        self,
        layout: PosterLayout,
        stacks: PosterStacks,
        *,
        with_times: bool,
        with_notes: bool,
    ) -> None:
        self.layout, self.stacks = layout, stacks
        self.words, self.wording = stacks.words, stacks.wording
        self.with_times, self.with_notes = with_times, with_notes
        self.scale = layout.measures.scale
        self.faces = _Faces.of(self.wording)
        self._tiles = self.words.big
        self.climbed: list[FitStep] = []
        self.excess: list[Overflow] = []

    @property
    def text_width(self) -> float:
        """The measure of headlines and details."""
        return self.layout.grid.width - 2 * TEXT_PAD * self.scale

    def find(self) -> Sizes:
        """Climb the ladder, role by role."""
        headline, detail = self._words_of_tiles()
        return self._all_sizes(headline, detail, self._picture(headline, detail))

    def find_fitting(self) -> Sizes | None:
        """The sizes at which everything fits; None as soon as something does not."""
        headline, detail = self._words_of_tiles()
        picture = 0.0 if self.excess else self._picture(headline, detail)
        sizes = None if self.excess else self._all_sizes(headline, detail, picture)
        return None if self.excess else sizes

    def _words_of_tiles(self) -> tuple[float, float]:
        """The sizes of headlines and details."""
        headline = self._headline()
        detail = self._detail(headline)
        headline = self._headline_for_picture(headline, detail)
        return headline, self._larger_detail(headline, detail)

    def _all_sizes(self, headline: float, detail: float, picture: float) -> Sizes:
        return Sizes(
            headline=headline,
            detail=detail,
            strip=self._strip(),
            note=self._note(),
            zone=self._zone(),
            picture=picture,
            spare=max(0.0, self._room_for_picture(headline, detail) - picture),
            shows_times=self.with_times,
            shows_notes=self.with_notes,
            climbed=tuple(self.climbed),
            excess=tuple(self.excess),
        )

    # -- tiles -----------------------------------------------------------------------------------
    def _headline(self) -> float:
        wanted, floor = (21, 17) if self.layout.measures.is_landscape else (23, 18)
        texts = [words.headline for words in self.words.big]
        size = self._common(
            TypeRole.HEADLINE,
            self.words.big,
            texts,
            self.faces.headline,
            wanted,
            floor,
            Room(self.text_width, lines=2),
        )
        one_line = Room(self.text_width, lines=1)
        smaller = common_size(texts, self.faces.headline, size, max(size * 0.84, READ_IN_ACTION), one_line)
        is_one_line = all(
            not fit(text, self.faces.headline, smaller, smaller, one_line).excess for text in texts
        )
        if is_one_line and smaller < size:
            self.climbed.append(FitStep(TypeRole.HEADLINE, "one line", size, smaller))
            return smaller
        return size

    def _headline_for_picture(self, headline: float, detail: float) -> float:
        """Smaller, down to the floor, where the picture would be too small otherwise."""
        size, floor = headline, self._floor(17 if self.layout.measures.is_landscape else 18)
        while size - 0.5 >= floor - 1e-6 and not self._leaves(LEAST_PICTURE * self.scale, size, detail):
            size -= 0.5
        if size < headline:
            self.climbed.append(FitStep(TypeRole.HEADLINE, "smaller for the picture", headline, size))
        return size

    def stack(self, words: StepWords) -> WordStack:
        """The words below the picture of one tile."""
        return self.stacks.tile(words, self.text_width, self.scale)

    def need(self, words: StepWords, headline: float, detail: float) -> float:
        """The height below the picture of one tile."""
        return 4.8 * self.scale + self.stack(words).height(StackSizes(headline, detail))

    def _most_need(self, headline: float, detail: float) -> float:
        return max((self.need(words, headline, detail) for words in self.words.big), default=0.0)

    def _room_for_picture(self, headline: float, detail: float) -> float:
        return self.layout.tile - ABOVE_PICTURE * self.scale - self._most_need(headline, detail)

    def _leaves(self, least: float, headline: float, detail: float) -> bool:
        """Whether the words of every tile leave room for a picture; the worst tile is asked first."""
        above = self.layout.tile - ABOVE_PICTURE * self.scale
        for index, words in enumerate(self._tiles):
            if above - self.need(words, headline, detail) < least:
                self._tiles.insert(0, self._tiles.pop(index))
                return False
        return bool(self._tiles) or above >= least

    def _detail(self, headline: float) -> float:
        """Between 11 and 12.5 points, fewest details of three lines first; smaller only for the picture."""
        k = self.scale
        widest = largest_picture(self.layout)
        candidates = [half / 2 * k for half in range(22, 26)]
        good = [size for size in candidates if self._leaves(min(widest, 40 * k), headline, size)] or [11 * k]
        size = min(good, key=lambda points: (self._long_details(points), -points))
        floor = max(10 * k, READ_IN_ACTION)
        while size - 0.5 >= floor and not self._leaves(LEAST_PICTURE * k, headline, size):
            size -= 0.5
        return size

    def _larger_detail(self, headline: float, detail: float) -> float:
        """Back up to the usual size, where a smaller headline has made room."""
        k = self.scale
        size = detail
        while size + 0.5 <= 11 * k and self._leaves(LEAST_PICTURE * k, headline, size + 0.5):
            size += 0.5
        if size < 11 * k:
            self.climbed.append(FitStep(TypeRole.DETAIL, "smaller", 11 * k, size))
        self._count_long(size)
        return size

    def _long_details(self, points: float) -> int:
        return sum(
            measure(words.detail, self.faces.detail, points, self.text_width).count > 2
            for words in self.words.big
            if words.detail
        )

    def _count_long(self, points: float) -> None:
        """The texts of tiles, but for their headlines, that have too many lines at their size."""
        for words in self.words.big:
            for piece, excess in self.stack(words).excess(StackSizes(points, points)):
                if piece.size is not Size.HEADLINE:
                    self._count_piece(piece, excess)

    def _count_piece(self, piece: Piece, excess: float) -> None:
        self.excess.append(Overflow(piece.role, piece.message, piece.text, round(excess, 2)))

    def _picture(self, headline: float, detail: float) -> float:
        k = self.scale
        if not self.words.big:
            return 0.0
        room = self._room_for_picture(headline, detail)
        side = min(largest_picture(self.layout), room)
        least = max(LEAST_PICTURE * k, LEAST_PICTURE_MM)
        if room < least:
            worst = max(self.words.big, key=lambda words: self.need(words, headline, detail))
            self._count(
                TypeRole.DETAIL if worst.detail else TypeRole.HEADLINE,
                worst,
                "detail" if worst.detail else "text",
                least - room,
            )
        elif side < least:
            self.excess.append(Overflow(GroupRole.PICTURE, None, "column", round(least - side, 2)))
        return side

    # -- strips, gates, names, notes -------------------------------------------------------------
    def _strip(self) -> float:
        k = self.scale
        floor = 10.5 if self.with_times and self.words.every_rub else 10.0
        size = 12.5 * k
        for size in sizes_down(12.5 * k, self._floor(floor)):
            if not any(self._strip_excess(words, size) for words in self.words.small):
                break
        for words in self.words.small:
            self._count(TypeRole.STRIP, words, "text", self._strip_excess(words, size))
        self._count_compact()
        self._climb(TypeRole.STRIP, 12.5, size)
        if not self.with_times and self.words.every_rub:
            self.climbed.append(FitStep(TypeRole.TIME, "one note for all", size, size))
        return size

    def _strip_excess(self, words: StepWords, points: float) -> float:
        """By how many millimetres the words of a strip or gate are too large at a size."""
        measures, k = self.layout.measures, self.scale
        height = measures.strip if words.numbered.kind is Kind.SMALL else measures.band
        width = small_text_width(self.layout.grid.width, height, k)
        if words.time and self.with_times:
            width -= line_width(words.time, self.faces.time, points) + 1.5 * k
        room = Room(max(width, 1.0), height - 1.0 * k, lines=2)
        return fit(words.headline, self.faces.headline, points, points, room).excess

    def _count_compact(self) -> None:
        """What strips and gates say above and below their line."""
        measures, grid = self.layout.measures, self.layout.grid
        for page in self.layout.pages:
            for card in self.stacks.cards(page.parts, measures, grid).values():
                for stack in (card.above, card.below):
                    for piece, excess in stack.excess(card.sizes):
                        self._count_piece(piece, excess)

    def _zone(self) -> float:
        size = 19 * self.scale
        face = self.faces.headline
        for panel in self._panels():
            size = min(
                size, fit(self.zone_text(panel), face, size, self._floor(13), self.zone_room(panel)).points
            )
        for panel in self._panels():
            fitted = fit(self.zone_text(panel), face, size, size, self.zone_room(panel))
            if fitted.excess:
                self.excess.append(
                    Overflow(TypeRole.ZONE, None, self.zone_text(panel), round(fitted.excess, 2))
                )
        self._climb(TypeRole.ZONE, 19, size)
        return size

    def zone_text(self, panel: Panel) -> str:
        """The name in the head of a panel."""
        return self.words.zones[panel.zone + ("+" if panel.is_continued else "")]

    def zone_room(self, panel: Panel) -> Room:
        """The space of that name."""
        slot = panel.head.name
        lines = 2 if slot.height >= self.layout.measures.band else 1
        return Room(
            self.layout.grid.span(slot.columns) - 1.5 * self.scale, slot.height + 2 * self.scale, lines
        )

    def _note(self) -> float:
        size = 12.5 * self.scale
        face = note_face(self.wording)
        noted = [(panel, text) for panel in self._panels() if (text := self.note_text(panel))]
        for panel, text in noted:
            size = min(size, fit(text, face, size, self._floor(10), self.note_room(panel)).points)
        for panel, text in noted:
            fitted = fit(text, face, size, size, self.note_room(panel))
            if fitted.excess:
                self.excess.append(Overflow(TypeRole.NOTE, None, text, round(fitted.excess, 2)))
        self._climb(TypeRole.NOTE, 12.5, size)
        self._count_missing_notes()
        return size

    def _count_missing_notes(self) -> None:
        """A note without a place is optional and goes; the time of every rub is not, on any sheet."""
        if not self.with_notes and self.words.notes:
            self.climbed.append(FitStep(TypeRole.NOTE, "dropped", 12.5 * self.scale, 0.0))
        if self.with_times or not self.words.every_rub:
            return
        for page in self.layout.pages:
            rubbed = [panel for panel in page.panels if panel.zone in self.words.rubbed_zones]
            if rubbed and not any(self.note_text(panel) for panel in rubbed):
                height = self.layout.measures.name_line
                self.excess.append(Overflow(TypeRole.NOTE, None, self.words.every_rub, round(height, 2)))

    def note_text(self, panel: Panel) -> str | None:
        """The note in the head of a panel that has a place for one."""
        if panel.head.note is None:
            return None
        return self.words.note(
            panel.zone,
            is_continued=panel.is_continued,
            with_times=self.with_times,
            with_notes=self.with_notes,
        )

    def note_room(self, panel: Panel) -> Room:
        """The space of that note."""
        slot = panel.head.note
        assert slot is not None
        return Room(self.layout.grid.span(slot.columns) - 1.0 * self.scale, slot.height + 0.5 * self.scale, 3)

    def _panels(self) -> Iterator[Panel]:
        return (panel for page in self.layout.pages for panel in page.panels)

    # -- shared ----------------------------------------------------------------------------------
    def _floor(self, points: float) -> float:
        return max(points * self.scale, READ_IN_ACTION)

    def _common(
        self,
        role: TypeRole,
        steps: Sequence[StepWords],
        texts: Sequence[str],
        face: Face,
        wanted: float,
        floor: float,
        room: Room,
    ) -> float:
        size = common_size(texts, face, wanted * self.scale, self._floor(floor), room)
        for words, text in zip(steps, texts, strict=True):
            self._count(role, words, "text", fit(text, face, size, size, room).excess)
        self._climb(role, wanted, size)
        return size

    def _climb(self, role: TypeRole, wanted: float, size: float) -> None:
        if size < wanted * self.scale - 1e-6:
            self.climbed.append(FitStep(role, "smaller", wanted * self.scale, size))

    def _count(self, role: TypeRole, words: StepWords, field: str, excess: float) -> None:
        if excess:
            numbered = words.numbered
            text = words.detail if field == "detail" and words.detail else words.headline
            self.excess.append(
                Overflow(
                    role, f"{self.words.protocol}/{numbered.step.told_as}/{field}", text, round(excess, 2)
                )
            )
