"""A file of sign-offs of which nothing counts."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule

DAMAGED_SIGN_OFFS = Rule(
    code="CN-12",
    name="damaged-sign-offs",
    severity=S1,
    what=(
        "Whether content/approvals.jsonl is whole: every record as it was written, each after the one "
        "before, and the last one that was seen still there."
    ),
    why="A file that was edited or cut may have lost a withdrawal, so nothing of it counts.",
    example="The end of the file is gone after an older copy was restored.",
    cure="Restore the file from a copy that is whole; 'signage approvals confirm' takes its end as it is.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem at the first bad record."""
    fault = subject.sign_offs.fault
    if fault is not None:
        yield subject.problem(DAMAGED_SIGN_OFFS, fault.message, fault.place, hint=fault.hint)


RULE = ContentRule(DAMAGED_SIGN_OFFS, find)
