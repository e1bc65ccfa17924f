"""The panels of a pocket checklist that hold no steps: cover, stop rule, back."""

from __future__ import annotations

from signage.compose import parts, qr
from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.theme import THEMES, Band, style_of
from signage.compose.typesetting import Room, fit, measure, tallest
from signage.drawing.marks import Structure
from signage.model.library import Phase, Step

_MARGIN = 5.0


def cover_panel(canvas: Canvas, context: SheetContext) -> Canvas:
    """Title, a plate for each phase, and what a pocket checklist is not."""
    style, wording, protocol = canvas.style, context.wording, context.protocol
    inner = canvas.width - 2 * _MARGIN
    with canvas.artefact():
        canvas.rect(_MARGIN, _MARGIN, inner, canvas.height - 2 * _MARGIN, None, style.ink, 0.8, 2)
    x, width, y = _MARGIN + 4, inner - 8, _MARGIN + 5
    parts.draft_tag(canvas, context, x, y + 3.3, 6.6, 11, style.ink)
    canvas.text(
        wording.code(protocol.code),
        x + width - 20,
        y + 3.3,
        20,
        15,
        "over",
        canvas.face(700),
        lines=1,
        valign="middle",
        align="end",
    )
    y += 11
    with canvas.group(structure=Structure.HEADING_1):
        y = canvas.text(
            wording.content(f"{protocol.id}/title"),
            x,
            y,
            width,
            20,
            "title",
            canvas.face(700),
            floor=15,
            lines=2,
            message=f"{protocol.id}/title",
        )
    foot = canvas.height - _MARGIN - 3.5
    names = [
        context.library.name and wording.content("library/name"),
        wording.content(f"ward/{protocol.ward}/name"),
    ]
    for name in reversed(names):
        foot = _line_above(canvas, name, x, foot, width, 8.5, "control", 400, 7.0)
    memory = wording.fixed("memory-aid")
    memory_height = tallest([memory], canvas.face(600), 9.5, width)
    memory_top = foot - 2.6 - memory_height
    canvas.text(memory, x, memory_top, width, 9.5, "memory-aid", canvas.face(600), floor=9, lines=4)
    _plates(canvas, context, x, y + 2.2, width, memory_top - 2.4 - y - 2.2)
    return canvas


def _line_above(
    canvas: Canvas,
    text: str,
    x: float,
    foot: float,
    width: float,
    points: float,
    role: str,
    weight: int,
    floor: float,
) -> float:
    face = canvas.face(weight)
    height = tallest([text], face, points, width)
    canvas.text(text, x, foot - height, width, points, role, face, floor=floor, lines=2)
    return foot - height - 0.6


def _plates(canvas: Canvas, context: SheetContext, x: float, y: float, width: float, height: float) -> None:
    phases = context.protocol.phases
    gap, pad, band = (3.0, 2.4, 8.0) if len(phases) < 3 else (2.0, 1.6, 9.0)
    each = (width - gap * (len(phases) - 1)) / len(phases)
    side = min(each - pad, height - band - 1.6)
    for index, phase in enumerate(phases):
        left = x + index * (each + gap)
        style = style_of(phase.theme, context.tone)
        corners = (True, True, False, False)
        form, colour = THEMES[phase.theme].band, style.ink
        with canvas.artefact():
            canvas.rect(left, y + band, each, side + 1.6, style.paper, style.line, style.line_width(0.35))
            if form is Band.FILLED:
                canvas.rect(left, y, each, band, style.deep, radius=1.2, corners=corners)
                colour = style.paper
            elif form is Band.OPEN:
                canvas.rect(left + 0.35, y, each - 0.7, band, style.paper, style.deep, 0.7, 1.2, corners)
            else:
                canvas.rect(left, y, each, band, style.tint, radius=1.2, corners=corners)
                canvas.rect(left, y + band - 0.9, each, 0.9, style.deep)
        title = context.wording.content(f"{context.protocol.id}/phase/{phase.id}/title")
        canvas.text(
            title,
            left + 1,
            y + band / 2,
            each - 2,
            12,
            "plate",
            canvas.face(700),
            floor=7.5,
            lines=2,
            height=band - 1.4,
            valign="middle",
            align="center",
            colour=colour,
        )
        step = _emblem(context, phase)
        canvas.picture(
            step.picture,
            left + (each - side) / 2,
            y + band + 0.8,
            side,
            context.picture_words(step),
            style.palette,
        )


