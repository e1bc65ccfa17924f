"""A sheet that does not say what it is."""

from collections.abc import Iterator

from signage.check.rule import SheetRule, SheetSubject
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
        "role, review date and the local-policy caution."
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
    wording, protocol = context.wording, context.protocol
    owner, review_by = wording.content(f"{protocol.id}/owner"), wording.date(protocol.review_by)
    if subject.sheet.mark == Mark.PROOF:  # where their sentence is a gap, it is named in their place
        owner, review_by = wording.fixed("owner", role=owner), wording.fixed("review-by", date=review_by)
    wanted = {
        "the protocol code": protocol.code,
        "the revision code": context.revision,
        "the name of its language": wording.name,
        "the role of its owner": owner,
        "the review date": review_by,
        "the local-policy caution": wording.fixed("local-policy"),
    }
    for number, page in enumerate(subject.sheet.pages, start=1):
        said = _flat(" ".join(mark.text for mark, _ in texts_of(page)))
        for what, words in wanted.items():
            if _flat(words) not in said:
                yield subject.problem(
                    CONTROL_TEXT_MISSING, f"page {number} does not say {what} ('{_flat(words)}')"
                )


RULE = SheetRule(CONTROL_TEXT_MISSING, find)
