"""Why a kind of sheet that somebody wants is not made at all: no paper, no language, nothing to be about."""

from __future__ import annotations

from typing import Any

from signage.compose.sheet_kind import SheetKind
from signage.produce.requests import Wanted, requests_for
from signage.project import Project

_NO_LANGUAGE = (
    "No language is in use, so there is nothing to draw. Set the state of a finished language to "
    "in-use in library.yaml, or name one with --locale."
)


def reasons_for_nothing(project: Project, wanted: Wanted) -> tuple[str, ...]:
    """A sentence with its cure for each kind that is wanted and gets no sheet; empty where all get one.

    A kind counts as wanted where it was named, or where neither kind nor paper was: then the papers of
    library.yaml are to carry all kinds. Where nothing at all is made, every kind is told.
    """
    if not (wanted.locales or project.locales_in_use):
        return (_NO_LANGUAGE,)
    made = {request.kind for request in requests_for(project, wanted)}
    if made and wanted.papers and not wanted.kinds:
        return ()
    return tuple(
        _reason(project, wanted, kind) for kind in project.kinds.wanted(wanted.kinds) if kind.name not in made
    )


def _reason(project: Project, wanted: Wanted, kind: SheetKind[Any]) -> str:
    library = project.library
    if kind.papers.chosen(wanted.papers, library.papers, is_named=bool(wanted.kinds)):
        return f"{kind.title} are made one for each {kind.per}, and there is none."
    papers = wanted.papers or library.papers
    named = ", ".join(papers)
    source = f"--paper {named}" if wanted.papers else f"the papers of library.yaml ({named})"
    return kind.why_no_paper(papers, source)
