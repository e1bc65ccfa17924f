"""A paper that no printer takes, and a ward that can print none of the papers."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

UNPRINTABLE_PAPER = Rule(
    code="CN-6",
    name="unprintable-paper",
    severity=S2,
    what=(
        "The papers of library.yaml against the printers of the wards: each paper has a printer in one of "
        "them, and each ward with printers can print one of the papers."
    ),
    why="Sheets that nobody can print at full size are printed smaller, and then not read on the wall.",
    example="papers: [A1] in a hospital whose printers take A4 only.",
    cure="Delete the paper, or name a printer that takes it; a print shop counts as a printer.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each paper without a printer, and for each ward without a paper."""
    library = subject.library
    printers = {ward.id: ward.printers for ward in library.wards.values() if ward.printers}
    if not printers:
        return
    taken = {paper for each in printers.values() for printer in each for paper in printer.papers}
    shown = ", ".join(sorted(taken))
    for paper in library.papers:
        if paper not in taken:
            yield subject.problem(
                UNPRINTABLE_PAPER,
                f"No printer of any ward takes {paper}; the printers take {shown}.",
                library.at("papers"),
            )
    for name, each in printers.items():
        own = sorted({paper for printer in each for paper in printer.papers})
        if not set(own) & set(library.papers) and set(library.papers) & taken:
            yield subject.problem(
                UNPRINTABLE_PAPER,
                f"The printers of '{name}' take {', '.join(own)}, which is none of the papers of "
                f"library.yaml ({', '.join(library.papers)}).",
                each[0].at("papers"),
                hint="Add the paper to 'papers' in library.yaml, or name a printer that takes one of them.",
            )


RULE = ContentRule(UNPRINTABLE_PAPER, find)
