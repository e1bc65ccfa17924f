"""How the status looks on the terminal: a table, stacked where that is narrow, then what is next."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING, Any

from signage.cli.report import cell, say
from signage.ground.counting import counted
from signage.pages.status_words import Row, finding_words, rows_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from signage.model.status import LibraryStatus, ProtocolStatus

WIDTH = 100
"""Columns of the table; a narrower terminal gets it stacked."""

_WIDTHS = (2, 16, 24, 20, 25, 3, 3)


def tell_status(status: LibraryStatus, *, quiet: bool) -> None:
    """The table, unless only duties are wanted, and the duties."""
    from rich.console import Console

    console = Console(highlight=False)
    width = console.width if sys.stdout.isatty() else WIDTH
    if not quiet:
        say(f"{status.name}, {status.day.isoformat()}{'. A demonstration.' if status.is_demo else ''}")
        if width >= WIDTH:
            _tell_table(status)
        else:
            _tell_stacked(status)
        if not status.has_register:
            say("\nNo copies are counted yet ('signage draw --copies N' begins a register).")
        say()
    _tell_tasks(status, min(width, WIDTH))


def _tell_table(status: LibraryStatus) -> None:
    """One row a language under a line for each protocol; columns stand alike in all of them."""
    from rich.console import Console

    console = Console(highlight=False, width=WIDTH)
    headings = ["", "Language", "Words", "Prints as", "Signed by", "Out", "Old"]
    console.print(_rows([headings if status.has_register else headings[:-2]], "dim"))
    for protocol in status.protocols:
        console.print(cell(_protocol_words(protocol), "bold"))
        console.print(_rows([("", *_cells(row, status)) for row in rows_of(protocol)]))


def _rows(rows: Sequence[Sequence[str]], style: str = "") -> Any:
    from rich.table import Table

    table = Table(box=None, pad_edge=False, show_header=False, padding=(0, 1, 0, 0))
    for width in _WIDTHS[: len(rows[0])]:
        table.add_column(width=width, overflow="fold")
    for row in rows:
        table.add_row(*(cell(each, style) for each in row))
    return table


def _cells(row: Row, status: LibraryStatus) -> tuple[str, ...]:
    told = (", ".join(row.tags), row.words, row.prints_as, row.signed)
    return (*told, str(row.sheet.mounted), str(row.sheet.obsolete)) if status.has_register else told


def _tell_stacked(status: LibraryStatus) -> None:
    for protocol in status.protocols:
        say(f"\n{_protocol_words(protocol)}")
        for row in rows_of(protocol):
            say(f"  {', '.join(row.tags)}")
            say(f"    words: {row.words}")
            say(f"    prints as {row.prints_as}")
            say(f"    signed by {row.signed}")
            if status.has_register:
                say(f"    {row.sheet.mounted} out, {row.sheet.obsolete} old")


def _protocol_words(protocol: ProtocolStatus) -> str:
    return (
        f"{protocol.code} {protocol.title}: {finding_words(protocol)}; "
        f"review by {protocol.review_by.isoformat()}"
    )


def _tell_tasks(status: LibraryStatus, width: int) -> None:
    from rich.console import Console
    from rich.table import Table

    console = Console(highlight=False, width=width)
    if not status.tasks:
        say("Nothing waits for anybody.")
        return
    say(f"Next, the most pressing first ({counted(len(status.tasks), 'task')}):")
    table = Table.grid(padding=(0, 1, 0, 0))
    table.add_column(justify="right", width=3)
    table.add_column(overflow="fold")
    for number, task in enumerate(status.tasks, start=1):
        table.add_row(cell(f"{number}."), cell(task.what))
        for line in (task.role, task.command or task.path):
            if line:
                table.add_row(cell(""), cell(f"  {line}", "dim"))
    console.print(table)
