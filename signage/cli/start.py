"""``signage start DIR``: a small valid library to begin from."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from signage.cli.application import Format, FormatOption, QuietOption, typer_application
from signage.cli.report import print_json, say
from signage.ground.counting import counted
from signage.ground.errors import WrongUsageError

if TYPE_CHECKING:
    from signage.words.update import FileChange


@typer_application.command()
def start(
    folder: Annotated[Path, typer.Argument(help="A new or empty folder.")],
    locale: Annotated[
        list[str] | None,
        typer.Option(help="A language to translate into, such as fr; say it once for each. Else fr."),
    ] = None,
    like: Annotated[
        str, typer.Option(help="gloves: one pair; second-hospital: a suit with hood, in 56 steps.")
    ] = "gloves",
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Write a valid library into a new folder, with the words of the languages asked for."""
    from signage.ground.day import today
    from signage.ground.files import write_whole
    from signage.load.fields.schema import schema_files
    from signage.load.starter import STARTERS, starter_files
    from signage.words.update import refuse_unusual, write_changes

    if folder.exists() and not folder.is_dir():
        raise WrongUsageError(f"{folder} is a file. Name a new or empty folder.")
    if folder.is_dir() and any(folder.iterdir()):
        raise WrongUsageError(
            f"{folder} is not empty, and nothing in it was changed. Name a new or empty folder."
        )
    if like not in STARTERS:
        raise WrongUsageError(f"'{like}' is nothing to begin from. Name one of: {', '.join(STARTERS)}.")
    for tag in locale or ():
        refuse_unusual(tag)
        if tag == "en":
            raise WrongUsageError("'en' is the language of the example itself; name the other languages.")
    content = {
        **starter_files(today(), tuple(dict.fromkeys(locale or ())), like),
        **{f"schema/{name}": data for name, data in schema_files().items()},
    }
    for name, data in content.items():
        write_whole(folder / name, data)
    changes = _words(folder)
    write_changes(changes)
    made = [*content, *(change.path.relative_to(folder).as_posix() for change in changes)]
    if form is Format.JSON:
        print_json({"folder": folder.as_posix(), "written": made})
    elif not quiet:
        _tell(folder, made)
    return 0


def _words(folder: Path) -> list[FileChange]:
    """The templates, and the catalogues of every language of the new library."""
    from signage.ground.problem import with_problems
    from signage.project import open_project
    from signage.words.update import add_locale, collect, locale_tags

    project = open_project(folder / "content", folder / "locales")
    library, messages = project.library, project.messages
    changes = collect(library, messages, project.locales)
    for tag in locale_tags(library, project.locales):
        adding = add_locale(library, messages, project.locales, tag, project.fonts)
        changes += with_problems(adding)[0]
    return changes


def _tell(folder: Path, made: list[str]) -> None:
    say(f"Wrote {counted(len(made), 'file')} into {folder}:")
    for name in made:
        say(f"  {name}")
    say(
        "The fixed words and captions of pictures that come with the programme are filled in; "
        "nobody has verified them. 'signage words progress' counts what is missing."
    )
    say("With schema/, editors that know YAML schemas complete the keys of the content while you write.")
    say(f"Next: cd {folder}, then 'signage check' and 'signage draw'. All sheets print as DRAFT.")
