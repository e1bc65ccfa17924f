"""Texts in too many lines, or with a lone last word."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.part_names import part_name
from signage.drawing.marks import TextMark, texts_of
from signage.drawing.roles import TypeRole
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule

POOR_LINE_BREAKS = Rule(
    code="SH-9",
    name="poor-line-breaks",
    severity=S3,
    what=(
        "Headlines have at most two lines, details and cautions three, strips two; no word is broken; a last "
        "line has two words or 40 % of the longest."
    ),
    why="A lone word at the end is overlooked, a broken word misread.",
    example="A detail ends with the single word goggles on its third line.",
    cure="Reword the text so that it breaks better.",
)

_MOST_LINES = {
    TypeRole.HEADLINE: 2,
    TypeRole.DETAIL: 3,
    TypeRole.STRIP: 2,
    TypeRole.STRIP_DETAIL: 3,
    TypeRole.STRIP_CAUTION: 3,
    TypeRole.ROW: 2,
    TypeRole.WHY: 2,
    TypeRole.CAUTION: 3,
}
_WATCHED = frozenset(
    {
        TypeRole.HEADLINE,
        TypeRole.DETAIL,
        TypeRole.STRIP,
        TypeRole.STRIP_DETAIL,
        TypeRole.STRIP_CAUTION,
        TypeRole.KEY_RULE,
        TypeRole.NOTE,
        TypeRole.CAUTION,
        TypeRole.WHY,
    }
)


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each text."""
    seen: set[str] = set()
    for page in subject.sheet.pages:
        for mark, _box in texts_of(page, lambda text: text.role in _WATCHED):
            fault = _fault(mark)
            if fault and fault not in seen:
                seen.add(fault)
                parts = (mark.message or "").split("/")
                yield subject.problem(POOR_LINE_BREAKS, fault, parts[1] if len(parts) == 3 else None)


def _fault(mark: TextMark) -> str:
    lines = len(mark.lines)
    most = _MOST_LINES.get(mark.role, 6)
    if lines > most:
        return f"{part_name(mark.role)} '{mark.text}' has {lines} lines; {most} are wanted"
    widths = [sum(run.advance for run in line.runs) for line in mark.lines]
    last = mark.text[mark.lines[-1].start : mark.lines[-1].end].split()
    if lines > 1 and len(last) < 2 and widths[-1] < 0.4 * max(widths):
        return f"{part_name(mark.role)} '{mark.text}' ends with the lone word '{' '.join(last)}'"
    return ""


RULE = SheetRule(POOR_LINE_BREAKS, find)
