"""``signage pages``: the training site behind the QR codes, as files for any server or memory stick."""

from __future__ import annotations

import time
from datetime import date
from typing import TYPE_CHECKING, Annotated

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
from signage.cli.report import print_json, print_problems, say, say_error
from signage.ground.counting import counted
from signage.ground.errors import WrongUsageError

if TYPE_CHECKING:
    from signage.produce.publish import Published
    from signage.project import Project


@typer_application.command()
def pages(
    locale: Annotated[list[str] | None, typer.Option(help="Only this locale, such as ar.")] = None,
    day: Annotated[
        str | None,
        typer.Option("--date", help="The day that pages name, such as 2026-11-26; else today."),
    ] = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    output: OutputOption = OUTPUT,
    form: FormatOption = Format.TEXT,
    fresh: FreshOption = False,
    quiet: QuietOption = False,
) -> int:
    """Make the training pages; they need no network, and no script to be read."""
    from signage.cli.choice import chosen
    from signage.ground.day import today
    from signage.produce.kept import KeptResults
    from signage.produce.publish import publish
    from signage.project import open_project

    started = time.monotonic()
    made_on = _date(day) if day else today()
    project = open_project(content, locales, kept_of_user(is_fresh=fresh))
    wanted = chosen(project, None, locale, None, None, "colour")
    results = KeptResults(project)
    published = publish(project, output, made_on, wanted.locales, results)
    results.kept.trim()
    return _report(project, published, form, quiet, round(time.monotonic() - started, 2))


def _date(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise WrongUsageError(f"'{text}' is no date. Write one such as 2026-11-26.") from None


def _report(project: Project, published: Published, form: Format, quiet: bool, seconds: float) -> int:
    from signage.pages.training_address import reachable_problem

    if form is Format.JSON:
        print_json(
            {
                "site": published.folder.as_posix(),
                "pages": published.site.pages,
                "files": len(published.site.files),
                "bytes": published.size,
                "locales": list(published.locales),
                "refused": [each.as_json() for each in published.refused],
                "removed": published.removed,
                "seconds": seconds,
            }
        )
        return int(bool(published.refused))
    if not quiet:
        languages = ", ".join(published.locales)
        made = counted(published.site.pages, "page")
        say(f"{made} in {languages}: {published.folder}/, {seconds:.1f} s.")
        say(f"Open {published.folder}/index.html, or run 'signage serve' to show them to phones.")
        if not published.signed and not published.withdrawn:
            say("Every page is marked as a draft: nobody has signed its words and its order.")
        else:
            signed, withdrawn = published.signed, published.withdrawn
            said = f"{counted(signed, 'protocol')} approved and {withdrawn} withdrawn, each in one language"
            say(f"{said}; every other page is marked as a draft.")
    library = project.library
    warning = reachable_problem(library.training_address, library.at("training_address"))
    if warning is not None and not quiet:
        print_problems([warning])
    for refusal in published.refused:
        what = ", ".join(part for part in (refusal.locale, refusal.protocol) if part)
        say_error("\n    ".join((f"Refused: {what}", *refusal.reasons)))
    return int(bool(published.refused))
