"""What makes a proof of a composed sheet: edges that say so, faults outlined, no code that leads anywhere."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from signage.compose.canvas import Canvas
from signage.compose.context import LocaleContext
from signage.compose.parts import draft_ribbon
from signage.compose.theme import style_of
from signage.drawing.marks import Group, Mark, Page, PathMark, Sheet, Structure, TextMark, walk
from signage.drawing.roles import GroupRole
from signage.ground.geometry import Affine, Box, rectangle
from signage.model.choices import PhaseTheme
from signage.words.wording import Wording

_INK = "#000000"
_AIR = 0.7
_TEXT_LINE, _STEP_LINE = 0.5, 0.9
_RIBBON_POINTS = 7.0
_DASH = (1.6, 1.0)


@dataclass(frozen=True)
class Faulty:
    """What a proof outlines: texts by their contexts and steps by their ids."""

    texts: frozenset[str] = frozenset()
    steps: frozenset[str] = frozenset()


def as_proof(sheet: Sheet, context: LocaleContext, faulty: Faulty) -> Sheet:
    """The sheet with the proof sentence on the four edges of every page, faults outlined and codes gone.

    ``context`` speaks for the edges: its mark is a proof's.
    """
    pages = tuple(_proof_page(page, context, faulty, sheet.protocol) for page in sheet.pages)
    return replace(sheet, pages=pages, file_stem=f"{sheet.file_stem}-proof")


def _proof_page(page: Page, context: LocaleContext, faulty: Faulty, protocol: str) -> Page:
    marks = tuple(_without_code(mark) for mark in page.marks)
    canvas = Canvas(page.width, page.height, context, style_of(PhaseTheme.PLAIN), 1.0, page.margin)
    has_ribbon = any(
        isinstance(mark, Group) and mark.role is GroupRole.RIBBON for mark, _ in walk(page.marks)
    )
    if not has_ribbon:
        draft_ribbon(canvas, context, _RIBBON_POINTS)
    with canvas.group(GroupRole.FAULTS, structure=Structure.ARTEFACT):
        for mark in _outlines(page, faulty, context.wording, protocol):
            canvas.add(mark)
    return replace(page, marks=(*marks, *canvas.marks))


def _without_code(mark: Mark) -> Mark:
    """A dashed box where a code stood, so that the layout stays and nothing can be scanned."""
    if not isinstance(mark, Group):
        return mark
    if mark.role is GroupRole.QR and mark.box is not None:
        frame = PathMark(rectangle(mark.box), None, _INK, _TEXT_LINE, _DASH)
        return replace(
            mark, role=GroupRole.NO_CODE, name="", marks=(frame,), structure=Structure.ARTEFACT, facts=()
        )
    return replace(mark, marks=tuple(_without_code(each) for each in mark.marks))


def _outlines(page: Page, faulty: Faulty, wording: Wording, protocol: str) -> Iterator[PathMark]:
    for mark, transform in walk(page.marks):
        if isinstance(mark, TextMark):
            message = mark.message or wording.context_of(mark.text, protocol)
            if message in faulty.texts:
                yield _frame(transform, mark.box, _TEXT_LINE)
        elif (
            isinstance(mark, Group) and mark.role is GroupRole.STEP and mark.name in faulty.steps and mark.box
        ):
            yield _frame(transform @ mark.transform, mark.box, _STEP_LINE)


def _frame(transform: Affine, box: Box, width: float) -> PathMark:
    on_page = transform.box(box)
    air = Box(on_page.x - _AIR, on_page.y - _AIR, on_page.width + 2 * _AIR, on_page.height + 2 * _AIR)
    return PathMark(rectangle(air), None, _INK, width, _DASH if width == _TEXT_LINE else ())
