"""A protocol whose day of review has passed."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

REVIEW_OVERDUE = Rule(
    code="CN-2",
    name="review-overdue",
    severity=S2,
    what="The review dates of protocols, on the day of the check; the last day itself is still in time.",
    why="A sheet that nobody has looked at in time may tell what is no longer held to be safe.",
    example="review-by: 2020-06-30",
    cure="Review the protocol, then write the day of the next review into 'review-by'.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each protocol that is late."""
    for protocol in subject.library.protocols.values():
        late = (subject.today - protocol.review_by).days
        if late > 0:
            since = "yesterday" if late == 1 else f"{late} days ago"
            yield subject.problem(
                REVIEW_OVERDUE,
                f"The review of {protocol.code} was due by {protocol.review_by.isoformat()}, {since}.",
                protocol.at("review_by"),
                protocol=protocol.id,
            )


RULE = ContentRule(REVIEW_OVERDUE, find)
