"""The application object and the options that every command takes."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer

from signage import __version__


class Format(StrEnum):
    """Text for people, one JSON object for programmes."""

    TEXT = "text"
    JSON = "json"


typer_application = typer.Typer(
    name="signage",
    help="Protocol steps written once, printed as checked, translated posters, step cards and checklists.",
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
)

ContentOption = Annotated[Path, typer.Option("--content", help="Folder of the content files.")]
LocalesOption = Annotated[Path, typer.Option("--locales", help="Folder of the translations.")]
OutputOption = Annotated[Path, typer.Option("--output", help="Folder for what is made.")]
FormatOption = Annotated[Format, typer.Option("--format", help="text for people, json for programmes.")]
FreshOption = Annotated[
    bool, typer.Option("--fresh", help="Make everything anew: use nothing that an earlier run kept.")
]
QuietOption = Annotated[bool, typer.Option("--quiet", help="Say nothing but faults.")]

CONTENT = Path("content")
LOCALES = Path("locales")
OUTPUT = Path("output")


def _print_version(is_wanted: bool) -> None:
    if is_wanted:
        typer.echo(f"signage {__version__}")
        raise typer.Exit


@typer_application.callback()
def _root(
    version: Annotated[
        bool, typer.Option("--version", callback=_print_version, is_eager=True, help="Print the version.")
    ] = False,
) -> None:
    """Protocol steps written once, printed as checked, translated posters, step cards and checklists.

    Exit status: 0 done and nothing wrong; 1 problems found, or refused for safety; 2 wrong usage or
    unreadable input; 3 this machine lacks something.
    """


def invoke(arguments: list[str]) -> int:
    """Run the command named by the arguments and give its exit status; every error is the caller's."""
    command = typer.main.get_command(typer_application)
    with command.make_context("signage", list(arguments)) as context:
        status = command.invoke(context)
    return status if isinstance(status, int) else 0
