"""The open-question form of a comprehension trial: pictures without words, questions, empty lines."""

from __future__ import annotations

from signage.compose.canvas import Canvas
from signage.compose.envelope import finished_sheet
from signage.compose.lettering import Anchor, Lettering, TextPlace
from signage.compose.papers import Paper
from signage.compose.pictures.context import PictureContext
from signage.compose.pictures.page import (
    BAND,
    FOOT,
    MARGIN,
    PageCount,
    PageWords,
    draw_band,
    draw_foot,
    picture_canvas,
)
from signage.compose.pictures.trial_guide import PageRange, draw_guide
from signage.compose.pictures.trial_key import KeyPages, plan_key
from signage.compose.theme import Tone, style_of
from signage.compose.typesetting import line_width
from signage.drawing.marks import Sheet, Structure
from signage.drawing.roles import GroupRole, TypeRole
from signage.model.choices import PhaseTheme
from signage.model.picture_trial import trial_forms
from signage.pictograms.palette import MONO, Palette

PICTURE = 30.0
"""Side of a picture on the form in millimetres."""

_COLUMNS = 2
_GUTTER = 5.0
_NUMBER = 8.0
_FIELDS = 9.0
_WELCOME = 9.6
_LABEL = 2.4
_LINE = 6.5
_QUESTION = 17.4
"""Heights: of a question, from it to its first line and on to the second, from one question to the next."""

_LEAST_PITCH = 35.4


def compose_trial(context: PictureContext, paper: Paper, seed: int) -> Sheet:
    """Guide, form A, form B and key in one document; the key stands on pages of its own at the end."""
    forms = trial_forms(context.pictures, seed)
    parts = {form: _parts(names, paper) for form, names in forms.items()}
    key = plan_key(context, forms, paper)
    ranges: dict[str, PageRange] = {}
    first = 2
    for form, pages in parts.items():
        ranges[form] = PageRange(first, first + len(pages) - 1)
        first += len(pages)
    ranges["key"] = PageRange(first, first + len(key.pages) - 1)
    total = ranges["key"].last
    stem = f"picture-trial-{seed}"
    file = f"{context.file_start}{stem}-{context.wording.tag}-{paper.name.lower()}.csv"
    canvases = [draw_guide(context, paper, ranges, file, total)]
    for form, pages in parts.items():
        for number, part in enumerate(pages):
            count = PageCount(ranges[form].first + number, total)
            canvases.append(_form_page(context, paper, form, seed, part, count))
    canvases += _key_pages(key, ranges["key"], total)
    title = context.wording.fixed("trial-title")
    return finished_sheet(
        context, "picture-trial", title, canvases, protocol=context.protocol, paper=paper.name, stem=stem
    )


def _key_pages(key: KeyPages, where: PageRange, total: int) -> list[Canvas]:
    return [key.draw(number, PageCount(where.first + number, total)) for number in range(len(key.pages))]


def _top() -> float:
    return MARGIN + BAND + _FIELDS + _WELCOME


def _rows(paper: Paper) -> int:
    return int((paper.height - MARGIN - FOOT - _top()) / _LEAST_PITCH)


def _parts(names: tuple[str, ...], paper: Paper) -> list[list[tuple[int, str]]]:
    """The numbered pictures of each page."""
    per_page = _rows(paper) * _COLUMNS
    numbered = list(enumerate(names, start=1))
    return [numbered[start : start + per_page] for start in range(0, len(numbered), per_page)]


def _form_page(
    context: PictureContext,
    paper: Paper,
    form: str,
    seed: int,
    numbered: list[tuple[int, str]],
    count: PageCount,
) -> Canvas:
    wording = context.wording
    canvas = picture_canvas(context, paper)
    words = PageWords(
        wording.fixed("trial-title"), wording.fixed("trial-form", form=wording.code(form)), f"{form}-{seed}"
    )
    draw_band(canvas, context, words)
    _draw_fields(canvas, context)
    canvas.text(
        wording.fixed("trial-welcome"),
        Lettering(TypeRole.NOTE, canvas.face(600), 9.5, floor=9),
        TextPlace(MARGIN, MARGIN + BAND + _FIELDS + 1.2, paper.width - 2 * MARGIN, height=_WELCOME - 1.6),
        message="interface/trial-welcome",
    )
    pitch = (paper.height - MARGIN - FOOT - _top()) / _rows(paper)
    width = (paper.width - 2 * MARGIN - _GUTTER) / _COLUMNS
    with canvas.group(structure=Structure.LIST):
        for place, (number, name) in enumerate(numbered):
            x = MARGIN + place % _COLUMNS * (width + _GUTTER)
            y = _top() + place // _COLUMNS * pitch
            _draw_question(canvas, context, number, name, x, y, width)
    draw_foot(canvas, context, words, count)
    return canvas


