"""``signage rehearse PROTOCOL``: a protocol is walked step by step before it is printed."""

from __future__ import annotations

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
    typer_application,
)
from signage.cli.kept import kept_of_user
from signage.cli.report import print_json, say_error, status_of
from signage.ground.errors import WrongUsageError


@typer_application.command()
def rehearse(
    protocol: Annotated[str, typer.Argument(help="The id or code of a protocol, such as P1.")],
    steps: Annotated[bool, typer.Option("--steps", help="Also print the state after each step.")] = False,
    repairs: Annotated[
        bool, typer.Option("--repairs", help="Also suggest single edits; none is applied.")
    ] = False,
    stress: Annotated[
        bool,
        typer.Option(
            "--stress",
            help="Instead rehearse every single drop, move, exchange and repetition of a step, and list what "
            "passes clean.",
        ),
    ] = False,
    why: Annotated[
        str | None,
        typer.Option("--why", metavar="STEP", help="Instead tell what would become wrong without this step."),
    ] = None,
    html: Annotated[
        Path | None,
        typer.Option("--html", help="Also write the report with a body map of each step, as one HTML file."),
    ] = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
) -> int:
    """Walk a protocol against the declared facts of kit, ward and policy."""
    from signage.cli.choice import chosen, must_exist
    from signage.cli.other_orders import tell_stress, tell_why
    from signage.cli.rehearsal_report import print_report
    from signage.ground.day import today
    from signage.project import open_project

    if html is not None and html.is_dir():
        raise WrongUsageError(f"'{html}' is a folder. Name a file, such as {html / 'rehearsal.html'}.")
    if sum((stress, why is not None, steps or repairs or html is not None)) > 1:
        raise WrongUsageError("'--stress' and '--why' stand alone: not with each other, nor with a report.")
    project = open_project(content, locales, kept_of_user(is_fresh=False))
    (name,) = chosen(project, [protocol], None, None, None, "colour").protocols
    walked = project.library.protocols[name]
    if stress:
        return tell_stress(project.library, walked, form)
    if why is not None:
        known = {step.id: step for step in walked.steps}
        must_exist([why], known, f"step of {walked.code}")
        return tell_why(project.library, walked, known[why], form)
    report = project.report(walked, today())
    if html is not None:
        from signage.ground.files import write_whole
        from signage.pages.rehearsal.page import rehearsal_page

        page = rehearsal_page(project.library, report, edition=f"Revision {walked.revision}")
        write_whole(html, page.encode())
        say_error(f"Wrote {html}: it opens in any browser and prints on A3.")
    if form is Format.JSON:
        print_json(report.as_json())
    else:
        print_report(project.library, report, with_steps=steps, with_repairs=repairs)
    return status_of(report.problems)
