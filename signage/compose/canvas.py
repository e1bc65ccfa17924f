"""A page being drawn, in logical coordinates: x runs from the start edge to the end edge.

Right-to-left sheets mirror every position and corner, never glyphs, digits, QR codes or pictures.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager

from signage.compose import qr
from signage.compose.context import LocaleContext
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.theme import Style
from signage.compose.typesetting import Face, Fitted, Room, fit, fit_ink, measure, shift_into
from signage.drawing.marks import (
    Fill,
    FitStep,
    FormMark,
    Group,
    Mark,
    Overflow,
    Page,
    PathMark,
    PlacedLine,
    Structure,
    TextMark,
)
from signage.drawing.roles import GroupRole
from signage.ground.geometry import (
    IDENTITY,
    Affine,
    Box,
    polygon,
    rectangle,
    rotation,
    scaling,
    translation,
)
from signage.ground.length import MM_PER_POINT
from signage.pictograms.palette import Palette
from signage.words.wording import Wording

Fact = str | float | int | bool


class Canvas:
    """Collects marks. ``scale`` is k of the design system: 1 on A3; only its constants grow with it."""

    def __init__(
        self,
        width: float,
        height: float,
        context: LocaleContext,
        style: Style,
        scale: float = 1.0,
        margin: float = 0.0,
    ) -> None:
        self.width, self.height = width, height
        self.wording, self.style = context.wording, style
        self.picture_set = context.picture_set
        self.scale, self.margin = scale, margin
        self.is_right_to_left = context.wording.is_right_to_left
        self.fit_steps: list[FitStep] = []
        self.overflows: list[Overflow] = []
        self._marks: list[list[Mark]] = [[]]

    def left(self, x: float, width: float = 0.0) -> float:
        """The left edge on paper of something that starts at logical x."""
        return self.width - x - width if self.is_right_to_left else x

    def box(self, x: float, y: float, width: float, height: float) -> Box:
        """A logical box on paper."""
        return Box(self.left(x, width), y, width, height)

    def add(self, mark: Mark) -> None:
        """Append a mark whose coordinates are those of the paper already."""
        self._marks[-1].append(mark)

    @contextmanager
    def group(
        self,
        role: GroupRole = GroupRole.NONE,
        name: str = "",
        *,
        structure: Structure | None = None,
        box: Box | None = None,
        alternative: str | None = None,
        language: str | None = None,
        **facts: Fact,
    ) -> Iterator[None]:
        """Everything drawn inside becomes one group; ``box`` is on paper (see ``Canvas.box``)."""
        self._marks.append([])
        try:
            yield
        finally:
            marks = tuple(self._marks.pop())
            self.add(
                Group(
                    marks=marks,
                    role=role,
                    name=name,
                    structure=structure,
                    box=box,
                    alternative=alternative,
                    language=language,
                    facts=tuple(sorted(facts.items())),
                )
            )

    def artefact(self) -> AbstractContextManager[None]:
        """A group that readers of the structure skip."""
        return self.group(structure=Structure.ARTEFACT)

    def place(
        self, other: Canvas, transform: Affine, role: GroupRole = GroupRole.NONE, name: str = ""
    ) -> None:
        """Put the marks of another canvas on this one."""
        box = Box(0, 0, other.width, other.height)
        self.add(Group(tuple(other.marks), role=role, name=name, transform=transform, box=box))
        self.fit_steps += other.fit_steps
        self.overflows += other.overflows

    @property
    def marks(self) -> tuple[Mark, ...]:
        """What has been drawn."""
        return tuple(self._marks[0])

    def page(self) -> Page:
        """The finished page."""
        return Page(self.width, self.height, self.marks, self.margin)

    def rect(
        self,
        x: float,
        y: float,
        width: float,
        height: float,
        fill: Fill | None = None,
        stroke: str | None = None,
        line: float = 0.35,
        radius: float = 0.0,
        corners: Sequence[bool] = (True, True, True, True),
    ) -> None:
        """A box; ``corners`` says which are round: start top, end top, end bottom, start bottom."""
        start_top, end_top, end_bottom, start_bottom = corners
        if self.is_right_to_left:
            corners = (end_top, start_top, start_bottom, end_bottom)
        path = rectangle(self.box(x, y, width, height), radius, corners)
        self.add(PathMark(path, fill, stroke, line if stroke else 0.0))

    def polygon(
        self,
        points: Sequence[tuple[float, float]],
        fill: Fill | None = None,
        stroke: str | None = None,
        line: float = 0.35,
        is_closed: bool = True,
        dash: tuple[float, ...] = (),
    ) -> None:
        """Straight lines between logical points."""
        path = polygon([(self.left(x), y) for x, y in points], is_closed)
        self.add(PathMark(path, fill, stroke, line if stroke else 0.0, dash))

    def line(
        self,
        x0: float,
        y0: float,
        x1: float,
        y1: float,
        colour: str | None = None,
        width: float = 0.35,
        dash: tuple[float, ...] = (),
        *,
        has_butt_caps: bool = False,
    ) -> None:
        """A straight line."""
        path = polygon([(self.left(x0), y0), (self.left(x1), y1)], closed=False)
        self.add(PathMark(path, None, colour or self.style.ink, width, dash, has_butt_caps))

    def picture(
        self,
        name: str,
        x: float,
        y: float,
        side: float,
        alternative: str | None,
        palette: Palette | None = None,
        *,
        is_sign: bool = False,
        language: str | None = None,
    ) -> None:
        """A pictogram in a square, decoration without alternative text; rules let a sign be smaller."""
        form = self.picture_set.form(name, palette or self.style.palette, self.is_right_to_left)
        box = self.box(x, y, side, side)
        transform = translation(box.x, box.y) @ scaling(side / form.size)
        structure = Structure.FIGURE if alternative else Structure.ARTEFACT
        facts: dict[str, Fact] = {"is_sign": True} if is_sign else {}
        tag = language or self.wording.tag
        with self.group(
            GroupRole.PICTURE,
            name,
            structure=structure,
            box=box,
            alternative=alternative,
            language=tag,
            **facts,
        ):
            self.add(FormMark(form, transform))

    def qr_code(self, payload: str, x: float, y: float, side: float, alternative: str) -> None:
        """A QR code with its quiet zone in a square, dark on paper, never mirrored."""
        box = self.box(x, y, side, side)
        with self.group(
            GroupRole.QR,
            payload,
            structure=Structure.FIGURE,
            box=box,
            alternative=alternative,
            language=self.wording.tag,
            module=qr.module_mm(payload, side),
        ):
            self.add(PathMark(rectangle(box), self.style.paper))
            self.add(PathMark(qr.qr_path(payload, box), self.style.ink))

    def face(
        self,
        weight: int = 400,
        *,
        is_body: bool = False,
        leading: float | None = None,
        is_balanced: bool = True,
        wording: Wording | None = None,
    ) -> Face:
        """A face in the language of the sheet or of another wording."""
        speaker = wording or self.wording
        return Face.of(speaker, weight, is_body=is_body, leading=leading, is_balanced=is_balanced)

    def text(self, text: str, lettering: Lettering, place: TextPlace, message: str | None = None) -> float:
        """Set a text in a logical box; returns the y of its last descent.

        ``message`` is the context of the text, for findings.
        """
        face, room = lettering.face, Room(place.width, place.height, place.lines)
        fitted = fit(text, face, lettering.points, lettering.least, room)
        self._record(fitted, lettering, message, text)
        measured = fitted.measured
        top = place.y
        if place.anchor is Anchor.MIDDLE:
            top -= (measured.height - face.metrics.descent * measured.em * face.metrics.middle) / 2
            top += shift_into(measured, face, top, place.y, place.height)
        elif place.anchor is Anchor.BOTTOM:
            top -= measured.height
        self._add_text(fitted, lettering, place, top + face.metrics.ascent * measured.em, message)
        return top + measured.height

    def ink_line(
        self, text: str, lettering: Lettering, place: TextPlace, message: str | None = None
    ) -> float:
        """One line centred on its ink at the y of its place (titles, numbers, letters); returns its width."""
        fitted = fit_ink(text, lettering.face, lettering.points, lettering.least, place.width, place.height)
        measured = fitted.measured
        line = measured.lines[0]
        self._record(fitted, lettering, message, text)
        baseline = place.y + (line.ink_top + line.ink_bottom) / 2 * measured.em
        self._add_text(fitted, lettering, place, baseline, message)
        return measured.width

    def turned_line(
        self, text: str, lettering: Lettering, centre: tuple[float, float], degrees: float
    ) -> None:
        """One line about a point of the paper, turned clockwise; for the ribbon along the edges.

        The line is centred by a fixed share of its size, so that scripts side by side share a baseline.
        """
        face, points = lettering.face, lettering.points
        measured = measure(text, face, points, 1e6)
        line = measured.lines[0]
        x = centre[0] - measured.width / 2
        baseline = centre[1] + 0.26 * points * MM_PER_POINT
        placed = PlacedLine(line.runs, x - line.lead * measured.em, baseline, line.start, line.end)
        top = baseline - line.ink_top * measured.em
        upright = Box(x, top, measured.width, (line.ink_top - line.ink_bottom) * measured.em)
        turn = rotation(degrees, *centre) if degrees else IDENTITY
        self.add(
            TextMark(
                text=text,
                language=face.language,
                is_right_to_left=measured.setting.is_right_to_left,
                lines=(placed,),
                size=measured.em,
                colour=self.style.ink,
                role=lettering.role,
                weight=face.weight,
                points=points * face.metrics.size_factor,
                wanted_points=points * face.metrics.size_factor,
                box=turn.box(upright),
                rotation=degrees,
                pivot=centre,
            )
        )

    def _add_text(
        self,
        fitted: Fitted,
        lettering: Lettering,
        place: TextPlace,
        first_baseline: float,
        message: str | None,
    ) -> None:
        measured, face = fitted.measured, lettering.face
        left = self.left(place.x, place.width)
        is_at_right = (place.align is Align.END) != self.is_right_to_left
        placed: list[PlacedLine] = []
        ink: Box | None = None
        for index, line in enumerate(measured.lines):
            line_width = line.width * measured.em
            slack = place.width - line_width
            line_x = left + (slack / 2 if place.align is Align.CENTRE else slack if is_at_right else 0.0)
            baseline = first_baseline + index * measured.leading
            placed.append(
                PlacedLine(line.runs, line_x - line.lead * measured.em, baseline, line.start, line.end)
            )
            height = (line.ink_top - line.ink_bottom) * measured.em
            bounds = Box(line_x, baseline - line.ink_top * measured.em, line_width, height)
            ink = bounds if ink is None else ink.union(bounds)
        if ink is None:
            return
        factor = face.metrics.size_factor
        self.add(
            TextMark(
                text=fitted.text,
                language=face.language,
                is_right_to_left=measured.setting.is_right_to_left,
                lines=tuple(placed),
                size=measured.em,
                colour=lettering.colour or self.style.ink,
                role=lettering.role,
                weight=face.weight,
                points=fitted.points * factor,
                wanted_points=(lettering.wanted or lettering.points) * factor,
                box=ink,
                message=message,
            )
        )

    def _record(self, fitted: Fitted, lettering: Lettering, message: str | None, text: str) -> None:
        if fitted.is_softened:
            self.fit_steps.append(
                FitStep(lettering.role, "soft ties dropped", lettering.points, fitted.points)
            )
        if fitted.points < lettering.points:
            self.fit_steps.append(FitStep(lettering.role, "smaller", lettering.points, fitted.points))
        if fitted.excess:
            self.overflows.append(Overflow(lettering.role, message, text, round(fitted.excess, 2)))
