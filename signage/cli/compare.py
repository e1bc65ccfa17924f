"""``signage compare OLD NEW``: what differs between two states of a library, before anybody signs it."""

from __future__ import annotations

from collections.abc import Generator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from signage.cli.application import (
    CONTENT,
    LOCALES,
    ContentOption,
    Format,
    FormatOption,
    FreshOption,
    LocalesOption,
    QuietOption,
    typer_application,
)
from signage.cli.kept import kept_of_user
from signage.cli.report import print_json, progress_bar, say_error, status_of
from signage.ground.errors import WrongUsageError

if TYPE_CHECKING:
    from signage.model.copies import CopyState
    from signage.produce.comparing import Side


@typer_application.command()
def compare(
    old: Annotated[str, typer.Argument(help="A folder with content/ and locales/, or a revision in git.")],
    new: Annotated[
        str, typer.Argument(help="The same; left away, the library as it is now in --content and --locales.")
    ] = "",
    review: Annotated[
        Path | None,
        typer.Option(
            "--review", help="Also write a PDF with the old and the new card of each step that changed."
        ),
    ] = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    fresh: FreshOption = False,
    quiet: QuietOption = False,
) -> int:
    """Tell what differs between two states of a library; exit 1 where the new one has further faults."""
    from signage.cli.compare_report import tell_comparison
    from signage.ground.day import today
    from signage.produce.comparing import compare_sides

    if review is not None and review.is_dir():
        raise WrongUsageError(f"'{review}' is a folder. Name a file, such as {review / 'review.pdf'}.")
    with ExitStack() as stack:
        sides = (
            stack.enter_context(_side(old, content, locales)),
            stack.enter_context(_side(new, content, locales)),
        )
        bar = progress_bar(is_wanted=form is Format.TEXT and not quiet, description="Looking at sheets")
        states = _copies(sides[1].content, content)
        compared = compare_sides(sides, kept_of_user(is_fresh=fresh), today(), states, bar)
        if review is not None:
            from signage.ground.files import write_whole
            from signage.produce.comparison_review import review_of_comparison

            write_whole(review, review_of_comparison(compared, today()))
            if not quiet:
                say_error(f"Wrote {review}.")
    comparison = compared.comparison
    if form is Format.JSON:
        print_json(comparison.as_json())
    else:
        tell_comparison(comparison, quiet=quiet)
    return status_of(comparison.new_findings)


@contextmanager
def _side(name: str, content: Path, locales: Path) -> Generator[Side]:
    """What a person calls a state of the library: nothing for the present one, a folder, or a revision."""
    from signage.load.revision_files import files_of_revision
    from signage.produce.comparing import Side

    if not name:
        yield Side(f"{content}/", content, locales)
        return
    folder = Path(name)
    if folder.is_dir():
        yield Side(name, *_folders(folder))
    elif folder.exists():
        raise WrongUsageError(f"'{name}' is a file. Name a folder that holds content/ and locales/.")
    else:
        with files_of_revision(name, content, locales) as (there, words):
            yield Side(name, there, words, label=name)


def _folders(folder: Path) -> tuple[Path, Path]:
    """Content and words of a library folder, or of a content folder with its words beside it."""
    if (folder / CONTENT).is_dir():
        return folder / CONTENT, folder / LOCALES
    if (folder / "library.yaml").exists():
        return folder, folder.parent / LOCALES
    raise WrongUsageError(
        f"'{folder}' holds no library: neither {CONTENT}/ nor library.yaml. Name a folder that holds "
        f"{CONTENT}/ and {LOCALES}/; 'signage start {folder}' writes a small one to begin from."
    )


def _copies(new: Path, content: Path) -> tuple[CopyState, ...]:
    """The copies in the register of the new library, or of the present one where that is a revision."""
    from signage.control.register.store import find_register, register_path

    for folder in (new, content):
        register = find_register(register_path(folder))
        if register is not None:
            return register.states()
    return ()
