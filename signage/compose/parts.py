"""Parts that several sheets share: draft marks, ruler, container tags, tick boxes, control text."""

from __future__ import annotations

import math
from collections.abc import Sequence

from signage.compose.canvas import Canvas
from signage.compose.context import LocaleContext, SheetContext
from signage.compose.lettering import Align, Anchor, Lettering, TextPlace
from signage.compose.typesetting import Face, Room, fit, line_width
from signage.drawing.marks import Structure
from signage.drawing.roles import GroupRole, TypeRole
from signage.ground.length import MM_PER_POINT
from signage.model.library import Fixture
from signage.words.wording import Wording

RULER_MM = 50.0
"""Never scaled: it proves that a print is at full size."""

RULER_HEIGHT = 2.2

_LEAST_RIBBON = 6.0
"""Points below which two sentences do not share an edge."""


def tag_width(canvas: Canvas, word: str, height: float, points: float) -> float:
    """The width of a framed word."""
    return line_width(word, canvas.face(700), points) + 0.45 * height * 1.6


def state_word(context: LocaleContext) -> str:
    """The word for what a sheet is that is not for use: DRAFT, PROOF or DEMO."""
    return context.wording.fixed(context.mark.value)


def state_sentence(context: LocaleContext, wording: Wording) -> str:
    """The sentence that keeps a sheet that is not for use from being followed or posted."""
    return wording.fixed(f"{context.mark.value}-sentence")


def draft_tag(
    canvas: Canvas,
    context: LocaleContext,
    x: float,
    centre: float,
    height: float,
    points: float,
    colour: str,
    *,
    is_at_end: bool = False,
) -> float:
    """The framed word DRAFT, PROOF or DEMO with its start (or end) edge at x; its width, 0 if none."""
    if not context.has_state:
        return 0.0
    face = canvas.face(700)
    word = state_word(context)
    width = tag_width(canvas, word, height, points)
    left = x - width if is_at_end else x
    with canvas.group(
        GroupRole.DRAFT_TAG,
        structure=Structure.PARAGRAPH,
        box=canvas.box(left, centre - height / 2, width, height),
    ):
        canvas.rect(left, centre - height / 2, width, height, None, colour, height * 0.1, height * 0.13)
        canvas.ink_line(
            word,
            Lettering(TypeRole.DRAFT, face, points, floor=7, colour=colour),
            TextPlace(left, centre, width, height=height * 0.86, align=Align.CENTRE),
        )
    return width


def draft_ribbon(canvas: Canvas, context: LocaleContext, points: float) -> None:
    """The sentence of its state along all four edges, in the language of the sheet and of its source.

    An edge too short for both bears one: the sheet's own at the top and left, the source's opposite.
    """
    if not context.has_state:
        return
    sentences = [(state_sentence(context, context.wording), canvas.face(600))]
    if not context.is_source_language:
        sentence = state_sentence(context, context.source)
        sentences.append((sentence, canvas.face(600, wording=context.source)))
    middle = canvas.margin / 2
    edges = (
        ("top", canvas.width / 2, middle, 0.0, canvas.width),
        ("bottom", canvas.width / 2, canvas.height - middle, 0.0, canvas.width),
        ("left", middle, canvas.height / 2, -90.0, canvas.height),
        ("right", canvas.width - middle, canvas.height / 2, -90.0, canvas.height),
    )
    for name, centre_x, centre_y, degrees, length in edges:
        usable = length - 2 * canvas.margin
        told = sentences
        if _unit(told, points) > usable * points / min(points, _LEAST_RIBBON):
            told = sentences[:1] if name in {"top", "left"} else sentences[-1:]
        size = min(points, points * usable / _unit(told, points))
        unit = _unit(told, size)
        repeats = max(1, min(3, int(usable / (unit * 1.6))))
        with canvas.group(GroupRole.RIBBON, name, structure=Structure.ARTEFACT):
            for repeat in range(repeats):
                along = -usable / 2 + usable / repeats * (repeat + 0.5) - unit / 2
                for text, face in told:
                    width = line_width(text, face, size)
                    offset = along + width / 2
                    angle = math.radians(degrees)
                    x = centre_x + math.cos(angle) * offset
                    y = centre_y + math.sin(angle) * offset
                    canvas.turned_line(text, Lettering(TypeRole.RIBBON, face, size), (x, y), degrees)
                    along += width + _ribbon_gap(size)


def _unit(sentences: Sequence[tuple[str, Face]], points: float) -> float:
    """How long the sentences of a ribbon are one behind the other."""
    gaps = _ribbon_gap(points) * (len(sentences) - 1)
    return gaps + sum(line_width(text, face, points) for text, face in sentences)


def _ribbon_gap(points: float) -> float:
    return points * 0.8


def ruler(
    canvas: Canvas,
    context: LocaleContext,
    x: float,
    y: float,
    words: str | None = None,
    *,
    width: float = RULER_MM,
    points: float = 7.5,
) -> None:
    """A 50 mm ruler on the line y; ``words``: None for no words, ``below`` or ``after``.

    ``width`` and ``points`` are for the sentence below it; the ruler itself never changes.
    """
    ink = canvas.style.ink
    with canvas.group(GroupRole.RULER, structure=Structure.ARTEFACT, box=canvas.box(x, y, RULER_MM, 0.0)):
        canvas.line(x, y, x + RULER_MM, y, ink, 0.3, has_butt_caps=True)
        for millimetre in range(0, 51, 5):
            height = RULER_HEIGHT if millimetre % 10 == 0 else 1.2
            canvas.line(x + millimetre, y - height, x + millimetre, y, ink, 0.3)
    length = context.wording.millimetres(50)
    if words == "below":
        sentence = context.wording.fixed("ruler", length=length)
        canvas.text(
            sentence,
            Lettering(TypeRole.RULER_WORDS, canvas.face(), points, floor=7, colour=canvas.style.ink_2),
            TextPlace(x, y + 1.2, max(width, RULER_MM)),
        )
    elif words == "after":
        room = Room(14, lines=1)
        if fit(length, canvas.face(), 7, 7, room).excess:  # the SI symbol is the same in every language
            length = context.wording.code(f"{context.wording.number(50)} mm")
        canvas.text(
            length,
            Lettering(TypeRole.CONTROL, canvas.face(), 7, colour=canvas.style.ink_2),
            TextPlace(x + RULER_MM + 1.2, y, 14, anchor=Anchor.BOTTOM),
        )


