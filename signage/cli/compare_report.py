"""How a comparison looks on the terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from signage.cli.report import cell, say
from signage.produce.comparison_words import sections_of

if TYPE_CHECKING:
    from signage.control.comparison.comparison import Comparison


def tell_comparison(comparison: Comparison, *, quiet: bool) -> None:
    """What changed, then what follows from it."""
    from rich.console import Console

    sections = sections_of(comparison)
    if not sections:
        if not quiet:
            say(f"Nothing differs between {comparison.old} and {comparison.new}.")
        return
    console = Console(highlight=False, soft_wrap=True)
    say(f"From {comparison.old} to {comparison.new}:")
    for section in sections:
        say()
        console.print(cell(section.head, "bold"))
        for depth, line in section.lines:
            console.print(cell(f"{'  ' * (depth + 1)}{line}"))
