"""The group of commands ``signage audit …``."""

from __future__ import annotations

import typer

from signage.cli.application import typer_application

audit_application = typer.Typer(
    help="Go round with forms, and judge what comes back from the ward.",
    no_args_is_help=True,
    rich_markup_mode=None,
)
typer_application.add_typer(audit_application, name="audit")


@audit_application.callback()
def _root() -> None:
    """Go round with forms, and judge what comes back from the ward."""
