"""``signage rehearse PROTOCOL``: a protocol is walked step by step before it is printed."""

from __future__ import annotations

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
from signage.cli.report import print_json, status_of


@typer_application.command()
def rehearse(
    protocol: Annotated[str, typer.Argument(help="The id or code of a protocol, such as P1.")],
    steps: Annotated[bool, typer.Option("--steps", help="Also print the state after each step.")] = False,
    repairs: Annotated[
        bool, typer.Option("--repairs", help="Also suggest single edits; none is applied.")
    ] = False,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
) -> int:
    """Walk a protocol against the declared facts of kit, ward and policy."""
    from signage.cli.choice import chosen
    from signage.cli.rehearsal_report import print_report
    from signage.ground.day import today
    from signage.project import open_project

    project = open_project(content, locales)
    (name,) = chosen(project, [protocol], None, None, None, "colour").protocols
    walked = project.library.protocols[name]
    report = project.report(walked, today())
    if form is Format.JSON:
        print_json(report.as_json())
    else:
        print_report(project.library, report, with_steps=steps, with_repairs=repairs)
    return status_of(report.problems)
