"""The outer panels of a pocket checklist: cover and back."""

from __future__ import annotations

from dataclasses import dataclass

from signage.compose import parts, qr
from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.furniture.band_form import BandForm, draw_band_form
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.theme import style_of
from signage.compose.typesetting import Face, Room, fit, measure
from signage.drawing.marks import Structure
from signage.drawing.roles import TypeRole
from signage.model.choices import ActionVerb, PhaseTheme
from signage.model.library import Hazard, Phase, Step
from signage.model.messages import pointer_context

_PLATE = BandForm(radius=1.2, frame_radius=1.2, tint_radius=1.2, frame=0.7, foot=0.9, is_plate=True)
_MARGIN = 5.0
_PAD = 4.0
_LEAST_PICTURE = 15.0


@dataclass(frozen=True)
class Fold:
    """Which of how many folded sheets; both count from 1."""

    number: int
    count: int

    def words(self, context: SheetContext) -> str:
        """Such as ``Sheet 1 of 2``."""
        wording = context.wording
        return wording.fixed("sheet-of", page=wording.number(self.number), pages=wording.number(self.count))


@dataclass(frozen=True)
class Line:
    """A text of the cover at the size that fits."""

    text: str
    role: TypeRole
    face: Face
    points: float
    wanted: float
    height: float
    message: str | None = None

    def draw(self, canvas: Canvas, x: float, y: float, width: float) -> float:
        """Set it; returns its foot."""
        return canvas.text(
            self.text,
            Lettering(self.role, self.face, self.points, wanted=self.wanted),
            TextPlace(x, y, width),
            message=self.message,
        )


def cover_panel(canvas: Canvas, context: SheetContext, fold: Fold) -> Canvas:
    """Title, a plate for each phase, and what a pocket checklist is not."""
    style, wording, protocol = canvas.style, context.wording, context.protocol
    inner = canvas.width - 2 * _MARGIN
    with canvas.artefact():
        canvas.rect(_MARGIN, _MARGIN, inner, canvas.height - 2 * _MARGIN, None, style.ink, 0.8, 2)
    x, width, y = _MARGIN + _PAD, inner - 2 * _PAD, _MARGIN + 5
    parts.draft_tag(canvas, context, x, y + 3.3, 6.6, 11, style.ink)
    code = wording.code(protocol.code)
    canvas.text(
        code,
        Lettering(TypeRole.OVER, canvas.face(700), 15, floor=9),
        TextPlace(x + width - 14, y + 3.3, 14, align=Align.END, anchor=Anchor.MIDDLE),
    )
    y += 11
    title = wording.content(f"{protocol.id}/title")
    title_face = canvas.face(700)
    lines, floor = next(
        (
            rung
            for rung in ((2, 15.0), (3, 13.0))
            if not _excess(title, title_face, 20, rung[1], width, rung[0])
        ),
        (4, 10.0),
    )
    with canvas.group(structure=Structure.HEADING_1):
        y = canvas.text(
            title,
            Lettering(TypeRole.TITLE, title_face, 20, floor=floor),
            TextPlace(x, y, width, lines=lines),
            message=f"{protocol.id}/title",
        )
    if fold.count > 1:
        sheet = _line(fold.words(context), TypeRole.SHEET, canvas.face(700), 12, 9, width)
        y = sheet.draw(canvas, x, y + 1.2, width)
    foot = canvas.height - _MARGIN - 3.5
    y += 2.2
    foot_lines = _foot_lines(canvas, context, width, foot - y)
    top = foot - sum(line.height for line in foot_lines)
    plates_foot = top - 2.4
    for line in foot_lines:
        line.draw(canvas, x, top + _AIR[line.role], width)
        top += line.height
    _plates(canvas, context, x, y, width, plates_foot - y)
    return canvas


_AIR = {
    TypeRole.MEMORY_AID: 0.0,
    TypeRole.CAUTIONS: 1.2,
    TypeRole.CONTROL: 1.0,
}
"""Above a line of the foot, by its role."""

