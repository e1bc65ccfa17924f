"""``signage audit round``, ``result``, ``due``: every mounted copy is looked at, and dates are kept."""

from __future__ import annotations

import json
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
)
from signage.cli.audit_application import audit_application
from signage.cli.kept import kept_of_user
from signage.cli.register_report import nothing_told, tell_problems
from signage.cli.report import print_json, say
from signage.ground.counting import counted
from signage.ground.errors import WrongUsageError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from signage.control.audit import AuditRound, Overdue
    from signage.control.due_dates import Due
    from signage.control.register.store import Register, Report
    from signage.model.copies import CopyState
    from signage.project import Project

AsOption = Annotated[str, typer.Option("--as", help="The id of the role that went round, of people.yaml.")]


def register_of(content: Path) -> Register:
    """The register of a library; raises WrongUsageError where nothing was ever numbered."""
    from signage.control.register.store import find_register, register_path

    register = find_register(register_path(content))
    if register is None:
        raise WrongUsageError(nothing_told(0))
    return register


def library_in(content: Path, locales: Path, locale: str) -> tuple[Project, str]:
    """The library, and the language of a form: that of its authors where none is named."""
    from signage.cli.choice import must_exist
    from signage.project import open_project

    project = open_project(content, locales, kept_of_user(is_fresh=False))
    tag = locale or project.library.source_locale
    must_exist([tag], project.library.locales, "locale")
    return project, tag