def container_tag(
    canvas: Canvas,
    context: SheetContext,
    fixture: Fixture,
    x: float,
    y: float,
    width: float,
    height: float,
    *,
    with_word: bool = True,
) -> None:
    """The silhouette of a bin (lid open) or tub (lid shut) with its letter if it has one, its word below."""
    ink = canvas.style.ink
    is_tub = fixture.kind == "tub"
    line = max(0.3, height * 0.05)
    word = context.container_word(fixture)
    body_top = y + height * (0.42 if is_tub else 0.30)
    bottom = y + height
    code = fixture.code or ""
    name = context.container_name(fixture) or f"{word} {code}"
    with canvas.group(
        GroupRole.CONTAINER,
        fixture.id,
        structure=Structure.FIGURE,
        box=canvas.box(x, y, width, height),
        alternative=name,
    ):
        if is_tub:
            canvas.rect(x, body_top, width, bottom - body_top, canvas.style.paper, ink, line, height * 0.12)
            canvas.line(x - width * 0.06, body_top, x + width * 1.06, body_top, ink, line * 1.5)
        else:
            slant = width * 0.1
            canvas.polygon(
                [(x, body_top), (x + width, body_top), (x + width - slant, bottom), (x + slant, bottom)],
                canvas.style.paper,
                ink,
                line,
            )
            canvas.line(x - width * 0.02, body_top - height * 0.12, x + width * 0.9, y, ink, line * 1.3)
        if code:
            letter = min((bottom - body_top) * 0.56, width * 0.52)
            canvas.ink_line(
                context.wording.code(code),
                Lettering(
                    TypeRole.CONTAINER, canvas.face(700, wording=context.source), letter / 0.714 / 0.3528
                ),
                TextPlace(x, (body_top + bottom) / 2, width, align=Align.CENTRE),
            )
    if with_word:
        _container_word(canvas, word, x, bottom, width, height)


def _container_word(canvas: Canvas, word: str, x: float, bottom: float, width: float, height: float) -> None:
    """Centred under the silhouette; from its start where it is long, so that it stays in its card."""
    face, points = canvas.face(), max(7.0, 8.5 * height / 12)
    is_long = line_width(word, face, points) > width * 1.6
    canvas.text(
        word,
        Lettering(TypeRole.CONTAINER_WORD, face, points, floor=7),
        TextPlace(
            x - width * (0.2 if is_long else 1),
            bottom + 0.8 * height / 12,
            width * 3,
            lines=1,
            align=Align.START if is_long else Align.CENTRE,
        ),
    )


def tick_box(canvas: Canvas, x: float, y: float, side: float) -> None:
    """An empty box to tick, drawn and not typed, so that no font can lack it."""
    with canvas.group(GroupRole.TICK_BOX, structure=Structure.ARTEFACT, box=canvas.box(x, y, side, side)):
        canvas.rect(x, y, side, side, canvas.style.paper, canvas.style.ink, 0.4, side * 0.125)


def chevron(canvas: Canvas, x: float, y: float, scale: float) -> None:
    """The sign between two cards that are read one after the other."""
    with canvas.artefact():
        canvas.polygon(
            [(x, y), (x + 2 * scale, y + 2.2 * scale), (x, y + 4.4 * scale)],
            None,
            canvas.style.ink,
            0.9 * scale,
            is_closed=False,
        )


def packed(items: Sequence[str], face: Face, points: float, width: float) -> list[str]:
    """Items joined by dots into as few lines as fit the width; an item is never broken for it."""
    lines: list[str] = []
    used = 0.0
    for item in items:
        own = line_width(item, face, points)
        joined = f"{lines[-1]}{_DOT}{item}" if lines else item
        together = used + line_width(_DOT, face, points) + own
        if lines and _fits_together(joined, together, face, points, width):
            lines[-1], used = joined, together
        else:
            lines.append(item)
            used = own
    return lines


_DOT = " · "


def _fits_together(joined: str, together: float, face: Face, points: float, width: float) -> bool:
    """Whether a line is no wider than it may be, by the sum of its parts where this leaves no doubt.

    Letters on the two sides of a dot may stand nearer to each other or farther apart, by less than an em a
    dot: a line is shaped only where that decides.
    """
    doubt = joined.count(_DOT) * 2 * points * MM_PER_POINT
    if abs(together - width) > doubt:
        return together < width
    return line_width(joined, face, points) <= width


def copy_items(context: LocaleContext) -> tuple[str, ...]:
    """The number of the copy, where it has one, as an item of control text: it is never broken."""
    return (context.wording.code(context.copy),) if context.copy else ()


def control_lines(context: SheetContext, page: str) -> tuple[str, ...]:
    """The control text of every sheet: revision, page with language, owner, review date."""
    wording = context.wording
    owner = wording.content(f"{context.protocol.id}/owner")
    return (
        wording.fixed("revision", code=context.revision_words()),
        f"{wording.name} · {page}",
        wording.fixed("owner", role=owner),
        wording.fixed("review-by", date=wording.date(context.protocol.review_by)),
    )
