"""The pages of sheets about pictures: margins, head band, foot."""

from __future__ import annotations

from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.furniture.footer import Block, footer_blocks
from signage.compose.lettering import Align, Lettering, TextPlace
from signage.compose.papers import Paper
from signage.compose.parts import draft_ribbon, draft_tag, packed, ruler
from signage.compose.pictures.context import PictureContext
from signage.compose.theme import style_of
from signage.compose.typesetting import Room, fit, measure
from signage.drawing.marks import FitStep, Structure
from signage.drawing.roles import TypeRole
from signage.ground.length import MM_PER_POINT
from signage.model.choices import PhaseTheme

MARGIN = 12.0
BAND = 13.0
FOOT = 25.0
"""Heights in millimetres of the head band, and of the foot with the gap above it."""

_FOOT_GAP = 2.0
_CONTROL, _LEAST = 7.5, 7.0


@dataclass(frozen=True)
class PageWords:
    """What a head band and a foot say: the title, what stands at its end, and the code of the page."""

    title: str
    ending: str = ""
    code: str = ""


@dataclass(frozen=True)
class PageCount:
    """Which page of how many."""

    page: int
    pages: int


def picture_canvas(context: PictureContext, paper: Paper) -> Canvas:
    """An empty page with the draft ribbon on its four edges."""
    style = style_of(PhaseTheme.PLAIN, context.tone)
    canvas = Canvas(paper.width, paper.height, context, style, 0.85, MARGIN)
    draft_ribbon(canvas, context, 8.5)
    return canvas


def draw_band(canvas: Canvas, context: PictureContext, words: PageWords, *, is_filled: bool = False) -> float:
    """Title, ending and draft tag in a frame, or on a dark ground; returns the y below the band."""
    style, width = canvas.style, canvas.width - 2 * MARGIN
    colour = style.paper if is_filled else style.ink
    middle = MARGIN + BAND / 2
    with canvas.artefact():
        if is_filled:
            canvas.rect(MARGIN, MARGIN, width, BAND, style.ink, radius=2)
        else:
            canvas.rect(
                MARGIN + 0.6, MARGIN + 0.6, width - 1.2, BAND - 1.2, style.paper, style.ink, 1.2, radius=1.6
            )
    tag = draft_tag(canvas, context, MARGIN + width - 4, middle, 6.5, 10.5, colour, is_at_end=True)
    end = MARGIN + width - 4 - tag - (4 if tag else 0)
    ending = 0.0
    with canvas.group(structure=Structure.HEADING_1):
        face = canvas.face(700)
        if words.ending:
            ending = measure(words.ending, face, 15, 1e6).width + 6
        room = end - ending - MARGIN - 4
        canvas.ink_line(
            words.title,
            Lettering(TypeRole.TITLE, face, 21, floor=13, colour=colour),
            TextPlace(MARGIN + 4, middle, room, height=8.5),
        )
        if words.ending:
            canvas.ink_line(
                words.ending,
                Lettering(TypeRole.TITLE, face, 15, colour=colour),
                TextPlace(end - ending, middle, ending, align=Align.END),
            )
    return MARGIN + BAND


def draw_foot(canvas: Canvas, context: PictureContext, words: PageWords, count: PageCount) -> None:
    """A rule, then title and revision, duties, local-policy caution, ruler."""
    top = canvas.height - MARGIN - FOOT + _FOOT_GAP
    blocks = footer_blocks(MARGIN, canvas.width - 2 * MARGIN, None)
    canvas.line(MARGIN, top, canvas.width - MARGIN, top, None, 0.4, has_butt_caps=True)
    top += 2.4
    wording = context.wording
    of_pages = wording.fixed("page-of", page=wording.number(count.page), pages=wording.number(count.pages))
    identity = [wording.fixed("revision", code=wording.code(context.revision)), of_pages, wording.name]
    if words.code:
        identity.insert(1, wording.code(words.code))
    identity += context.state_notes()
    _draw_items(canvas, identity, blocks[0], _draw_code_title(canvas, words.title, blocks[0], top))
    _draw_items(canvas, context.control_items(), blocks[1], top)
    canvas.text(
        wording.fixed("local-policy"),
        Lettering(TypeRole.LOCAL_POLICY, canvas.face(600), 9.5, floor=7.5),
        TextPlace(blocks[2].x, top, blocks[2].width, height=canvas.height - MARGIN - top),
        message="interface/local-policy",
    )
    ruler(canvas, context, blocks[3].x, top + 2.4, "below", width=blocks[3].width)


def _draw_code_title(canvas: Canvas, title: str, block: Block, top: float) -> float:
    """The title on one line, so that a torn foot still says what it was; left out where it is too long."""
    face = canvas.face(700)
    fitted = fit(title, face, 9.5, _LEAST, Room(block.width, lines=1))
    if fitted.excess:
        canvas.fit_steps.append(FitStep(TypeRole.CODE_TITLE, "dropped", 9.5, 0.0))
        return top
    return (
        canvas.text(
            title,
            Lettering(TypeRole.CODE_TITLE, face, 9.5, floor=_LEAST),
            TextPlace(block.x, top, block.width, lines=1),
        )
        + 0.9
    )


def _draw_items(canvas: Canvas, items: list[str], block: Block, top: float) -> None:
    """Items in as few lines as they fit, smaller where the foot is too low for them."""
    face, bottom = canvas.face(is_body=True), canvas.height - MARGIN
    for points in (_CONTROL, _LEAST):
        lines = packed(items, face, points, block.width)
        counts = [len(measure(line, face, points, block.width).lines) for line in lines]
        pitch = points * face.metrics.size_factor * face.metrics.body_leading * MM_PER_POINT
        if top + sum(counts) * pitch <= bottom:
            break
    y = top
    for line, number in zip(lines, counts, strict=True):
        room = max(pitch, bottom - y)
        canvas.text(
            line,
            Lettering(TypeRole.CONTROL, face, points, wanted=_CONTROL),
            TextPlace(block.x, y, block.width, height=room, lines=number),
        )
        y += number * pitch