@audit_application.command(name="round")
def print_round(
    locale: Annotated[str, typer.Option(help="The language of the form; else that of the authors.")] = "",
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    output: OutputOption = OUTPUT,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Print the form of an audit round: every mounted copy in walking order, with a table to fill in."""
    from signage.control.audit import blank_rows
    from signage.control.recall import place_in, walking_order
    from signage.control.register.export import as_csv
    from signage.ground.day import today
    from signage.ground.files import write_whole
    from signage.produce.current_sheets import ReleasedSheets
    from signage.produce.kept import KeptResults
    from signage.produce.release import Releases
    from signage.produce.ward_forms import FORMS_FOLDER, FormMaker

    project, tag = library_in(content, locales, locale)
    order = walking_order(project.library)
    with register_of(content) as register:
        out = [state for state in register.states() if state.is_out]
    states = sorted(out, key=lambda state: place_in(order, state))
    if not states:
        raise WrongUsageError("No copy is mounted or handed out, so there is nothing to go round for.")
    current = ReleasedSheets(project, Releases(project, today(), KeptResults(project)))
    printed = FormMaker(project, tag, today()).audit_form(states, current, output)
    wanted = {(state.copy.subject, state.copy.locale) for state in states} & set(current)
    codes = {key: current[key].code for key in wanted}
    table = output / FORMS_FOLDER / "audit.csv"
    write_whole(table, as_csv(blank_rows(states, codes)).encode())
    if form is Format.JSON:
        print_json({"form": printed.as_posix(), "table": table.as_posix(), "copies": len(states)})
    elif not quiet:
        say(f"{counted(len(states), 'copy', 'copies')} to look at. Print: {printed}")
        say(f"Fill in {table} with yes and no, then 'signage audit result {table} --as ROLE'.")
        say("A sheet without a number: leave the number empty, write into 'where' and 'remark'.")
    return 0


@audit_application.command()
def result(
    file: Annotated[Path, typer.Argument(help="The filled table of an audit round (CSV).")],
    as_role: AsOption = "",
    day: Annotated[str, typer.Option("--day", help="The day of the round; else today.")] = "",
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Read a filled round into the register, tell its score beside those before; exit 1 for faults."""
    from signage.control.audit import AUDIT_COLUMNS, events_of, read_round
    from signage.control.duties import acting_role
    from signage.ground.day import today
    from signage.ground.problem import with_problems
    from signage.project import open_project
    from signage.trials.ward_table import read_day, read_ward_table, typed

    library = open_project(content, locales, kept_of_user(is_fresh=False)).library
    role = acting_role(library.people, as_role, "audit", lambda each: each.audits)
    rows = read_ward_table(file, AUDIT_COLUMNS)
    with register_of(content) as register, register.changing():
        on, of_day = with_problems(read_day(typed(day=day), "day", today()))
        audit, of_rows = with_problems(read_round(rows, register.states(), on))
        problems = (*of_day, *of_rows)
        before = register.reports("audit")
        if not problems:
            register.add_events(tuple(events_of(audit, role.id)))
            told = json.dumps(audit.as_json(), ensure_ascii=False, sort_keys=True)
            register.add_report("audit", "", on, role.id, told)
    if problems:
        tell_problems(problems, form)
        return 1
    if form is Format.JSON:
        print_json({**audit.as_json(), "before": [json.loads(each.content) for each in before]})
    else:
        _tell_round(audit, before, quiet=quiet)
    is_all_right = audit.score in {None, 1.0} and not audit.strangers
    return int(not is_all_right)


def _tell_round(audit: AuditRound, before: Sequence[Report], *, quiet: bool) -> None:
    ok = sum(each.is_ok for each in audit.looked)
    if audit.score is not None:
        say(f"{ok} of {len(audit.expected)} copies are all right ({audit.score:.0%}).")
    for each in audit.looked:
        if not each.is_ok:
            told = f": {each.remark}" if each.remark else ""
            say(f"  {each.number} not {', not '.join(each.failed)}{told}")
    if audit.not_looked_at:
        say(f"Not looked at: {', '.join(audit.not_looked_at)}")
    for stranger in audit.strangers:
        what = stranger.number or "a sheet without a number"
        where = f" at {stranger.where}" if stranger.where else ""
        told = f": {stranger.remark}" if stranger.remark else ""
        say(f"Should not hang there: {what}{where}{told}. Take it down.")
    if before and not quiet:
        scores = [json.loads(each.content) for each in before[-5:]]
        told = ", ".join(f"{each['day']} {_percent(each['score'])}" for each in scores)
        say(f"Rounds before: {told}")


@audit_application.command()
def rounds(
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,  # noqa: ARG001 - every command takes the folders
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Every audit round so far: day, score, and which checks failed how often."""
    with register_of(content) as register:
        reports = register.reports("audit")
    told = [{**json.loads(each.content), "by": each.by_role} for each in reports]
    if form is Format.JSON:
        print_json({"rounds": told})
        return 0
    if not told and not quiet:
        say("No audit round was entered yet: 'signage audit round' prints its form.")
    for each in told:
        failures = [f"{number} not {check}" for check, number in each["failures"].items()]
        if each["strangers"]:
            failures.append(f"{counted(len(each['strangers']), 'sheet')} that should not hang there")
        say(f"{each['day']} {_percent(each['score'])} of {each['expected']} {', '.join(failures)}".rstrip())
    return 0


def _percent(score: float | None) -> str:
    return "–" if score is None else f"{score:.0%}"


@audit_application.command()
def due(
    calendar: Annotated[
        Path | None, typer.Option(help="Also write all dates as an iCalendar file, such as dates.ics.")
    ] = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """What is due when, and which copies nobody has looked at for too long; exit 1 when anything is."""
    from signage.control.audit import overdue
    from signage.control.due_dates import calendar_of, due_dates
    from signage.control.register.store import find_register, register_path
    from signage.ground.day import today
    from signage.ground.files import write_whole
    from signage.project import open_project

    library = open_project(content, locales, kept_of_user(is_fresh=False)).library
    states: Sequence[CopyState] = ()
    if (register := find_register(register_path(content))) is not None:
        with register:
            states = register.states()
    dates = due_dates(library, states)
    late = overdue(library, states, today())
    past = [each for each in dates if each.on < today()]
    if calendar is not None:
        write_whole(calendar, calendar_of(library, dates, today()))
    if form is Format.JSON:
        print_json(_due_json(dates, late, calendar))
    else:
        _tell_due(dates, late, {each.id for each in past}, calendar, quiet=quiet)
    return int(bool(late or past))


def _due_json(dates: Sequence[Due], late: Sequence[Overdue], calendar: Path | None) -> dict[str, Any]:
    return {
        "due": [{"day": each.on.isoformat(), "what": each.what} for each in dates],
        "overdue": [
            {"number": each.state.copy.number, "where": str(each.state.spot), "due": each.due.isoformat()}
            for each in late
        ],
        "calendar": calendar.as_posix() if calendar else None,
    }


def _tell_due(
    dates: Sequence[Due], late: Sequence[Overdue], past: set[str], calendar: Path | None, *, quiet: bool
) -> None:
    for each in dates:
        if each.id in past:
            say(f"Overdue since {each.on.isoformat()}: {each.what}")
        elif not quiet:
            say(f"{each.on.isoformat()}: {each.what}")
    for copy in late:
        say(f"Not looked at since {copy.due.isoformat()}: {copy.state.copy.number} at {copy.state.spot}")
    if calendar is not None and not quiet:
        say(f"Wrote {counted(len(dates), 'date')} to {calendar}.")
