"""Help that names the kinds of sheet: they are read when help is asked for, never to start a command."""

from __future__ import annotations

from typing import Any

from typer.core import TyperCommand


class SheetCommand(TyperCommand):
    """A command whose option ``--sheet`` takes kinds of sheet."""

    def format_help(self, ctx: Any, formatter: Any) -> None:
        """Name the kinds, then write the help as every command does."""
        from signage.compose.kinds_document import kinds_help
        from signage.compose.sheet_kinds import read_sheet_kinds

        option: Any = next(each for each in self.params if each.name == "sheet")
        option.help = kinds_help(read_sheet_kinds())
        super().format_help(ctx, formatter)
