"""A page being drawn, in logical coordinates: x runs from the start edge to the end edge.

Right-to-left sheets mirror every position and corner, never glyphs, digits, QR codes or pictures.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager

from signage.compose import qr
from signage.compose.context import Speaking
from signage.compose.theme import Style
from signage.compose.typesetting import Face, Fitted, Measured, Room, fit, fit_ink, measure, shift_into
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
        context: Speaking,
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
        role: str = "",
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

    def place(self, other: Canvas, transform: Affine, role: str = "", name: str = "") -> None:
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
            "picture", name, structure=structure, box=box, alternative=alternative, language=tag, **facts
        ):
            self.add(FormMark(form, transform))

    def qr_code(self, payload: str, x: float, y: float, side: float, alternative: str) -> None:
        """A QR code with its quiet zone in a square, dark on paper, never mirrored."""
        box = self.box(x, y, side, side)
        with self.group(
            "qr",
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

    def text(
        self,
        text: str,
        x: float,
        y: float,
        width: float,
        points: float,
        role: str,
        face: Face,
        *,
        floor: float | None = None,
        lines: int | None = None,
        height: float | None = None,
        colour: str | None = None,
        align: str = "start",
        valign: str = "top",
        message: str | None = None,
        wanted: float | None = None,
    ) -> float:
        """Set a text in a logical box; returns the y of its last descent.

        ``y`` is the top of the ascent (valign ``top``), the middle (about which it keeps to its ``height``)
        or the bottom of the text.
        ``wanted`` is the size of the role where ``points`` has been found for all its texts together.
        """
        fitted = fit(text, face, points, points if floor is None else floor, Room(width, height, lines))
        self._record(fitted, role, points, message, text)
        measured = fitted.measured
        top = y
        if valign == "middle":
            top = y - (measured.height - face.metrics.descent * measured.em * face.metrics.middle) / 2
            top += shift_into(measured, face, top, y, height)
        elif valign == "bottom":
            top = y - measured.height
        first_baseline = top + face.metrics.ascent * measured.em
        self._add_text(
            measured, fitted, face, x, width, first_baseline, role, wanted or points, colour, align, message
        )
        return top + measured.height

    def ink_line(
        self,
        text: str,
        x: float,
        width: float,
        centre: float,
        points: float,
        role: str,
        face: Face,
        *,
        floor: float | None = None,
        height: float | None = None,
        colour: str | None = None,
        align: str = "start",
        message: str | None = None,
    ) -> float:
        """One line centred on its ink at y = ``centre`` (titles, numbers, letters); returns its width."""
        fitted = fit_ink(text, face, points, points if floor is None else floor, width, height)
        measured = fitted.measured
        line = measured.lines[0]
        self._record(fitted, role, points, message, text)
        baseline = centre + (line.ink_top + line.ink_bottom) / 2 * measured.em
        self._add_text(measured, fitted, face, x, width, baseline, role, points, colour, align, message)
        return measured.width

    def turned_line(
        self,
        text: str,
        centre_x: float,
        centre_y: float,
        points: float,
        role: str,
        face: Face,
        degrees: float,
    ) -> None:
        """One line about a point of the paper, turned clockwise; for the ribbon along the edges.

        The line is centred by a fixed share of its size, so that scripts side by side share a baseline.
        """
        measured = measure(text, face, points, 1e6)
        line = measured.lines[0]
        x = centre_x - measured.width / 2
        baseline = centre_y + 0.26 * points * MM_PER_POINT
        placed = PlacedLine(line.runs, x - line.lead * measured.em, baseline, line.start, line.end)
        top = baseline - line.ink_top * measured.em
        upright = Box(x, top, measured.width, (line.ink_top - line.ink_bottom) * measured.em)
        pivot = (centre_x, centre_y)
        turn = rotation(degrees, *pivot) if degrees else IDENTITY
        self.add(
            TextMark(
                text=text,
                language=face.language,
                is_right_to_left=measured.paragraph.is_right_to_left,
                lines=(placed,),
                size=measured.em,
                colour=self.style.ink,
                role=role,
                weight=face.weight,
                points=points * face.metrics.size_factor,
                wanted_points=points * face.metrics.size_factor,
                box=turn.box(upright),
                rotation=degrees,
                pivot=pivot,
            )
        )

    def _add_text(
        self,
        measured: Measured,
        fitted: Fitted,
        face: Face,
        x: float,
        width: float,
        first_baseline: float,
        role: str,
        points: float,
        colour: str | None,
        align: str,
        message: str | None,
    ) -> None:
        left = self.left(x, width)
        is_at_right = (align == "end") != self.is_right_to_left
        placed: list[PlacedLine] = []
        ink: Box | None = None
        for index, line in enumerate(measured.lines):
            line_width = line.width * measured.em
            slack = width - line_width
            line_x = left + (slack / 2 if align == "center" else slack if is_at_right else 0.0)
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
                is_right_to_left=measured.paragraph.is_right_to_left,
                lines=tuple(placed),
                size=measured.em,
                colour=colour or self.style.ink,
                role=role,
                weight=face.weight,
                points=fitted.points * factor,
                wanted_points=points * factor,
                box=ink,
                message=message,
            )
        )

    def _record(self, fitted: Fitted, role: str, wanted: float, message: str | None, text: str) -> None:
        if fitted.is_softened:
            self.fit_steps.append(FitStep(role, "soft ties dropped", wanted, fitted.points))
        if fitted.points < wanted:
            self.fit_steps.append(FitStep(role, "smaller", wanted, fitted.points))
        if fitted.excess:
            self.overflows.append(Overflow(role, message, text, round(fitted.excess, 2)))
