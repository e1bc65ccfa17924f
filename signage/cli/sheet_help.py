"""Help that names the kinds of sheet: they are read when help is asked for, never to start a command."""

from __future__ import annotations

import click
from typer.core import TyperCommand


class SheetCommand(TyperCommand):
    """A command whose option ``--sheet`` takes kinds of sheet."""

    def format_help(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Name the kinds, then write the help as every command does."""
        from signage.compose.kinds_document import kinds_help
        from signage.compose.sheet_kinds import read_sheet_kinds

        option = next(each for each in self.params if each.name == "sheet")
        if isinstance(option, click.Option):
            option.help = kinds_help(read_sheet_kinds())
        super().format_help(ctx, formatter)
