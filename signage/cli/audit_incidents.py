"""``signage audit slip`` and ``incident``: whether a sheet was part of the cause."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Annotated

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
from signage.cli.audit_rounds import AsOption, library_in, register_of
from signage.cli.kept import kept_of_user
from signage.cli.register_report import tell_problems
from signage.cli.report import print_json, say
from signage.ground.counting import counted


@audit_application.command()
def slip(
    locale: Annotated[str, typer.Option(help="The language of the slip; else that of the authors.")] = "",
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    output: OutputOption = OUTPUT,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Print an incident slip, which asks about the sheet only, and the table to type slips into."""
    from signage.control.incidents import INCIDENT_COLUMNS
    from signage.control.register.export import as_csv
    from signage.ground.day import today
    from signage.ground.files import write_whole
    from signage.produce.ward_forms import FORMS_FOLDER, FormMaker

    project, tag = library_in(content, locales, locale)
    printed = FormMaker(project, tag, today()).incident_slip(output)
    table = output / FORMS_FOLDER / "incidents.csv"
    if not table.exists():
        write_whole(table, as_csv([INCIDENT_COLUMNS.known]).encode())
    if form is Format.JSON:
        print_json({"form": printed.as_posix(), "table": table.as_posix()})
    elif not quiet:
        say(f"Print: {printed}")
        say(f"Type filled slips into {table}, then 'signage audit incident {table} --as ROLE'.")
    return 0


@audit_application.command()
def incident(
    file: Annotated[Path, typer.Argument(help="The table of filled slips (CSV); no names, no health data.")],
    as_role: AsOption = "",
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Read filled slips into the register; exit 1 when a sheet was, or may have been, part of a cause."""
    from signage.control.duties import acting_role
    from signage.control.incidents import INCIDENT_COLUMNS, read_incidents
    from signage.ground.day import today
    from signage.ground.problem import with_problems
    from signage.project import open_project
    from signage.trials.ward_table import read_ward_table

    library = open_project(content, locales, kept_of_user(is_fresh=False)).library
    role = acting_role(library.people, as_role, "record incidents", lambda each: each.audits or each.signs)
    rows = read_ward_table(file, INCIDENT_COLUMNS)
    with register_of(content) as register, register.changing():
        states = register.states()
        found, problems = with_problems(read_incidents(rows, library, states, today()))
        known = {report.content for report in register.reports("incident")}
        fresh = []
        for each in found:
            told = json.dumps(each.as_json(), ensure_ascii=False, sort_keys=True)
            if not problems and told not in known:
                known.add(told)
                register.add_report("incident", each.subject, each.on, role.id, told)
                fresh.append(each)
    if problems:
        tell_problems(problems, form)
        return 1
    grave = [each for each in found if each.part != "no"]
    if form is Format.JSON:
        print_json({"incidents": [each.as_json() for each in found], "added": len(fresh)})
    elif not quiet:
        say(f"{counted(len(fresh), 'slip')} added, {len(found) - len(fresh)} known before.")
        for each in grave:
            fixed = f" (mended in {each.fixed})" if each.fixed else ""
            what = each.mend or "nothing is said of what to mend"
            say(f"  {each.number}, step {each.step}: part of the cause {each.part}; {what}{fixed}")
    return int(any(not each.fixed for each in grave))
