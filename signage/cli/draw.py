"""``signage draw``: posters, step cards and pocket checklists as PDF."""

from __future__ import annotations

import time
from typing import Annotated

import typer

from signage.cli.application import (
    CONTENT,
    LOCALES,
    OUTPUT,
    ContentOption,
    Format,
    FormatOption,
    FreshOption,
    LocalesOption,
    OutputOption,
    QuietOption,
    typer_application,
)
from signage.cli.kept import kept_of_user
from signage.cli.report import progress_bar
from signage.cli.sheet_help import SheetCommand


@typer_application.command(cls=SheetCommand)
def draw(
    protocol: Annotated[list[str] | None, typer.Option(help="Only this protocol (id or code).")] = None,
    locale: Annotated[list[str] | None, typer.Option(help="Only this locale, such as ar.")] = None,
    sheet: Annotated[list[str] | None, typer.Option(help="Only this kind of sheet.")] = None,
    paper: Annotated[
        list[str] | None, typer.Option(help="A1 to A4, Letter or Tabloid, with -landscape; A6 for cards.")
    ] = None,
    tone: Annotated[str, typer.Option(help="colour, mono (for photocopiers) or contrast.")] = "colour",
    seed: Annotated[
        int, typer.Option(min=0, max=999_999, help="Decides the orders of the pictures of a picture-trial.")
    ] = 1,
    png: Annotated[bool, typer.Option("--png", help="Also pictures of the pages.")] = False,
    resolution: Annotated[int, typer.Option(min=36, max=600, help="Dots per inch of the pictures.")] = 110,
    proof: Annotated[
        bool,
        typer.Option(
            "--proof",
            help="What is refused for its faults comes as a proof: faults outlined, no code, not to be "
            "posted. Also for languages in work.",
        ),
    ] = False,
    copies: Annotated[
        int,
        typer.Option(
            min=0,
            max=200,
            help="Number so many copies of each released sheet, in one file, and enter them in the register.",
        ),
    ] = 0,
    keep: Annotated[
        bool, typer.Option("--keep", help="Name outdated files of earlier runs, but remove none.")
    ] = False,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    output: OutputOption = OUTPUT,
    form: FormatOption = Format.TEXT,
    fresh: FreshOption = False,
    quiet: QuietOption = False,
) -> int:
    """Draw sheets; without options, every sheet of the library in every language in use."""
    from signage.cli.choice import chosen
    from signage.cli.draw_report import report_drawn
    from signage.control.register.store import open_register, register_path
    from signage.ground.day import today
    from signage.produce.copies import numbered_jobs
    from signage.produce.draw import Drawn, draw_all, jobs_for
    from signage.produce.drawn_files import clear_outdated
    from signage.produce.kept import KeptResults
    from signage.produce.release import Releases
    from signage.produce.requests import requests_for
    from signage.project import open_project

    started = time.monotonic()
    project = open_project(content, locales, kept_of_user(is_fresh=fresh))
    wanted = chosen(project, protocol, locale, sheet, paper, tone, seed, is_for_proof=proof)
    results = KeptResults(project)
    releases = Releases(project, today(), results)
    jobs = jobs_for(
        releases, requests_for(project, wanted), wants_proof=proof, dots_per_inch=resolution if png else 0
    )
    if copies:
        with open_register(register_path(content)) as register:
            jobs = numbered_jobs(results, jobs, copies, register, today())
    outcomes = draw_all(project, jobs, output, results)
    bar = progress_bar(is_wanted=form is Format.TEXT and not quiet, description="Drawing")
    made = list(bar(outcomes, total=len(jobs)) if bar else outcomes)
    results.kept.trim()
    drawn = [each for each in made if isinstance(each, Drawn)]
    cleared = clear_outdated(output, wanted, drawn, project.kinds, keeps=keep)
    seconds = round(time.monotonic() - started, 2)
    return report_drawn(project, wanted, made, cleared, output, form, seconds, is_quiet=quiet, copies=copies)
