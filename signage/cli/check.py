"""``signage check``: every rule over content, words and composed sheets."""

from __future__ import annotations

import sys

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
from signage.cli.report import print_problems, status_of


@typer_application.command()
def check(
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Look at everything and print nothing on paper; exit 1 when something must be mended."""
    from signage.examine import check_project
    from signage.ground.day import today
    from signage.project import open_project

    project = open_project(content, locales)
    progress = None
    if form is Format.TEXT and not quiet and sys.stderr.isatty():
        from rich.progress import track

        progress = track
    problems, looked_at = check_project(project, today(), progress)
    print_problems(problems, is_json=form is Format.JSON)
    if form is Format.TEXT and not quiet:
        if not problems:
            seen = f"{looked_at.messages} texts, {looked_at.pictures} pictures, {looked_at.locales} languages"
            print(f"Nothing wrong in {seen}, {looked_at.sheets} sheets.")
        print("No finding does not mean safe: the model sees no real hands. Local policy decides.")
    return status_of(problems)
