"""Why a kind of sheet that somebody wants is not made at all: no paper, no language."""

from __future__ import annotations

from signage.compose.papers import PAPERS, SMALLEST_POSTER_MM, paper_of
from signage.produce.requests import CARD_PAPERS, SHEET_KINDS, Wanted, requests_for
from signage.project import Project

_ON_CUT_PAPERS = " or ".join(CARD_PAPERS)
_NAMES = {"poster": "Posters", "step-cards": "Step cards", "pocket-checklist": "Pocket checklists"}

_NO_LANGUAGE = (
    "No language is in use, so there is nothing to draw. Set the state of a finished language to "
    "in-use in library.yaml, or name one with --locale."
)


def reasons_for_nothing(project: Project, wanted: Wanted) -> tuple[str, ...]:
    """A sentence with its cure for each kind that is wanted and gets no sheet; empty where all get one.

    A kind counts as wanted where it was named, or where neither kind nor paper was: then the papers of
    library.yaml are to carry all kinds. Where nothing at all is made, every kind is told.
    """
    requests = requests_for(project, wanted)
    if not (wanted.locales or project.locales_in_use):
        return (_NO_LANGUAGE,)
    made = {request.kind for request in requests}
    expected = wanted.kinds or SHEET_KINDS
    if made and wanted.papers and not wanted.kinds:
        return ()
    return tuple(_reason(project, wanted, kind) for kind in expected if kind not in made)


def _reason(project: Project, wanted: Wanted, kind: str) -> str:
    papers = wanted.papers or project.library.papers
    named = ", ".join(papers)
    asked = f"--paper {named}" if wanted.papers else f"the papers of library.yaml ({named})"
    name = _NAMES.get(kind, kind)
    if kind == "poster":
        small = [paper for paper in papers if paper_of(paper).short_side < SMALLEST_POSTER_MM]
        large = [
            paper.name
            for paper in PAPERS.values()
            if paper.short_side >= SMALLEST_POSTER_MM and not paper.is_landscape
        ]
        return (
            f"No poster is made of {asked}: {', '.join(small)} is too small to be read on a wall. "
            f"Use one of {', '.join(large)}, or ask for it all the same with '--sheet poster'."
        )
    if kind == "step-cards":
        return (
            f"{name} are made on A6 (one card), {_ON_CUT_PAPERS} (four to cut), not with {asked}. "
            f"Leave --paper away, or name one of them."
        )
    return (
        f"{name} are folded from {_ON_CUT_PAPERS}, not with {asked}. Leave --paper away, or name one of them."
    )
