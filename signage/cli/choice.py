"""What a person asked for, checked against what exists."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence

from signage.compose.papers import paper_names, paper_of
from signage.compose.theme import Tone
from signage.ground.errors import WrongUsageError
from signage.model.library import Library
from signage.produce.requests import Wanted
from signage.project import Project
from signage.words.standin import STAND_INS


def chosen(
    project: Project,
    protocols: Sequence[str] | None,
    locales: Sequence[str] | None,
    kinds: Sequence[str] | None,
    papers: Sequence[str] | None,
    tone: str,
    seed: int = 1,
    *,
    is_for_proof: bool = False,
) -> Wanted:
    """The request in the library's own names; raises WrongUsageError that says what exists."""
    library = project.library
    names = [protocol_named(library, name) for name in protocols or ()]
    must_exist(locales or (), (*library.locales, *STAND_INS), "locale")
    must_exist(kinds or (), project.kinds.names, "kind of sheet")
    known_papers = {name.lower(): name for name in paper_names()}
    chosen_papers = [known_papers.get(paper.lower(), paper) for paper in papers or ()]
    must_exist(chosen_papers, paper_names(), "paper")
    must_exist([tone], [each.value for each in Tone], "tone")
    return Wanted(
        tuple(names),
        tuple(locales or ()),
        tuple(kinds or ()),
        tuple(paper_of(paper).name for paper in chosen_papers),
        Tone(tone),
        seed,
        is_for_proof,
    )


def protocol_named(library: Library, name: str) -> str:
    """The id of the protocol with an id or a code; raises WrongUsageError that says which there are."""
    by_code = {protocol.code.lower(): protocol_id for protocol_id, protocol in library.protocols.items()}
    found = by_code.get(name.lower(), name)
    must_exist([found], library.protocols, "protocol")
    return found


def must_exist(names: Iterable[str], known: Iterable[str], what: str) -> None:
    """Raises WrongUsageError for the first name that is not known, with the nearest one and all of them."""
    existing = list(known)
    for name in names:
        if name not in existing:
            near = difflib.get_close_matches(name, existing, n=1)
            hint = f" Did you mean {near[0]}?" if near else ""
            raise WrongUsageError(f"There is no {what} '{name}'.{hint} There is: {', '.join(existing)}.")
