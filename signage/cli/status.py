"""``signage status``: where the library stands, and what needs whom. The first command of the day."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Annotated

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
from signage.cli.kept import kept_of_user
from signage.cli.report import print_json, say_error
from signage.ground.errors import WrongUsageError


@typer_application.command()
def status(
    as_role: Annotated[
        str, typer.Option("--as", help="Only what this role of people.yaml has to do next.")
    ] = "",
    html: Annotated[
        Path | None, typer.Option("--html", help="Also write it as one HTML file that prints on A4.")
    ] = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Tell for every protocol and language what is missing, signed, due and mounted, and what needs whom."""
    from signage.cli.choice import must_exist
    from signage.cli.status_report import tell_status
    from signage.control.register.store import find_register, register_path
    from signage.ground.day import today
    from signage.produce.kept import KeptResults
    from signage.produce.status import status_of_library
    from signage.project import open_project

    if html is not None and html.is_dir():
        raise WrongUsageError(f"'{html}' is a folder. Name a file, such as {html / 'status.html'}.")
    project = open_project(content, locales, kept_of_user(is_fresh=False))
    if as_role:
        must_exist([as_role], project.library.people, "role")
    register = find_register(register_path(content))
    states = register.states() if register is not None else None
    found = status_of_library(project, today(), KeptResults(project), states)
    if as_role:
        mine = tuple(task for task in found.tasks if as_role in task.role.split(" or "))
        found = replace(found, tasks=mine)
    if html is not None:
        from signage.ground.files import write_whole
        from signage.pages.status_page import status_page

        write_whole(html, status_page(found, project.library.source_locale).encode())
        say_error(f"Wrote {html}: it opens in any browser and prints on A4.")
    if form is Format.JSON:
        print_json(found.as_json())
    else:
        tell_status(found, quiet=quiet)
    return 0
