"""``signage sheets``: the kinds of sheet, as the table of the documentation."""

from __future__ import annotations

from signage.cli.application import Format, FormatOption, typer_application
from signage.cli.report import print_json, say


@typer_application.command()
def sheets(form: FormatOption = Format.TEXT) -> None:
    """List the kinds of sheet: what there is one of, on which papers, and which are made unasked."""
    from signage.compose.kinds_document import kinds_as_data, kinds_document
    from signage.compose.sheet_kinds import read_sheet_kinds

    kinds = read_sheet_kinds()
    if form is Format.JSON:
        print_json({"sheets": kinds_as_data(kinds)})
    else:
        say(kinds_document(kinds).rstrip("\n"))
