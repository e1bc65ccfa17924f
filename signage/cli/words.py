"""``signage words …``: the translator's commands."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

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
from signage.cli.report import cell, print_json, print_problems, say

if TYPE_CHECKING:
    from collections.abc import Sequence

    from signage.words.update import FileChange, LocaleProgress

words_application = typer.Typer(
    help="Collect, update and count the words of each language.", no_args_is_help=True, rich_markup_mode=None
)
typer_application.add_typer(words_application, name="words")


def _write(changes: Sequence[FileChange], locales: Path, form: Format, quiet: bool) -> None:
    from signage.words.update import write_changes

    write_changes(changes)
    changed = [change.path.as_posix() for change in changes if change.is_new_content]
    if form is Format.JSON:
        print_json({"changed": changed, "unchanged": len(changes) - len(changed)})
        return
    if quiet:
        return
    for path in changed:
        say(f"Wrote {path}")
    if not changed:
        say(f"Nothing to change: {len(changes)} files in {locales}/ are up to date.")


@words_application.command()
def collect(
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Write the templates content.pot and interface.pot from the source texts."""
    from signage.project import open_project
    from signage.words import update as words_update

    project = open_project(content, locales)
    _write(words_update.collect(project.library, project.messages, locales), locales, form, quiet)
    return 0


@words_application.command()
def update(
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Bring every language up to the source: new texts empty, changed ones doubtful, none lost."""
    from signage.project import open_project
    from signage.words import update as words_update

    project = open_project(content, locales)
    library, messages = project.library, project.messages
    changes = [
        *words_update.collect(library, messages, locales),
        *words_update.update(library, messages, locales),
    ]
    _write(changes, locales, form, quiet)
    return 0


@words_application.command()
def add(
    tag: Annotated[str, typer.Argument(help="A language tag such as bn, pt-BR or sr-Latn.")],
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Begin a new language with empty catalogues."""
    from signage.project import open_project
    from signage.words.update import add_locale

    project = open_project(content, locales)
    changes, warnings = add_locale(project.library, project.messages, locales, tag)
    _write(changes, locales, form, quiet)
    if warnings and form is Format.TEXT:
        print_problems(warnings)
    if form is Format.TEXT and not quiet and tag not in project.library.locales:
        say("Now name the language in content/library.yaml, under locales:")
        say(f"  {tag}: {{owner: language lead, state: in-work}}")
    return 0


@words_application.command()
def progress(
    content: ContentOption = CONTENT, locales: LocalesOption = LOCALES, form: FormatOption = Format.TEXT
) -> int:
    """Count per language what is missing, doubtful, translated and checked."""
    from signage.project import open_project
    from signage.words.update import progress as count
    from signage.words.update import progress_json

    project = open_project(content, locales)
    counts = count(project.library, project.messages, locales)
    if form is Format.JSON:
        print_json(progress_json(counts))
    else:
        states = {tag: locale.state.value for tag, locale in project.library.locales.items()}
        _print_table(counts, states)
    return 0


def _print_table(counts: dict[str, LocaleProgress], states: dict[str, str]) -> None:
    from rich.console import Console
    from rich.table import Table

    table = Table(box=None, pad_edge=False)
    table.add_column("Language")
    table.add_column("State")
    for heading in ("Texts", "Missing", "Doubtful", "Translated", "Checked", "Stale"):
        table.add_column(heading, justify="right")
    for tag, count in counts.items():
        row = (count.messages, count.missing, count.doubtful, count.translated, count.checked, count.stale)
        table.add_row(cell(tag), states.get(tag, "not in library.yaml"), *map(str, row))
    Console(highlight=False).print(table)
