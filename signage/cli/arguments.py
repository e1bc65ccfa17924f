"""What the arguments say before, or although, the command cannot run."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import typer

from signage.cli.application import Format, FormatOption, typer_application

_format_alone = typer.Typer(add_completion=False)
"""Finds the option of formats among arguments of which no command is known."""


@_format_alone.command(context_settings={"ignore_unknown_options": True, "allow_extra_args": True})
def _only_format(form: FormatOption = Format.TEXT) -> None:
    """Never called; its options are parsed."""


def parsed(words: Sequence[str]) -> Mapping[str, Any]:
    """The options of the command that the arguments name, read as far as they can be, faults and all."""
    command: Any = typer.main.get_command(typer_application)
    rest = list(words)
    while hasattr(command, "commands"):
        index = next((i for i, word in enumerate(rest) if not word.startswith("-")), None)
        if index is None or rest[index] not in command.commands:
            break
        command, rest = command.commands[rest[index]], rest[index + 1 :]
    if hasattr(command, "commands") or all(option.name != "form" for option in command.params):
        command = typer.main.get_command(_format_alone)
    try:
        context = command.make_context(
            "signage", rest, resilient_parsing=True, ignore_unknown_options=True, allow_extra_args=True
        )
    except Exception:  # noqa: BLE001 - whatever cannot be read says nothing; the fault itself is told elsewhere
        return {}
    options: Mapping[str, Any] = context.params
    return options


def wants_json(words: Sequence[str]) -> bool:
    """Whether the option ``--format`` asks for JSON, as the command line itself would read it."""
    return str(parsed(words).get("form") or Format.TEXT) == Format.JSON