def _draw_fields(canvas: Canvas, context: PictureContext) -> None:
    """Reader number, language and date: the language is known, the others are written by hand."""
    wording, face = context.wording, canvas.face(400)
    baseline = MARGIN + BAND + _FIELDS - 1.6
    shares = ((0.0, 0.42, "trial-reader"), (0.66, 0.34, "trial-date"))
    whole = canvas.width - 2 * MARGIN
    for start, share, label in shares:
        x, width = MARGIN + start * whole, share * whole
        text = wording.fixed(label)
        room = line_width(text, face, 9.5) + 0.4
        canvas.text(
            text,
            Lettering(TypeRole.FIELD, face, 9.5),
            TextPlace(x, baseline, room, lines=1, anchor=Anchor.BOTTOM),
        )
        with canvas.artefact():
            canvas.line(x + room + 1.5, baseline, x + width - 3, baseline, None, 0.3, has_butt_caps=True)
    canvas.text(
        wording.name,
        Lettering(TypeRole.FIELD, canvas.face(600), 9.5),
        TextPlace(MARGIN + 0.44 * whole, baseline, 0.2 * whole, lines=1, anchor=Anchor.BOTTOM),
    )


def _draw_question(
    canvas: Canvas, context: PictureContext, number: int, name: str, x: float, y: float, width: float
) -> None:
    """Number, picture, two questions with two lines each; nothing tells what the picture is called."""
    wording, style = context.wording, canvas.style
    with canvas.group(
        GroupRole.QUESTION,
        str(number),
        structure=Structure.ITEM,
        box=canvas.box(x, y, width, _LABEL + 2 * _LINE + _QUESTION),
        number=number,
    ):
        with canvas.group(structure=Structure.LABEL):
            canvas.ink_line(
                wording.number(number),
                Lettering(TypeRole.QUESTION_NUMBER, canvas.face(700), 13),
                TextPlace(x, y + 3, _NUMBER - 1),
            )
        with canvas.group(structure=Structure.BODY):
            with canvas.artefact():
                canvas.rect(
                    x + _NUMBER, y, PICTURE, PICTURE, None, style.line, style.line_width(0.2), radius=0.8
                )
            alternative = wording.fixed("trial-picture", number=wording.number(number))
            canvas.picture(name, x + _NUMBER, y, PICTURE, alternative, _colours(context, name))
            start = x + _NUMBER + PICTURE + 3
            room = x + width - start
            for index, question in enumerate((_first_question(context, name), "trial-must")):
                _draw_lines(canvas, wording.fixed(question), start, y + index * _QUESTION, room)


def _first_question(context: PictureContext, name: str) -> str:
    """Pictures of things, which speak to anyone, show nobody who does something."""
    return "trial-thing" if context.picture_set.scene(name).gloss.who == "anyone" else "trial-doing"


def _draw_lines(canvas: Canvas, question: str, x: float, y: float, width: float) -> None:
    face = canvas.face(400)
    canvas.text(
        question, Lettering(TypeRole.QUESTION, face, 8.5, floor=7), TextPlace(x, y - 0.4, width, lines=1)
    )
    with canvas.artefact():
        for line in (1, 2):
            level = y + _LABEL + line * _LINE
            canvas.line(x, level, x + width, level, canvas.style.ink_2, 0.25, has_butt_caps=True)


def _colours(context: PictureContext, name: str) -> Palette:
    """A trial on a copier shows the pictures as the copier will."""
    theme = context.picture_set.scene(name).theme
    return MONO if context.tone is Tone.MONO else style_of(PhaseTheme(theme), context.tone).palette
