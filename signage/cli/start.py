"""``signage start DIR``: a small valid library to begin from."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from signage.cli.application import QuietOption, typer_application
from signage.cli.report import say
from signage.ground.errors import WrongUsageError


@typer_application.command()
def start(
    folder: Annotated[Path, typer.Argument(help="A new or empty folder.")], quiet: QuietOption = False
) -> None:
    """Write a small valid library into a new folder."""
    from signage.ground.day import today
    from signage.ground.files import write_whole
    from signage.load.starter import starter_files

    if folder.exists() and not folder.is_dir():
        raise WrongUsageError(f"{folder} is a file. Name a new or empty folder.")
    if folder.is_dir() and any(folder.iterdir()):
        raise WrongUsageError(
            f"{folder} is not empty, and nothing in it was changed. Name a new or empty folder."
        )
    files = starter_files(today())
    for name, data in files.items():
        write_whole(folder / name, data)
    if quiet:
        return
    say(f"Wrote {len(files)} files into {folder}:")
    for name in files:
        say(f"  {name}")
    say(f"Next: cd {folder}, then 'signage check' and 'signage draw'. All sheets print as DRAFT.")
