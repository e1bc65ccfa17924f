"""A character that no font of the project can draw."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.part_names import missing_glyph_message
from signage.drawing.marks import TextMark, texts_of
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule
from signage.text.paragraph import shape_paragraph

MISSING_GLYPH = Rule(
    code="SH-2",
    name="missing-glyph",
    severity=S1,
    what="Every character of every text, after shaping.",
    why="A character without a glyph prints as an empty box, and the reader loses a word.",
    example="'☐' (U+2610) in a headline: no font of the list has it.",
    cure="Use another character, or add a font that has it to content/fonts.",
)


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each character and text."""
    seen: set[tuple[str, int, int]] = set()
    for page in subject.sheet.pages:
        for mark, _box in texts_of(page):
            yield from _missing_in(subject, mark, seen)


def _missing_in(subject: SheetSubject, mark: TextMark, seen: set[tuple[str, int, int]]) -> Iterator[Problem]:
    fonts = subject.context.wording.fonts
    for missing in shape_paragraph(mark.text, mark.language, mark.weight, fonts).missing:
        key = (mark.text, missing.code_point, mark.weight)
        if key in seen:
            continue
        seen.add(key)
        text = mark.message or subject.context.wording.context_of(mark.text, subject.sheet.protocol)
        yield subject.text_problem(
            MISSING_GLYPH, missing_glyph_message(missing.character, mark.role, mark.text), text
        )


RULE = SheetRule(MISSING_GLYPH, find)
