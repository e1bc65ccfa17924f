"""``signage register …``: which printed copies there are, where they hang, and what became of them."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from signage.cli.application import (
    CONTENT,
    LOCALES,
    ContentOption,
    Format,
    FormatOption,
    LocalesOption,
    QuietOption,
    typer_application,
)
from signage.cli.register_report import (
    nothing_told,
    tell_changes,
    tell_copies,
    tell_history,
    tell_problems,
)
from signage.cli.report import print_json, say, say_error
from signage.ground.counting import counted
from signage.ground.errors import WrongUsageError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from signage.control.register.store import NewEvent
    from signage.ground.problem import Problem
    from signage.model.copies import CopyState, Event
    from signage.trials.ward_table import Columns, Filled

register_application = typer.Typer(
    help="Record where printed copies hang and what became of them.",
    no_args_is_help=True,
    rich_markup_mode=None,
)
typer_application.add_typer(register_application, name="register")

AsOption = Annotated[str, typer.Option("--as", help="The id of the role that did it, of people.yaml.")]
DayOption = Annotated[str, typer.Option("--day", help="The day it was done, such as 2026-11-26; else today.")]
NoteOption = Annotated[str, typer.Option(help="A short note; no names.")]
FromOption = Annotated[
    Path | None, typer.Option("--from", help="Many at once: a table (CSV), its columns named like options.")
]


@register_application.callback()
def _root() -> None:
    """Record where printed copies hang and what became of them."""


@register_application.command()
def mount(
    number: Annotated[str, typer.Argument(help="The number on the copy, such as LB-0017-K.")] = "",
    slot: Annotated[str, typer.Option(help="The wall slot of the ward file, such as s1.")] = "",
    learner: Annotated[str, typer.Option(help="The learner who was given it, by number, such as L07.")] = "",
    as_role: AsOption = "",
    day: DayOption = "",
    note: NoteOption = "",
    table: FromOption = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """A copy hangs in a wall slot now, or a learner has it; only released sheets may."""
    from signage.control.register.changes import MOUNT_COLUMNS

    rows = _rows(table, MOUNT_COLUMNS, number=number, slot=slot, learner=learner, day=day, note=note)
    return _change("mount", rows, as_role, content, locales, form, quiet=quiet)


@register_application.command()
def remove(
    number: Annotated[str, typer.Argument(help="The number on the copy.")] = "",
    destroyed: Annotated[bool, typer.Option("--destroyed", help="It was destroyed as well.")] = False,
    as_role: AsOption = "",
    day: DayOption = "",
    note: NoteOption = "",
    table: FromOption = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """A copy was taken down or handed back, or destroyed."""
    from signage.control.register.changes import REMOVE_COLUMNS

    is_destroyed = "yes" if destroyed else ""
    rows = _rows(table, REMOVE_COLUMNS, number=number, destroyed=is_destroyed, day=day, note=note)
    return _change("remove", rows, as_role, content, locales, form, quiet=quiet)


@register_application.command()
def replace(
    number: Annotated[str, typer.Argument(help="The number on the copy that was taken down.")] = "",
    by: Annotated[str, typer.Option(help="The number on the copy that hangs in its place.")] = "",
    as_role: AsOption = "",
    day: DayOption = "",
    note: NoteOption = "",
    table: FromOption = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """A copy was taken down and another one hangs in its place."""
    from signage.control.register.changes import REPLACE_COLUMNS

    rows = _rows(table, REPLACE_COLUMNS, number=number, by=by, day=day, note=note)
    return _change("replace", rows, as_role, content, locales, form, quiet=quiet)


@register_application.command()
def lost(
    number: Annotated[str, typer.Argument(help="The number on the copy.")] = "",
    note: Annotated[str, typer.Option(help="Where it was looked for; no names. Needed.")] = "",
    as_role: AsOption = "",
    day: DayOption = "",
    table: FromOption = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """A copy cannot be found; the note says where it was looked for."""
    from signage.control.register.changes import LOST_COLUMNS

    rows = _rows(table, LOST_COLUMNS, number=number, note=note, day=day)
    return _change("lost", rows, as_role, content, locales, form, quiet=quiet)


@register_application.command(name="list")
def list_copies(
    protocol: Annotated[str, typer.Option(help="Only copies of this protocol (id or code).")] = "",
    locale: Annotated[str, typer.Option(help="Only copies in this locale.")] = "",
    state: Annotated[str, typer.Option(help="Only copies in this state, such as mounted.")] = "",
    number: Annotated[str, typer.Option(help="One copy, with all that happened to it.")] = "",
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """The copies of this library and their states."""
    from signage.control.register.store import find_register, register_path

    states: Sequence[CopyState] = ()
    events: Sequence[Event] = ()
    if (register := find_register(register_path(content))) is not None:
        with register:
            states, events = register.states(), register.events()
    if number:
        return tell_history(states, events, number, form)
    subject = _subject(protocol, states, content, locales) if protocol else ""
    shown = [
        each
        for each in states
        if subject in {"", each.copy.subject}
        and locale in {"", each.copy.locale}
        and state in {"", each.state}
    ]
    tell_copies(shown, len(states), form, quiet=quiet)
    return 0


@register_application.command()
def export(
    file: Annotated[Path, typer.Argument(help="The table to write (CSV).")],
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,  # noqa: ARG001 - every command takes the folders
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Write the whole history as a table: a row for every print and for everything that happened."""
    from signage.control.register.export import history_csv
    from signage.control.register.store import find_register, register_path
    from signage.ground.files import write_whole

    register = find_register(register_path(content))
    if register is None:
        raise WrongUsageError(f"{nothing_told(0)} So there is nothing to export.")
    with register:
        text = history_csv(register.copies(), register.events())
    write_whole(file, text.encode())
    rows = text.count("\n") - 1
    if form is Format.JSON:
        print_json({"path": file.as_posix(), "rows": rows})
    elif not quiet:
        say(f"Wrote {counted(rows, 'row')} to {file}.")
    return 0


