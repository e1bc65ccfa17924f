"""A draft that does not say so."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.sheet_kind import Owed
from signage.drawing.marks import Group, Page, TextMark, groups_of, walk
from signage.drawing.roles import GroupRole
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule

DRAFT_MARK_MISSING = Rule(
    code="SH-13",
    name="draft-mark-missing",
    severity=S1,
    what=(
        "A sheet that is not approved, or that is a demonstration, carries the tag that says so on every "
        "page or card; a poster also the ribbon on all four edges, in its language and in the source."
    ),
    why="An unapproved sheet on a wall is followed like any other.",
    example="The ribbon is missing on the lower edge of an Arabic poster.",
    cure="Report it: nothing but a sign-off removes the mark.",
)

_EDGES = ("top", "bottom", "left", "right")


def find(subject: SheetSubject) -> Iterator[Problem]:
    """Problems of tags and ribbons, page by page."""
    if not subject.sheet.has_state:
        return
    for number, page in enumerate(subject.sheet.pages, start=1):
        cards, panels = groups_of(page, GroupRole.CARD), groups_of(page, GroupRole.PANEL)
        tags = len(groups_of(page, GroupRole.DRAFT_TAG))
        wanted = len(panels) - 1 if panels else max(1, len(cards))
        if tags < wanted and Owed.TAG in subject.kind.owes:
            yield subject.problem(
                DRAFT_MARK_MISSING, f"page {number} has {tags} draft tags; {wanted} are wanted"
            )
        if Owed.RIBBON in subject.kind.owes:
            yield from _ribbon(subject, page, number)


def _ribbon(subject: SheetSubject, page: Page, number: int) -> Iterator[Problem]:
    languages = {subject.context.wording.tag, subject.context.source.tag}
    found: dict[str, set[str]] = {edge: set() for edge in _EDGES}
    for mark, _ in page.placed:
        if isinstance(mark, Group) and mark.role is GroupRole.RIBBON:
            found.setdefault(mark.name, set()).update(
                text.language for text, _ in walk(mark.marks) if isinstance(text, TextMark)
            )
    for edge in _EDGES:
        missing = languages - found[edge]
        if missing:
            yield subject.problem(
                DRAFT_MARK_MISSING,
                f"the {edge} edge of page {number} lacks the draft sentence in {', '.join(sorted(missing))}",
            )


RULE = SheetRule(DRAFT_MARK_MISSING, find)
