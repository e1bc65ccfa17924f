"""A headline with more words than are read in passing."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule
from signage.text.breaks import word_count

MOST_WORDS = 12

LONG_HEADLINE = Rule(
    code="CN-4",
    name="long-headline",
    severity=S2,
    what=f"The headline of each step in the source language: at most {MOST_WORDS} words.",
    why="Whoever takes off kit reads one line between two movements; what is longer is skipped.",
    example="Take off both of the outer gloves slowly and carefully without touching their outside",
    cure="Say the one action in the headline, and move the rest into 'detail'.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each headline that is too long."""
    for protocol in subject.library.protocols.values():
        for step in protocol.steps:
            words = word_count(step.text, subject.library.source_locale)
            if words > MOST_WORDS:
                yield subject.problem(
                    LONG_HEADLINE,
                    f"The headline of step '{step.id}' has {words} words; at most {MOST_WORDS} are wanted.",
                    step.at("text"),
                    protocol=protocol.id,
                    step=step.id,
                )


RULE = ContentRule(LONG_HEADLINE, find)
