"""Small sheets for the tests of the painters, set with the text engine."""

from __future__ import annotations

from pathlib import Path

import yaml
from text_samples import shape_paragraph

from signage.drawing.marks import (
    Dots,
    Form,
    FormMark,
    Group,
    Mark,
    Page,
    PathMark,
    PlacedLine,
    Sheet,
    Structure,
    TextMark,
)
from signage.drawing.roles import TypeRole
from signage.ground.geometry import Box, circle, polygon, rectangle, scaling, translation
from signage.ground.length import POINTS_PER_MM

SENTENCES: dict[str, str] = yaml.safe_load(
    (Path(__file__).with_name("samples.yaml")).read_text(encoding="utf-8"),
)

LEFT_TO_RIGHT = ("en", "hi", "bn", "ta", "th", "km", "my", "am", "si", "ml")
RIGHT_TO_LEFT = ("ar", "he", "fa", "ur")

DOT_SCREEN = Dots(radius=1.05, pitch_x=3.6, pitch_y=3.1, colour="#000000")


def text_mark(
    text: str,
    language: str,
    x: float = 20.0,
    y: float = 30.0,
    size: float = 6.0,
    width: float = 170.0,
    weight: int = 400,
    colour: str = "#000000",
    rotation: float = 0.0,
) -> TextMark:
    """A paragraph at the start edge of a column that begins at x; y is the first baseline."""
    paragraph = shape_paragraph(text, language, weight)
    lines = []
    for row, line in enumerate(paragraph.lines(width / size)):
        left = x + width - line.width * size if paragraph.is_right_to_left else x
        baseline = y + row * 1.5 * size
        lines.append(PlacedLine(line.runs, left - line.lead * size, baseline, line.start, line.end))
    points = size * POINTS_PER_MM
    return TextMark(
        text=text,
        language=language,
        is_right_to_left=paragraph.is_right_to_left,
        lines=tuple(lines),
        size=size,
        colour=colour,
        role=TypeRole.DETAIL,
        weight=weight,
        points=points,
        wanted_points=points,
        box=Box(x, y - size, width, size * 1.5 * len(lines)),
        rotation=rotation,
        pivot=(x, y),
    )


def sheet_of(*marks: Mark, language: str = "en", title: str = "Sample", pages: int = 1) -> Sheet:
    """An A4 sheet of these marks."""
    return Sheet(
        kind="sample",
        protocol="sample",
        locale=language,
        title=title,
        paper="A4",
        revision="2345",
        is_right_to_left=language in RIGHT_TO_LEFT,
        pages=tuple(Page(210.0, 297.0, marks) for _ in range(pages)),
        file_stem="sample",
    )


def disc_form(key: str = "disc") -> Form:
    """A disc with a dotted heart and a bar from left top to right bottom, 96 units a side."""
    return Form(
        key,
        96.0,
        (
            PathMark(circle(48, 48, 44), fill="#0A4A7E"),
            PathMark(circle(48, 48, 32), fill=DOT_SCREEN),
            PathMark(polygon([(24, 24), (72, 72)], closed=False), stroke="#C00000", width=6),
        ),
    )


def figure(
    x: float, y: float, side: float, alternative: str | None = "A disc", form: Form | None = None
) -> Group:
    """A form placed as a figure."""
    drawing = form or disc_form()
    place = translation(x, y) @ scaling(side / drawing.size)
    return Group(
        (FormMark(drawing, place),),
        structure=Structure.FIGURE,
        alternative=alternative,
        box=Box(x, y, side, side),
    )


def step_list(language: str, count: int = 3, top: float = 80.0) -> Group:
    """A numbered list: label, and a body with a picture, a headline and a detail."""
    items = []
    for number in range(1, count + 1):
        y = top + 30.0 * number
        label = text_mark(str(number), language, 20, y, 8, 12, 700)
        headline = text_mark(SENTENCES[language], language, 62, y, 4.5, 130, 600)
        detail = text_mark(SENTENCES[language], language, 62, y + 14, 3.5, 130)
        body = Group((figure(36, y - 10, 22), headline, detail), structure=Structure.BODY)
        labelled = Group((label,), structure=Structure.LABEL)
        items.append(Group((labelled, body), structure=Structure.ITEM))
    return Group(tuple(items), structure=Structure.LIST)


def poster(language: str = "en", pages: int = 1) -> Sheet:
    """A sheet with all that painters know: heading, list, figures, turned text, artefacts, dots, clip."""
    sentence = SENTENCES[language]
    heading = Group((text_mark(sentence, language, 20, 20, 5, weight=700),), structure=Structure.HEADING_1)
    ribbon = Group((text_mark(SENTENCES["en"], "en", 8, 60, 3, rotation=90),), structure=Structure.ARTEFACT)
    frame = PathMark(rectangle(Box(10, 10, 190, 277), 3), stroke="#0A4A7E", width=1.8)
    swatch = Group(
        (PathMark(rectangle(Box(0, 0, 40, 20)), fill=DOT_SCREEN),),
        transform=translation(150, 40),
        clip=circle(10, 10, 10),
    )
    loose = text_mark(SENTENCES["en"], "en", 20, 260, 3)
    marks = (heading, frame, ribbon, swatch, step_list(language), loose)
    return sheet_of(*marks, language=language, title=sentence, pages=pages)
