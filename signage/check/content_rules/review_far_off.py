"""A review so far away that nobody will remember it."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S3, Rule

MOST_YEARS = 5
"""Common practice, no source."""

REVIEW_FAR_OFF = Rule(
    code="CN-3",
    name="review-far-off",
    severity=S3,
    what=f"The review dates of protocols: none is more than {MOST_YEARS} years away.",
    why="Recommendations change sooner, and a date that far away is often a slip of the keyboard.",
    example="review-by: 2072-05-31",
    cure="Check the year, and choose a day that somebody who is here today will see.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each protocol whose review is too far away."""
    today = subject.today
    for protocol in subject.library.protocols.values():
        day = protocol.review_by
        if (day.year - MOST_YEARS, day.month, day.day) > (today.year, today.month, today.day):
            yield subject.problem(
                REVIEW_FAR_OFF,
                f"The review of {protocol.code} is due by {day.isoformat()}, more than {MOST_YEARS} years "
                "from today.",
                protocol.at("review_by"),
                protocol=protocol.id,
            )


RULE = ContentRule(REVIEW_FAR_OFF, find)
