"""A sign-off that was made and does not count."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

UNCOUNTED_SIGN_OFF = Rule(
    code="CN-13",
    name="uncounted-sign-off",
    severity=S2,
    what="The last sign-off of a protocol, or of its words in a language, where it does not count.",
    why="Somebody believes that a sheet is released, and it prints as a draft.",
    example="A sign-off without the signature that the policy wants, or one made in a demonstration.",
    cure="Let a role that may sign it sign again: 'signage approve PROTOCOL --as ROLE'.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each."""
    for each in subject.sign_offs.uncounted:
        yield subject.problem(UNCOUNTED_SIGN_OFF, each.message, each.place)


RULE = ContentRule(UNCOUNTED_SIGN_OFF, find)
