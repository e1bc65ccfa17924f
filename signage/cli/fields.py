"""``signage fields``: the field reference of the content files, and their JSON schemas."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from signage.cli.application import Format, FormatOption, QuietOption, typer_application
from signage.cli.report import print_json, say


@typer_application.command()
def fields(
    schema: Annotated[
        Path | None,
        typer.Option("--schema", help="Write JSON schemas for editors into this folder instead."),
    ] = None,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> None:
    """Print every key of the content files: what may stand there, an example and what it means."""
    from signage.load.fields.document import field_document
    from signage.load.fields.schema import content_schemas, schema_files

    if schema is not None:
        from signage.ground.files import write_whole

        for name, data in schema_files().items():
            write_whole(schema / name, data)
        if not quiet:
            say(f"Wrote {len(content_schemas())} schemas into {schema}/.")
    elif form is Format.JSON:
        print_json({"schemas": content_schemas()})
    else:
        say(field_document().rstrip("\n"))
