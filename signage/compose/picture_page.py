"""The pages of sheets about pictures: margins, head band, foot."""

from __future__ import annotations

from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.footer import footer_blocks
from signage.compose.papers import Paper
from signage.compose.parts import draft_ribbon, draft_tag, packed, ruler
from signage.compose.picture_context import PictureContext
from signage.compose.theme import style_of
from signage.compose.typesetting import measure
from signage.drawing.marks import Page, Sheet, Structure

MARGIN = 12.0
BAND = 13.0
FOOT = 21.0
"""Heights in millimetres of the head band, and of the foot with the gap above it."""

_FOOT_GAP = 2.0
_CONTROL = 7.5


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
    style = style_of("plain", context.tone)
    canvas = Canvas(paper.width, paper.height, context.wording, style, 0.85, MARGIN)
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
            words.title, MARGIN + 4, room, middle, 21, "title", face, floor=13, colour=colour, height=8.5
        )
        if words.ending:
            canvas.ink_line(
                words.ending, end - ending, ending, middle, 15, "title", face, colour=colour, align="end"
            )
    return MARGIN + BAND


def draw_foot(canvas: Canvas, context: PictureContext, words: PageWords, count: PageCount) -> None:
    """A rule, then title and revision, duties, local-policy caution, ruler."""
    top = canvas.height - MARGIN - FOOT + _FOOT_GAP
    blocks = footer_blocks(MARGIN, canvas.width - 2 * MARGIN, None)
    canvas.line(MARGIN, top, canvas.width - MARGIN, top, None, 0.4, has_butt_caps=True)
    top += 2.4
    y = canvas.text(
        words.title, blocks[0].x, top, blocks[0].width, 9.5, "code-title", canvas.face(700), floor=7, lines=2
    )
    wording = context.wording
    items = [wording.fixed("revision", code=wording.code(context.revision))]
    if words.code:
        items.append(wording.code(words.code))
    items.append(wording.fixed("page-of", page=wording.number(count.page), pages=wording.number(count.pages)))
    items.append(wording.name)
    if context.is_draft and not context.is_source_language:
        items.append(wording.fixed("translation-unverified"))
    _lines(canvas, items, blocks[0].x, y + 0.4, blocks[0].width)
    _lines(canvas, context.control_items(), blocks[1].x, top, blocks[1].width)
    canvas.text(
        wording.fixed("local-policy"),
        blocks[2].x,
        top,
        blocks[2].width,
        9.5,
        "local-policy",
        canvas.face(600),
        floor=7.5,
        height=canvas.height - MARGIN - top,
        message="interface/local-policy",
    )
    ruler(canvas, context, blocks[3].x, top + 2.4, "below", width=blocks[3].width)


def _lines(canvas: Canvas, items: list[str], x: float, y: float, width: float) -> None:
    """Items in as few lines as they fit; long ones wrap."""
    face = canvas.face(is_body=True)
    for line in packed(items, face, _CONTROL, width):
        y = canvas.text(line, x, y, width, _CONTROL, "control", face, floor=7, lines=2) + 0.3


def picture_document(
    context: PictureContext, kind: str, title: str, paper: Paper, canvases: list[Canvas], stem: str = ""
) -> Sheet:
    """The finished pages as one document; ``stem`` is the kind in the name of the file."""
    wording = context.wording
    pages: list[Page] = [canvas.page() for canvas in canvases]
    return Sheet(
        kind=kind,
        protocol=context.protocol.id if context.protocol else "",
        locale=wording.tag,
        title=title,
        paper=paper.name,
        revision=context.revision,
        is_right_to_left=wording.is_right_to_left,
        pages=tuple(pages),
        file_stem=f"{context.file_start}{stem or kind}-{wording.tag}",
        is_draft=context.is_draft,
        fit=tuple(dict.fromkeys(step for canvas in canvases for step in canvas.fit_steps)),
        overflows=tuple(dict.fromkeys(overflow for canvas in canvases for overflow in canvas.overflows)),
    )