def _emblem(context: SheetContext, phase: Phase) -> Step:
    """The step whose picture stands for a phase: that of its largest garment, else its middle step.

    A phase that is not about kit or hands has the first step that is not either.
    """
    garments = context.library.garments
    if phase.theme == "plain":
        deeds = (s for s in phase.steps if s.action.verb not in {"need", "hygiene", "don", "move"})
        return next(deeds, phase.steps[0])
    dressing = [s for s in phase.steps if s.action.verb in {"don", "doff"} and s.action.item in garments]
    if dressing:
        return max(dressing, key=lambda step: len(garments[step.action.item or ""].covers))
    return phase.steps[len(phase.steps) // 2]


def rule_panel(canvas: Canvas, context: SheetContext, phase: Phase) -> Canvas:
    """The stop rule, what goes into which container, and the key to the critical mark."""
    style, wording = canvas.style, context.wording
    inner = canvas.width - 2 * _MARGIN
    middle = _MARGIN + 4.5
    with canvas.artefact():
        canvas.rect(_MARGIN, _MARGIN, inner, 9, style.ink, radius=1.2)
    tag = parts.draft_tag(canvas, context, _MARGIN + inner - 2, middle, 4.4, 7.5, style.paper, is_at_end=True)
    with canvas.group(structure=Structure.HEADING_2):
        canvas.text(
            wording.fixed(phase.rule_kind),
            _MARGIN + 2.4,
            middle,
            inner - tag - 6,
            13,
            "panel-title",
            canvas.face(700),
            floor=9,
            lines=1,
            valign="middle",
            colour=style.paper,
        )
    message = f"{context.protocol.id}/phase/{phase.id}/rule"
    y = canvas.text(
        wording.content(message),
        _MARGIN + 1,
        _MARGIN + 12.4,
        inner - 2,
        13.5,
        "key-rule",
        canvas.face(700),
        floor=10.5,
        lines=6,
        message=message,
    )
    foot = canvas.height - _MARGIN - 7
    _container_list(canvas, context, y + 3, foot - 2, inner)
    if any(step.critical for step in context.protocol.steps):
        with canvas.group("critical", "key", structure=Structure.PARAGRAPH):
            canvas.rect(_MARGIN, foot, 7, 5.6, style.ink, radius=0.6)
            canvas.ink_line(
                wording.number(1),
                _MARGIN,
                7,
                foot + 2.8,
                10,
                "number",
                canvas.face(700),
                colour=style.paper,
                align="center",
            )
            canvas.text(
                wording.fixed("critical"),
                _MARGIN + 9.5,
                foot + 2.8,
                inner - 10,
                9.5,
                "legend",
                canvas.face(600),
                lines=1,
                valign="middle",
            )
    return canvas


def _container_list(canvas: Canvas, context: SheetContext, top: float, foot: float, width: float) -> None:
    style, wording = canvas.style, context.wording
    contents: dict[str, list[str]] = {}
    for step in context.protocol.steps:
        for action in step.actions:
            if action.bin and action.item and action.bin in context.ward.fixtures:
                names = contents.setdefault(action.bin, [])
                name = context.garment_name(action.item)
                if name not in names:
                    names.append(name)
    if not contents:
        return
    with canvas.artefact():
        canvas.line(_MARGIN, top, _MARGIN + width, top, style.ink, 0.5)
    heading = canvas.text(
        wording.fixed("where-it-goes"),
        _MARGIN,
        top + 1.6,
        width,
        9.5,
        "label",
        canvas.face(700),
        floor=8,
        lines=1,
    )
    row = min(13.0, (foot - heading - 0.8) / len(contents))
    with canvas.group(structure=Structure.LIST):
        for index, (bin_id, names) in enumerate(contents.items()):
            y = heading + 0.8 + index * row
            fixture = context.ward.fixtures[bin_id]
            with canvas.group("container-row", bin_id, structure=Structure.ITEM):
                side = min(8.4, row - 2.2)
                parts.container_tag(canvas, context, fixture, _MARGIN + 2, y + 1, side, side, with_word=False)
                named = context.container_name(fixture)
                takes = wording.join(names)
                canvas.text(
                    wording.fixed("container-takes", container=named, items=takes) if named else takes,
                    _MARGIN + 14,
                    y + row / 2,
                    width - 15,
                    10.5,
                    "contents",
                    canvas.face(600),
                    floor=8.5,
                    lines=3,
                    valign="middle",
                    height=row - 0.6,
                )
                with canvas.artefact():
                    canvas.line(
                        _MARGIN, y + row, _MARGIN + width, y + row, style.line, style.line_width(0.25)
                    )


def back_panel(canvas: Canvas, context: SheetContext) -> Canvas:
    """The code of the training page, the local-policy caution, control text and the ruler."""
    style, wording = canvas.style, context.wording
    inner = canvas.width - 2 * _MARGIN
    link = context.training_link()
    side = min(max(29.0, qr.smallest_side_mm(link)), inner)
    words = wording.fixed("training-page")
    canvas.qr_code(link, (canvas.width - side) / 2, _MARGIN, side, f"{words}: {wording.code(link)}")
    y = canvas.text(
        words,
        _MARGIN,
        _MARGIN + side + 0.6,
        inner,
        11,
        "control-head",
        canvas.face(600),
        align="center",
        floor=9,
        lines=1,
    )
    address = context.library.training_address.split("://", 1)[-1]
    y = canvas.text(
        wording.code(address),
        _MARGIN,
        y + 0.8,
        inner,
        8.5,
        "control",
        canvas.face(wording=context.source),
        align="center",
        floor=7,
        lines=1,
    )
    with canvas.artefact():
        canvas.line(_MARGIN, y + 2, _MARGIN + inner, y + 2, style.ink, 0.5)
    page = wording.fixed("page-of", page=wording.number(1), pages=wording.number(1))
    sentence = wording.fixed("ruler", length=wording.millimetres(50))
    words_height = fit(sentence, canvas.face(), 7.5, 7, Room(inner)).measured.height
    foot = canvas.height - _MARGIN - words_height - 1.6
    parts.ruler(canvas, context, _MARGIN, foot, "below", width=inner)
    _control_text(canvas, context, y + 4, foot - parts.RULER_HEIGHT - 1.0, page)
    return canvas


def _control_text(canvas: Canvas, context: SheetContext, y: float, foot: float, page: str) -> None:
    """The local-policy caution and the control text above the ruler; smaller before fewer, longer lines."""
    wording, inner = context.wording, canvas.width - 2 * _MARGIN
    policy, face = wording.fixed("local-policy"), canvas.face()
    code = wording.code(context.protocol.code)
    revision, page_line, owner, review = parts.control_lines(context, page)
    items = [f"{code} · {revision}", owner, review, page_line]
    if context.is_draft:
        items.append(parts.state_sentence(context, wording))
        if not context.is_source_language:
            items.append(wording.fixed("translation-unverified"))
    for policy_points, points, is_packed in (
        (10.5, 8.2, False),
        (10.5, 7.5, False),
        (9.5, 7.5, True),
        (9.0, 7.0, True),
        (7.5, 7.0, True),
    ):
        lines = parts.packed(items, face, points, inner) if is_packed else items
        heights = [0.9 + measure(line, face, points, inner).height for line in lines]
        policy_height = measure(policy, canvas.face(600), policy_points, inner).height
        if y + policy_height + 1.2 + sum(heights) <= foot:
            break
    y = canvas.text(
        policy, _MARGIN, y, inner, policy_points, "local-policy", canvas.face(600), lines=6, wanted=10.5
    )
    y += 1.2
    for line in lines:
        room = foot - y - 0.9 if line is lines[-1] else None
        y = canvas.text(
            line, _MARGIN, y + 0.9, inner, points, "control", face, lines=3, height=room, wanted=8.2
        )