_POINTER_AIR = {TypeRole.CONTROL_HEAD: 1.4, TypeRole.CONTROL: 0.4}
"""Above a line of the list of local documents, by its role."""


def _excess(text: str, face: Face, points: float, floor: float, width: float, lines: int) -> float:
    return fit(text, face, points, floor, Room(width, lines=lines)).excess


def _line(
    text: str,
    role: TypeRole,
    face: Face,
    points: float,
    floor: float,
    width: float,
    message: str | None = None,
) -> Line:
    """A text that may take as many lines as it needs at its floor; smaller before a third line."""
    found = fit(text, face, points, floor, Room(width, lines=2))
    if found.excess:
        found = fit(text, face, floor, floor, Room(width))
    height = found.measured.height + _AIR.get(role, 0.0)
    return Line(text, role, face, found.points, points, height, message)


def _foot_lines(canvas: Canvas, context: SheetContext, width: float, room: float) -> list[Line]:
    """What it is not, where its cautions stand, hospital and ward; smaller where they take half the cover."""
    wording, protocol = context.wording, context.protocol
    found: list[Line] = []
    for memory, cautions, names in ((9.5, 9.5, 8.5), (9.0, 9.0, 7.0)):
        bold = canvas.face(600)
        found = [_line(wording.fixed("memory-aid"), TypeRole.MEMORY_AID, bold, memory, 9, width)]
        if any(step.caution for step in protocol.steps):
            text = wording.fixed("cautions-elsewhere")
            found.append(_line(text, TypeRole.CAUTIONS, bold, cautions, 9, width))
        for message in ("library/name", f"ward/{protocol.ward}/name"):
            text = wording.content(message)
            found.append(_line(text, TypeRole.CONTROL, canvas.face(), names, 7, width, message))
        if sum(line.height for line in found) <= room * 0.6:
            break
    return found


def _plates(canvas: Canvas, context: SheetContext, x: float, y: float, width: float, height: float) -> None:
    """Side by side where their titles fit, else one below the other."""
    phases = context.protocol.phases
    gap, pad = (3.0, 2.4) if len(phases) < 3 else (2.0, 1.6)
    each = (width - gap * (len(phases) - 1)) / len(phases)
    face = canvas.face(700)
    titles = [context.wording.content(f"{context.protocol.id}/phase/{phase.id}/title") for phase in phases]
    fits = [fit(title, face, 12, 8, Room(each - 2, lines=2)) for title in titles]
    if len(phases) > 3 or any(found.excess for found in fits):
        _rows_of_plates(canvas, context, titles, (x, y, width, height))
        return
    points = min(found.points for found in fits)
    room = max(measure(title, face, points, each - 2).height for title in titles)
    band = max(8.0 if len(phases) < 3 else 9.0, room + 3.0)
    side = min(each - pad, height - band - 1.6)
    for index, (phase, title) in enumerate(zip(phases, titles, strict=True)):
        left = x + index * (each + gap)
        _plate(canvas, context, phase, title, (left, y, each, band), max(0.0, side), points)


def _plate(
    canvas: Canvas,
    context: SheetContext,
    phase: Phase,
    title: str,
    place: tuple[float, float, float, float],
    side: float,
    points: float,
) -> None:
    """A band in the form of the theme with the title, the picture in a frame below it."""
    x, y, width, band = place
    style = style_of(phase.theme, context.tone)
    has_picture = side >= _LEAST_PICTURE
    with canvas.artefact():
        if has_picture:
            canvas.rect(x, y + band, width, side + 1.6, style.paper, style.line, style.line_width(0.35))
    colour = _plate_band(canvas, context, phase, place)
    canvas.text(
        title,
        Lettering(TypeRole.PLATE, canvas.face(700), points, wanted=12, colour=colour),
        TextPlace(
            x + 1,
            y + band / 2,
            width - 2,
            height=band - 2.4,
            lines=2,
            align=Align.CENTRE,
            anchor=Anchor.MIDDLE,
        ),
        message=f"{context.protocol.id}/phase/{phase.id}/title",
    )
    if has_picture:
        step = _emblem(context, phase)
        left, words = x + (width - side) / 2, context.picture_words(step)
        canvas.picture(step.picture, left, y + band + 0.8, side, words, style.palette)


