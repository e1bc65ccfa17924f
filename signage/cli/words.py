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
from signage.cli.report import cell, print_json, print_problems, say, say_error
from signage.ground.counting import counted

if TYPE_CHECKING:
    from collections.abc import Sequence

    from signage.project import Project
    from signage.words.checking import CheckedOff
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
        say(f"Nothing to change: {counted(len(changes), 'file')} in {locales}/ up to date.")


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
    """Begin a new language: catalogues with the words that the programme brings, the rest empty."""
    from signage.ground.problem import with_problems
    from signage.project import open_project
    from signage.words.update import add_locale

    project = open_project(content, locales)
    adding = add_locale(project.library, project.messages, locales, tag, project.fonts)
    changes, warnings = with_problems(adding)
    _write(changes, locales, form, quiet)
    if warnings and form is Format.TEXT:
        print_problems(warnings)
    if form is Format.TEXT and not quiet and tag not in project.library.locales:
        _say_brought(tag)
        say("Now name the language in content/library.yaml, under locales:")
        say(f"  {tag}: {{owner: language lead, state: in-work}}")
    return 0


def _say_brought(tag: str) -> None:
    from signage.words.shipped import shipped_entries

    if shipped_entries(tag):
        say("Fixed words and captions of pictures come with the programme; nobody has verified them.")


@words_application.command(hidden=True)
def ship(
    folder: Annotated[Path, typer.Argument(help="The folder signage/words/shipped_words.")],
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """For developers: renew the words that the programme brings from the catalogues of the demo."""
    from signage.ground.files import write_whole
    from signage.project import open_project

    made = shipped_from(open_project(content, locales))
    changed = [
        name
        for name, data in made.items()
        if not (folder / name).is_file() or (folder / name).read_bytes() != data
    ]
    for name in changed:
        write_whole(folder / name, made[name])
    if form is Format.JSON:
        print_json({"changed": changed, "unchanged": len(made) - len(changed)})
    elif not quiet:
        say(f"{len(changed)} of {counted(len(made), 'file')} changed in {folder}/.")
    return 0


def shipped_from(project: Project) -> dict[str, bytes]:
    """The files of shipped words as the catalogues of a project would make them, languages in use only."""
    from signage.pictograms.shipped import shipped_names
    from signage.words.fixed.interface import FIXED_TEXTS
    from signage.words.shipped import files_to_ship

    source = project.library.source_locale
    tags = [tag for tag in project.locales_in_use if tag != source]
    fixed = [f"interface/{name}" for name in FIXED_TEXTS]
    return files_to_ship(project.locales, tags, [*fixed, *(f"picture/{name}" for name in shipped_names())])


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


@words_application.command(name="check-off")
def check_off(
    tag: Annotated[str, typer.Argument(help="The language whose words were checked, such as ar.")],
    protocol: Annotated[str, typer.Option(help="Id or code of the protocol that was read.")] = "",
    as_role: Annotated[str, typer.Option("--as", help="The id of the role that checked.")] = "",
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Record that a second person has read every text of a protocol in a language, and found it right."""
    from signage.cli.choice import must_exist, protocol_named
    from signage.control.duties import acting_role
    from signage.ground.day import today
    from signage.ground.errors import WrongUsageError
    from signage.model.people import translators_of
    from signage.project import open_project
    from signage.words.checking import check_off as check
    from signage.words.update import write_changes

    project = open_project(content, locales)
    library = project.library
    must_exist([tag], library.locales, "locale")
    if not protocol:
        raise WrongUsageError("Say with --protocol which protocol was read, such as --protocol P3.")
    chosen = library.protocols[protocol_named(library, protocol)]
    duty = f"check the words of {tag}"
    role = acting_role(library.people, as_role, duty, lambda each: tag in each.checks)
    translators = translators_of(library.people, tag)
    made = check(library, project.messages, locales, tag, chosen, role.id, today(), translators)
    write_changes(made.changes)
    if form is Format.JSON:
        left = [{"text": each.context, "why": why, "path": str(each.place)} for each, why in made.left]
        print_json({"marked": made.marked, "already": made.already, "left": left})
        return int(bool(made.left))
    if not quiet:
        say(f"Marked {counted(made.marked, 'text')} as checked by {role.id}; {made.already} were before.")
        say("Whoever changes one of them afterwards, or its source, ends its mark.")
    _tell_left(made)
    return int(bool(made.left))


_MOST_LEFT = 10


def _tell_left(made: CheckedOff) -> None:
    for each, why in made.left[:_MOST_LEFT]:
        say_error(f"{each.place}: '{each.context}' {why} and got no mark.")
    if len(made.left) > _MOST_LEFT:
        say_error(f"{len(made.left) - _MOST_LEFT} more got none.")
