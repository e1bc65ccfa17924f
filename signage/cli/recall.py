"""``signage recall PROTOCOL``: bring back the copies of sheets that are no longer in force."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from signage.cli.application import (
    CONTENT,
    LOCALES,
    OUTPUT,
    ContentOption,
    Format,
    FormatOption,
    LocalesOption,
    OutputOption,
    QuietOption,
    typer_application,
)
from signage.cli.report import print_json, say
from signage.ground.counting import counted
from signage.ground.errors import WrongUsageError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from signage.model.copies import CopyState
    from signage.produce.recalling import Recall


@typer_application.command()
def recall(
    protocol: Annotated[str, typer.Argument(help="The protocol (id or code).")],
    close: Annotated[
        bool, typer.Option("--close", help="End it, if every copy is accounted for and the pages are new.")
    ] = False,
    as_role: Annotated[str, typer.Option("--as", help="The id of the role that closes it.")] = "",
    locale: Annotated[str, typer.Option(help="The language of the list; else that of the authors.")] = "",
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    output: OutputOption = OUTPUT,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """List mounted copies that are obsolete in walking order, print what is needed, set old prints aside."""
    from signage.cli.choice import must_exist, protocol_named
    from signage.cli.kept import kept_of_user
    from signage.cli.register_report import nothing_told
    from signage.control.duties import acting_role
    from signage.control.register.store import find_register, register_path
    from signage.ground.day import today
    from signage.produce.current_sheets import ReleasedSheets, refuse_damaged
    from signage.produce.kept import KeptResults
    from signage.produce.recalling import close as close_recall
    from signage.produce.recalling import open_points, recall_of, recall_papers, set_aside
    from signage.produce.release import Releases
    from signage.produce.ward_forms import FormMaker
    from signage.project import open_project

    project = open_project(content, locales, kept_of_user(is_fresh=False))
    library = project.library
    meant = library.protocols[protocol_named(library, protocol)]
    tag = locale or library.source_locale
    must_exist([tag], library.locales, "locale")
    role = (
        acting_role(library.people, as_role, "close a recall", lambda each: each.mounts or each.audits)
        if close
        else None
    )
    register = find_register(register_path(content))
    if register is None:
        raise WrongUsageError(f"{nothing_told(0)} So there is nothing to recall.")
    refuse_damaged(project)
    current = ReleasedSheets(project, Releases(project, today(), KeptResults(project)))
    papers: Sequence[Path] = ()
    moved: Sequence[str] = ()
    with register:
        found = recall_of(project, register, current, meant)
        if not close:
            papers = recall_papers(FormMaker(project, tag, today()), found, current, output)
            moved = set_aside(project, output, meant, current)
        points = open_points(project, output, found, current)
        is_closed = role is not None and not points and bool(found.outcome.done)
        if role is not None and is_closed:
            close_recall(register, found, role.id, today())
    if form is Format.JSON:
        print_json(_as_json(found, papers, moved, points, is_closed=is_closed))
    elif close:
        _tell_closing(found, points, is_closed=is_closed)
    elif not quiet:
        _tell(found, papers, moved, points)
    return int(bool(points) if close else bool(found.recalled))


def _as_json(
    found: Recall, papers: Sequence[Path], moved: Sequence[str], points: Sequence[str], *, is_closed: bool
) -> dict[str, Any]:
    outcome = found.outcome
    return {
        "protocol": found.protocol.code,
        "copies": [
            {**_copy_json(each.state), "cause": each.cause.value, "replaceable": each.has_successor}
            for each in found.recalled
        ],
        "unused": [_copy_json(state) for state in found.unused],
        "done": [_copy_json(state) for state in outcome.done],
        "share": round(outcome.share, 4),
        "oldest": outcome.oldest.isoformat() if outcome.oldest else None,
        "papers": [path.as_posix() for path in papers],
        "superseded": list(moved),
        "open": list(points),
        "closed": is_closed,
    }


def _copy_json(state: CopyState) -> dict[str, str | None]:
    copy = state.copy
    return {
        "number": copy.number,
        "sheet": copy.sheet,
        "locale": copy.locale,
        "revision": copy.code,
        "state": state.state,
        "ward": state.spot.ward or None,
        "slot": state.spot.slot or None,
        "learner": state.spot.learner or None,
        "since": state.last.on.isoformat() if state.last else None,
    }


def _tell(found: Recall, papers: Sequence[Path], moved: Sequence[str], points: Sequence[str]) -> None:
    code = found.protocol.code
    if not found.recalled:
        say(f"No mounted copy of {code} is obsolete.")
    else:
        say(f"{counted(len(found.recalled), 'copy', 'copies')} of {code} must come down, in this order:")
        for each in found.recalled:
            copy = each.state.copy
            rest = "" if each.has_successor else "; hang the notice there" if each.state.spot.slot else ""
            say(f"  {copy.number}  {each.state.spot}  {copy.sheet}, {copy.locale}: {each.cause.value}{rest}")
    if found.unused:
        numbers = ", ".join(state.copy.number for state in found.unused)
        say(f"Printed and never mounted, to be destroyed: {numbers}")
    for path in papers:
        say(f"Print: {path}")
    for name in moved:
        say(f"Set aside as superseded: {name}")
    _tell_progress(found)
    for point in points:
        say(f"Before it can be closed: {point}")
    if not points and found.outcome.done:
        say(f"It can be closed: 'signage recall {code} --close --as ROLE'.")


def _tell_closing(found: Recall, points: Sequence[str], *, is_closed: bool) -> None:
    _tell_progress(found)
    for point in points:
        say(f"Not closed. {point}")
    if is_closed:
        for state in found.outcome.done:
            last = state.last
            told = f"{last.on.isoformat()} by {last.by_role}" if last else ""
            say(f"  {state.copy.number} {state.state} {told}{f': {last.note}' if last and last.note else ''}")
        say(f"The recall of {found.protocol.code} is closed.")
    elif not points:
        say(f"There is no recall of {found.protocol.code} to close.")


def _tell_progress(found: Recall) -> None:
    outcome = found.outcome
    total = len(outcome.open) + len(outcome.done)
    if total:
        oldest = f"; the oldest hangs since {outcome.oldest.isoformat()}" if outcome.oldest else ""
        say(f"{len(outcome.done)} of {total} accounted for ({outcome.share:.0%}){oldest}.")
