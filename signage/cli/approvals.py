"""``signage approvals …``: what is signed, whether the file is whole, its end, and keys."""

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
    typer_application,
)
from signage.cli.report import cell, print_json, say, say_error
from signage.ground.errors import RefusedError, WrongUsageError

if TYPE_CHECKING:
    from signage.control.approvals import Ledger
    from signage.project import Project

approvals_application = typer.Typer(
    help="Read the file of sign-offs, confirm its end, and record keys.",
    no_args_is_help=True,
    rich_markup_mode=None,
)
typer_application.add_typer(approvals_application, name="approvals")

AsOption = Annotated[str, typer.Option("--as", help="The id of your role, of people.yaml.")]


@approvals_application.command(name="list")
def list_records(
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
) -> int:
    """Tell every record, which of them count, and whether the file is whole."""
    from signage.control.approvals_file import approvals_file
    from signage.project import open_project

    project = open_project(content, locales)
    fault = project.sign_offs.fault
    records = approvals_file(content).whole().records
    why = project.sign_offs.discounted
    if form is Format.JSON:
        told = [{**each.as_json(), "counts": fault is None and each.n not in why} for each in records]
        print_json({"records": told, "fault": None if fault is None else str(fault)})
        return int(fault is not None)
    _print_records(project, Path(content))
    if fault is not None:
        say_error(f"No sign-off counts. {fault}")
    elif not records:
        say("Nothing is signed yet ('signage approve PROTOCOL --as ROLE').")
    return int(fault is not None)


def _print_records(project: Project, content: Path) -> None:
    from rich.console import Console
    from rich.table import Table

    from signage.control.approvals_file import approvals_file

    records = approvals_file(content).whole().records
    if not records:
        return
    table = Table(box=None, pad_edge=False)
    for heading in ("Record", "Day", "What", "By", "Code", "Counts"):
        table.add_column(heading)
    for record in records:
        what = " ".join(filter(None, (record.kind.value, record.protocol, record.locale or "")))
        why = "no" if project.sign_offs.fault else project.sign_offs.discounted.get(record.n)
        counts = f"no: {why}" if why and why != "no" else why or "yes"
        row = (str(record.n), record.on.isoformat(), what, record.by, record.code or "", counts)
        table.add_row(*map(cell, row))
    Console(highlight=False).print(table)


@approvals_application.command()
def confirm(
    as_role: AsOption = "",
    yes: Annotated[str, typer.Option(help="The code that this command shows: confirm without asking.")] = "",
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
) -> int:
    """Say that the last record is the last one: on a machine that has not seen the file, or after a loss."""
    from signage.control.approvals_file import approvals_file
    from signage.control.duties import acting_role
    from signage.project import open_project

    project = open_project(content, locales)
    acting_role(project.library.people, as_role, "confirm the end of the file", lambda each: each.signs)
    file = approvals_file(content)
    ledger = file.whole()
    if ledger.fault is not None:
        raise RefusedError(str(ledger.fault))
    if not _is_confirmed(ledger, file.memory.head(), yes):
        return 0
    file.confirm(ledger.head)
    say(f"Confirmed: {len(ledger.records)} is the number of records, and they count.")
    return 0


def _is_confirmed(ledger: Ledger, seen: object, yes: str) -> bool:
    import sys

    from signage.control.approvals import Head
    from signage.ground.fingerprint import revision_code

    code = revision_code(ledger.head.hash, 6)
    if isinstance(seen, Head) and seen.n > len(ledger.records):
        say_error(f"{seen.n - len(ledger.records)} records that were seen are gone; what they said is lost.")
    if ledger.records:
        last = ledger.records[-1]
        what = f"{last.kind} {last.protocol}"
        say(f"The last record is {last.n}, of {last.on.isoformat()}: {what} by {last.by}.")
    else:
        say("The file holds no record.")
    if yes:
        if yes.strip().upper() != code:
            raise WrongUsageError(f"'{yes[:20]}' is not the code of this file. Nothing was confirmed.")
        return True
    if not sys.stdin.isatty():
        say(f"Is that the last one? Ask whoever signed last, then add: --yes {code}")
        return False
    return typer.confirm("Is that the last one?")


@approvals_application.command(name="make-key")
def make_key(
    file: Annotated[Path, typer.Argument(help="A new file for the private key; keep it to yourself.")],
) -> int:
    """Make a key for signatures; its public half goes into people.yaml."""
    from signage.control.signatures import make_key as make

    public = make(file)
    say(f"Wrote {file}. Keep it where nobody else can read it. At your role in content/people.yaml write:")
    say(f"    public-key: {public}")
    say("Then record it: signage approvals key ROLE --as ROLE --key FILE")
    return 0


@approvals_application.command()
def key(
    role: Annotated[str, typer.Argument(help="The role whose key in people.yaml is recorded.")],
    as_role: AsOption = "",
    key_path: Annotated[
        Path | None,
        typer.Option("--key", help="The private key that signs: the role's own, or that before it."),
    ] = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
) -> int:
    """Record the key that people.yaml lists for a role; a later one is signed with the key before it."""
    from signage.control.approvals_file import approvals_file
    from signage.control.duties import acting_role
    from signage.ground.day import today
    from signage.produce.signing import key_file, record_of_key
    from signage.project import open_project

    project = open_project(content, locales)
    people = project.library.people
    acting_role(people, as_role, "record keys", lambda each: each.signs)
    listed = people[role].public_key if role in people else None
    if listed is None:
        raise WrongUsageError(
            f"content/people.yaml lists no public-key for '{role[:60]}'. Write it there first."
        )
    private = key_file(key_path)
    if private is None:
        raise WrongUsageError("A change of keys needs a signature: name the private key with --key FILE.")
    record = approvals_file(content).append(record_of_key(project, role, listed, as_role, today(), private))
    say(f"Recorded the key of {role} (record {record.n}).")
    return 0