def _plate_band(
    canvas: Canvas, context: SheetContext, phase: Phase, place: tuple[float, float, float, float]
) -> str:
    with canvas.artefact():
        return draw_band_form(canvas, style_of(phase.theme, context.tone), place, _PLATE)


def _rows_of_plates(
    canvas: Canvas, context: SheetContext, titles: list[str], place: tuple[float, float, float, float]
) -> None:
    """One phase a row: its picture, its title beside it."""
    x, y, width, height = place
    gap = 1.6
    row = min(20.0, (height - gap * (len(titles) - 1)) / len(titles))
    side = row - 1.2 if row - 1.2 >= _LEAST_PICTURE else 0.0
    start = side + 2.0 if side else 0.0
    for index, (phase, title) in enumerate(zip(context.protocol.phases, titles, strict=True)):
        top = y + index * (row + gap)
        band = (x + start, top, width - start, row)
        colour = _plate_band(canvas, context, phase, band)
        lines = 2 if row >= 8 else 1
        canvas.text(
            title,
            Lettering(TypeRole.PLATE, canvas.face(700, leading=1.05), 12, floor=7, colour=colour),
            TextPlace(
                band[0] + 2, top + row / 2, band[2] - 4, height=row - 1.6, lines=lines, anchor=Anchor.MIDDLE
            ),
            message=f"{context.protocol.id}/phase/{phase.id}/title",
        )
        if side:
            step = _emblem(context, phase)
            palette = style_of(phase.theme, context.tone).palette
            canvas.picture(step.picture, x, top + 0.6, side, context.picture_words(step), palette)


