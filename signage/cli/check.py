"""``signage check``: every rule over content, words and composed sheets."""

from __future__ import annotations

from typing import Annotated

import typer

from signage.cli.application import (
    CONTENT,
    LOCALES,
    ContentOption,
    Format,
    FormatOption,
    FreshOption,
    LocalesOption,
    QuietOption,
    typer_application,
)
from signage.cli.kept import kept_of_user
from signage.cli.report import print_json, print_problems, problems_json, progress_bar, say, status_of
from signage.ground.counting import counted


@typer_application.command()
def check(
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    every: Annotated[
        bool, typer.Option("--all", help="Tell each finding on a line of its own, however many there are.")
    ] = False,
    fresh: FreshOption = False,
    quiet: QuietOption = False,
) -> int:
    """Look at everything and print nothing on paper; exit 1 when something must be mended."""
    from signage.ground.day import today
    from signage.produce.check import check_project
    from signage.produce.kept import KeptResults
    from signage.project import open_project

    project = open_project(content, locales, kept_of_user(is_fresh=fresh))
    bar = progress_bar(is_wanted=form is Format.TEXT and not quiet, description="Looking")
    results = KeptResults(project)
    problems, looked_at = check_project(project, today(), bar, results)
    results.kept.trim()
    if form is Format.JSON:
        print_json(problems_json(problems))
        return status_of(problems)
    print_problems(problems, is_whole=every)
    if not quiet:
        if not problems:
            seen = (
                counted(looked_at.messages, "text"),
                counted(looked_at.pictures, "picture"),
                counted(looked_at.locales, "language"),
                counted(looked_at.sheets, "sheet"),
            )
            say(f"Nothing wrong in {', '.join(seen)}.")
        if looked_at.anew < looked_at.sheets:
            say(f"{looked_at.anew} of {looked_at.sheets} sheets looked at anew, the others are as they were.")
        say("No finding does not mean safe: the model sees no real hands. Local policy decides.")
    return status_of(problems)