def _rows(table: Path | None, columns: Columns, **values: str) -> tuple[Filled, ...]:
    """The rows of a table, or the one that was typed. Raises WrongUsageError for both or neither."""
    from signage.trials.ward_table import read_ward_table, typed

    if table is not None:
        given = [name for name, value in values.items() if value]
        if given:
            raise WrongUsageError(f"With --from, the table says everything; leave {', '.join(given)} away.")
        return read_ward_table(table, columns)
    if not values["number"]:
        needed, optional = ", ".join(columns.needed), ", ".join(columns.optional)
        raise WrongUsageError(
            "Name a copy by its number, such as LB-0017-K, or many with '--from FILE.csv' "
            f"(columns: {needed}; if you like: {optional})."
        )
    return (typed(**values),)


def _change(
    kind: str,
    rows: Sequence[Filled],
    as_role: str,
    content: Path,
    locales: Path,
    form: Format,
    *,
    quiet: bool,
) -> int:
    """Read the state, plan and add in one transaction: nothing comes between, and all or nothing is added."""
    from signage.cli.kept import kept_of_user
    from signage.control.duties import acting_role
    from signage.control.register.changes import begin, plan
    from signage.control.register.network_share import is_on_network_share
    from signage.control.register.store import open_register, register_path
    from signage.ground.day import today
    from signage.ground.problem import with_problems
    from signage.produce.current_sheets import ReleasedSheets, refuse_damaged
    from signage.produce.kept import KeptResults
    from signage.produce.release import Releases
    from signage.project import open_project

    project = open_project(content, locales, kept_of_user(is_fresh=False))
    role = acting_role(project.library.people, as_role, "mount sheets", lambda each: each.mounts)
    current = ReleasedSheets(project, Releases(project, today(), KeptResults(project)))
    path = register_path(content)
    if not path.exists():
        raise WrongUsageError(nothing_told(0))
    if kind in {"mount", "replace"}:
        refuse_damaged(project)
    with open_register(path) as register:

        def planned() -> tuple[tuple[NewEvent, ...], tuple[Problem, ...]]:
            changes = begin(project.library, current, register.states(), role.id, today())
            return with_problems(plan(kind, rows, changes))

        planned()  # looks at the sheets that are meant, which takes a while, before others have to wait
        with register.changing():
            events, problems = planned()
            if not problems:
                register.add_events(events)
    if is_on_network_share(path) and form is Format.TEXT:
        say_error(f"'{path}' lies on a network share, where locks may fail: let one machine write at a time.")
    if problems:
        tell_problems(problems, form)
        return 1
    tell_changes(events, form, quiet=quiet)
    return 0


def _subject(wanted: str, states: Sequence[CopyState], content: Path, locales: Path) -> str:
    """The id of the protocol that is meant; one that the library has no more may still have copies."""
    from signage.cli.choice import protocol_named
    from signage.project import open_project

    if wanted in {state.copy.subject for state in states}:
        return wanted
    return protocol_named(open_project(content, locales).library, wanted)