def _emblem(context: SheetContext, phase: Phase) -> Step:
    """The step whose picture stands for a phase: that of its largest garment, else its middle step.

    A phase that is not about kit or hands has the first step that is not either.
    """
    garments = context.library.garments
    if phase.theme is PhaseTheme.PLAIN:
        deeds = (
            s
            for s in phase.steps
            if s.action.verb not in {ActionVerb.NEED, ActionVerb.HYGIENE, ActionVerb.DON, ActionVerb.MOVE}
        )
        return next(deeds, phase.steps[0])
    dressing = [
        s
        for s in phase.steps
        if s.action.verb in {ActionVerb.DON, ActionVerb.DOFF} and s.action.item in garments
    ]
    if dressing:
        return max(dressing, key=lambda step: len(garments[step.action.item or ""].covers))
    return phase.steps[len(phase.steps) // 2]


def back_panel(canvas: Canvas, context: SheetContext, fold: Fold, *, with_pointers: bool) -> Canvas:
    """The code of the training page, the local-policy caution, control text and the ruler.

    ``with_pointers``: what local documents tell stands below the caution.
    """
    style, wording = canvas.style, context.wording
    inner = canvas.width - 2 * _MARGIN
    link = context.training_link()
    side = min(max(29.0, qr.smallest_side_mm(link)), inner)
    words = wording.fixed("training-page")
    canvas.qr_code(link, (canvas.width - side) / 2, _MARGIN, side, f"{words}: {wording.code(link)}")
    y = canvas.text(
        words,
        Lettering(TypeRole.CONTROL_HEAD, canvas.face(600), 11, floor=9),
        TextPlace(_MARGIN, _MARGIN + side + 0.6, inner, lines=2, align=Align.CENTRE),
    )
    address = context.library.training_address.split("://", 1)[-1]
    y = canvas.text(
        wording.code(address),
        Lettering(TypeRole.CONTROL, canvas.face(wording=context.source), 8.5, floor=7),
        TextPlace(_MARGIN, y + 0.8, inner, lines=1, align=Align.CENTRE),
    )
    with canvas.artefact():
        canvas.line(_MARGIN, y + 2, _MARGIN + inner, y + 2, style.ink, 0.5)
    number, count = wording.number(fold.number), wording.number(fold.count)
    page = wording.fixed("page-of", page=number, pages=count)
    sentence = wording.fixed("ruler", length=wording.millimetres(50))
    words_height = fit(sentence, canvas.face(), 7.5, 7, Room(inner)).measured.height
    foot = canvas.height - _MARGIN - words_height - 1.6
    parts.ruler(canvas, context, _MARGIN, foot, "below", width=inner)
    pointers = context.protocol.pointers if with_pointers else ()
    _control_text(canvas, context, (y + 4, foot - parts.RULER_HEIGHT - 1.0), page, pointers)
    return canvas


def _control_text(
    canvas: Canvas,
    context: SheetContext,
    between: tuple[float, float],
    page: str,
    hazards: tuple[Hazard, ...],
) -> None:
    """The local-policy caution, what local documents tell, and the control text above the ruler.

    Smaller before fewer, longer lines.
    """
    y, foot = between
    wording, inner = context.wording, canvas.width - 2 * _MARGIN
    policy, face = wording.fixed("local-policy"), canvas.face()
    code = wording.code(context.protocol.code)
    revision, page_line, owner, review = parts.control_lines(context, page)
    items = [f"{code} · {revision}", *parts.copy_items(context), owner, review, page_line]
    if context.has_state:
        items.append(parts.state_sentence(context, wording))
    items += context.state_notes()
    for policy_points, points, is_packed, has_head, air in (
        (10.5, 8.2, False, True, 0.9),
        (10.5, 7.5, False, True, 0.9),
        (9.5, 7.5, True, True, 0.9),
        (9.0, 7.0, True, True, 0.9),
        (7.5, 7.0, True, True, 0.9),
        (7.5, 7.0, True, False, 0.9),
        (7.5, 7.0, True, False, 0.3),
    ):
        lines = parts.packed(items, face, points, inner) if is_packed else items
        heights = [air + measure(line, face, points, inner).height for line in lines]
        policy_height = measure(policy, canvas.face(600), policy_points, inner).height
        pointers = _pointers(context, hazards, (points, inner), is_packed=is_packed, has_head=has_head)
        heights += [pointer.height for pointer in pointers]
        if y + policy_height + 1.2 + sum(heights) <= foot:
            break
    y = canvas.text(
        policy,
        Lettering(TypeRole.LOCAL_POLICY, canvas.face(600), policy_points, wanted=10.5),
        TextPlace(_MARGIN, y, inner, lines=6),
    )
    for pointer in pointers:
        y = pointer.draw(canvas, _MARGIN, y + _POINTER_AIR[pointer.role], inner)
    y += 1.2
    for line in lines:
        room = foot - y - air if line is lines[-1] else None
        y = canvas.text(
            line,
            Lettering(TypeRole.CONTROL, face, points, wanted=8.2),
            TextPlace(_MARGIN, y + air, inner, height=room, lines=3),
        )


def _pointers(
    context: SheetContext,
    hazards: tuple[Hazard, ...],
    setting: tuple[float, float],
    *,
    is_packed: bool,
    has_head: bool,
) -> list[Line]:
    """The events for which a local document says what to do, each with its document, after a head."""
    wording, (points, width) = context.wording, setting
    if not hazards:
        return []
    plain, bold = Face.of(wording, 400), Face.of(wording, 600)
    messages: list[str | None] = [pointer_context(context.protocol, hazard) for hazard in hazards]
    texts = [wording.content(message) for message in messages if message]
    head = wording.fixed("local-documents")
    if is_packed:
        texts = parts.packed(texts if has_head else [head, *texts], plain, points, width)
        messages = [None] * len(texts)
    lines = [
        _pointer(text, TypeRole.CONTROL, plain, points, width, message)
        for text, message in zip(texts, messages, strict=True)
    ]
    return [_pointer(head, TypeRole.CONTROL_HEAD, bold, points, width), *lines] if has_head else lines


def _pointer(
    text: str, role: TypeRole, face: Face, points: float, width: float, message: str | None = None
) -> Line:
    height = measure(text, face, points, width).height + _POINTER_AIR[role]
    return Line(text, role, face, points, 8.2, height, message)
