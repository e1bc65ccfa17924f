"""Two things of a ward with the same letter on their labels."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule
from signage.model.library import Fixture

REPEATED_LABEL_CODE = Rule(
    code="CN-1",
    name="repeated-label-code",
    severity=S2,
    what="The codes on the labels of bins, tubs and other fixtures: each stands once in a ward.",
    why="A sheet says 'bin A', and whoever stands before the other one puts clean and dirty things together.",
    example="bin-a in the anteroom and bin-b in the room, both with 'code: A'.",
    cure="Give one of the two another code, on its label too.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each fixture whose code another one of its ward had before."""
    for ward in subject.library.wards.values():
        first: dict[str, Fixture] = {}
        for fixture in ward.fixtures.values():
            if fixture.code is None:
                continue
            earlier = first.setdefault(fixture.code, fixture)
            if earlier is not fixture:
                yield subject.problem(
                    REPEATED_LABEL_CODE,
                    f"'{fixture.id}' has the code '{fixture.code}', which '{earlier.id}' "
                    f"({earlier.at('code')}) has too.",
                    fixture.at("code"),
                )


RULE = ContentRule(REPEATED_LABEL_CODE, find)
