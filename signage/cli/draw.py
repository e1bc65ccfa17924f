"""``signage draw``: posters, step cards and pocket checklists as PDF."""

from __future__ import annotations

import os
import sys
import time
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

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
from signage.cli.report import print_json

if TYPE_CHECKING:
    from signage.build import Drawn, Refused, Wanted
    from signage.project import Project


@typer_application.command()
def draw(
    protocol: Annotated[list[str] | None, typer.Option(help="Only this protocol (id or code).")] = None,
    locale: Annotated[list[str] | None, typer.Option(help="Only this locale, such as ar.")] = None,
    sheet: Annotated[
        list[str] | None,
        typer.Option(
            help="Only this kind: poster, step-cards or pocket-checklist; made only when asked for: "
            "pictures (all pictures to choose from), picture-trial (a comprehension form)."
        ),
    ] = None,
    paper: Annotated[
        list[str] | None, typer.Option(help="A1 to A4, Letter or Tabloid, with -landscape; A6 for cards.")
    ] = None,
    tone: Annotated[str, typer.Option(help="colour, mono (for photocopiers) or contrast.")] = "colour",
    seed: Annotated[
        int, typer.Option(min=0, max=999_999, help="Decides the orders of the pictures of a picture-trial.")
    ] = 1,
    png: Annotated[bool, typer.Option("--png", help="Also pictures of the pages.")] = False,
    resolution: Annotated[int, typer.Option(min=36, max=600, help="Dots per inch of the pictures.")] = 110,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    output: OutputOption = OUTPUT,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Draw sheets; without options, every sheet of the library in every language in use."""
    from signage.build import draw_all, requests_for
    from signage.check.blockers import reasons_not_to_print
    from signage.cli.choice import chosen
    from signage.project import open_project

    started = time.monotonic()
    project = open_project(content, locales)
    wanted = chosen(project, protocol, locale, sheet, paper, tone, seed)
    requests = requests_for(project, wanted)
    results = draw_all(
        project, requests, output, reasons_not_to_print, resolution if png else 0, workers=os.cpu_count() or 1
    )
    if form is Format.TEXT and not quiet and sys.stderr.isatty():
        from rich.progress import track

        results = iter(track(results, description="Drawing", total=len(requests)))
    made = list(results)
    seconds = round(time.monotonic() - started, 2)
    return _report(project, wanted, made, output, form, quiet, seconds)


def _report(
    project: Project,
    wanted: Wanted,
    made: list[Drawn | Refused],
    output: Path,
    form: Format,
    quiet: bool,
    seconds: float,
) -> int:
    from signage.build import Drawn, Refused
    from signage.unmade import reasons_for_nothing

    unmade = reasons_for_nothing(project, wanted)
    sheets = [result for result in made if isinstance(result, Drawn)]
    refused = [result for result in made if isinstance(result, Refused)]
    if form is Format.JSON:
        print_json(
            {
                "sheets": [sheet.as_json() for sheet in sheets],
                "refused": [refusal.as_json() for refusal in refused],
                "unmade": list(unmade),
                "seconds": seconds,
            }
        )
        return int(bool(refused or unmade))
    if not quiet:
        _print_summary(sheets, output, seconds)
        _print_left_out(project, wanted)
    for refusal in refused:
        what = ", ".join(part for part in (refusal.protocol, refusal.kind) if part)
        sys.stderr.write(f"Refused: {what}, {refusal.locale}: {refusal.why}\n")
    for reason in unmade:
        sys.stderr.write(f"Not made: {reason}\n")
    return int(bool(refused or unmade))


def _print_summary(sheets: list[Drawn], output: Path, seconds: float) -> None:
    from collections import Counter

    from rich.console import Console
    from rich.table import Table

    pages: Counter[tuple[str, str, str]] = Counter()
    files: Counter[tuple[str, str, str]] = Counter()
    for sheet in sheets:
        key = (sheet.locale, sheet.protocol, sheet.sheet_kind)
        pages[key] += sheet.pages
        files[key] += 1
    table = Table(title=None, box=None, pad_edge=False)
    for heading in ("Language", "Protocol", "Sheet"):
        table.add_column(heading)
    table.add_column("Files", justify="right")
    table.add_column("Pages", justify="right")
    for key, number in files.items():
        table.add_row(*key, str(number), str(pages[key]))
    console = Console(highlight=False)
    console.print(table)
    console.print(
        f"{len(sheets)} files, {sum(sheet.pages for sheet in sheets)} pages in {output}/, {seconds:.1f} s."
    )
    if any(sheet.is_draft for sheet in sheets):
        console.print(
            "Every sheet is marked DRAFT: nobody has signed its words and its order. Not for clinical use."
        )


def _print_left_out(project: Project, wanted: Wanted) -> None:
    from signage.model.library import LocaleState

    if wanted.locales:
        return
    for tag, locale in project.library.locales.items():
        if locale.state is LocaleState.IN_WORK:
            print(f"Left out: {tag} is in work; 'signage words progress' tells how far it is.")
