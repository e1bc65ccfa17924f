"""A sheet that does not say what it is."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
from signage.compose.sheet_kind import ControlText
from signage.drawing.marks import texts_of
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule
from signage.model.mark import Mark

CONTROL_TEXT_MISSING = Rule(
    code="SH-14",
    name="control-text-missing",
    severity=S1,
    what=(
        "Every page, card and folded sheet carries protocol code, revision code, language name, owner "
        "role, review date and the local-policy caution; where it is signed, by whom and when."
    ),
    why="A sheet without them can be neither checked, recalled nor reviewed.",
    example="A step card without its revision code.",
    cure="Report it: the layout is at fault, not the content.",
)

_ISOLATES = dict.fromkeys(map(ord, "\u2066\u2067\u2068\u2069\u00a0\u202f"), " ")


def _flat(text: str) -> str:
    return " ".join(text.translate(_ISOLATES).split())


def find(subject: SheetSubject) -> Iterator[Problem]:
    """One problem for each page and each thing that it does not say."""
    context = subject.context
    wording = context.wording
    owners, review_by = context.owners, wording.date(context.review_by)
    if subject.sheet.mark == Mark.PROOF:  # where their sentence is a gap, it is named in their place
        owners = tuple(wording.fixed("owner", role=owner) for owner in owners)
        review_by = wording.fixed("review-by", date=review_by)
    said_of = {
        ControlText.PROTOCOL: tuple(protocol.code for protocol in context.protocols),
        ControlText.REVISION: (context.revision,),
        ControlText.LANGUAGE: (wording.name,),
        ControlText.OWNER: owners,
        ControlText.REVIEW: (review_by,),
        ControlText.POLICY: (wording.fixed("local-policy"),),
        ControlText.SIGNED: () if context.is_draft else context.state_notes(),
    }
    wanted = [
        (what, words) for what in ControlText if what in subject.kind.control for words in said_of[what]
    ]
    for number, page in enumerate(subject.sheet.pages, start=1):
        said = _flat(" ".join(mark.text for mark, _ in texts_of(page)))
        for what, words in wanted:
            if _flat(words) not in said:
                yield subject.problem(
                    CONTROL_TEXT_MISSING, f"page {number} does not say {what} ('{_flat(words)}')"
                )


RULE = SheetRule(CONTROL_TEXT_MISSING, find)
