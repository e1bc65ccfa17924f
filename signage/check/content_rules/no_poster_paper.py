"""A library none of whose papers is large enough for a poster."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.compose.papers import SMALLEST_POSTER_MM, paper_of
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

NO_POSTER_PAPER = Rule(
    code="CN-11",
    name="no-poster-paper",
    severity=S2,
    what=f"The papers of library.yaml: one of them is at least {SMALLEST_POSTER_MM:g} mm wide.",
    why="Without one, 'signage draw' makes no poster at all.",
    example="papers: [A5]",
    cure="Add A4, Letter or a larger paper.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem where every paper is too small."""
    papers = subject.library.papers
    if all(paper_of(paper).short_side < SMALLEST_POSTER_MM for paper in papers):
        yield subject.problem(
            NO_POSTER_PAPER,
            f"Of {', '.join(papers)} none is large enough for a poster.",
            subject.library.at("papers"),
        )


RULE = ContentRule(NO_POSTER_PAPER, find)
