"""A piece of wall on which no paper of the ward can hang."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.compose.papers import Paper, paper_of
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule
from signage.model.library import Library, Slot, Ward

SLOT_WITHOUT_PAPER = Rule(
    code="CN-5",
    name="slot-without-paper",
    severity=S2,
    what=(
        "Each wall slot against the papers of library.yaml that a printer of its ward takes: one of them "
        "fits, upright or on its long side."
    ),
    why="The sheet would hang over a window, a switch or another sheet, or hang nowhere.",
    example="A slot of 60 mm by 420 mm, with A4 as the smallest paper.",
    cure="Measure the slot again, choose another wall, or add a smaller paper and a printer that takes it.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each slot that is too small for every paper."""
    for ward in subject.library.wards.values():
        papers = [paper_of(name) for name in _papers(subject.library, ward)]
        for slot in ward.slots:
            if papers and not any(_fits(paper, slot) for paper in papers):
                least = min(papers, key=lambda paper: paper.width * paper.height)
                yield subject.problem(
                    SLOT_WITHOUT_PAPER,
                    f"The slot '{slot.id}' is {slot.width:g} mm by {slot.height:g} mm; the smallest paper "
                    f"for it is {least.name} with {least.width:g} mm by {least.height:g} mm.",
                    slot.at("width"),
                )


def _papers(library: Library, ward: Ward) -> tuple[str, ...]:
    """The papers of the library that the ward can print, or all where none or no printer is known."""
    taken = {paper for printer in ward.printers for paper in printer.papers}
    return tuple(paper for paper in library.papers if paper in taken) or library.papers


def _fits(paper: Paper, slot: Slot) -> bool:
    return any(each.width <= slot.width and each.height <= slot.height for each in (paper, paper.turned()))


RULE = ContentRule(SLOT_WITHOUT_PAPER, find)
