"""What people are told of the kinds of sheet: a line of help, and the table of the documentation."""

from __future__ import annotations

from typing import Any

from signage.compose.sheet_kind import Offer, SheetKind
from signage.compose.sheet_kinds import SheetKinds

_HEAD = """# Kinds of sheet

`signage draw --sheet NAME` makes the kinds that are named; without `--sheet` it makes those that are made
unasked. Forms of document control are made by the commands that their lines name, never by `draw`.
`signage sheets > docs/sheets.md` writes this table from the kinds themselves.

| `--sheet` | What it is | One for each | Papers | Made |
|---|---|---|---|---|
"""


def kinds_help(kinds: SheetKinds) -> str:
    """The kinds by name, and what those are that nobody gets unasked."""
    *others, last = kinds.usual
    usual = f"{', '.join(others)} or {last}" if others else last
    asked = ", ".join(f"{kind.name} ({kind.summary})" for kind in kinds if kind.offer is Offer.ON_REQUEST)
    return (
        f"Only this kind: {usual}; made only when asked for: {asked}."
        if asked
        else f"Only this kind: {usual}."
    )


def kinds_document(kinds: SheetKinds) -> str:
    """The table as Markdown."""
    rows = [
        f"| `{kind['name']}` | {kind['summary']} | {kind['per']} | {kind['papers']} | {kind['made']} |\n"
        for kind in kinds_as_data(kinds)
    ]
    return _HEAD + "".join(rows)


def kinds_as_data(kinds: SheetKinds) -> list[dict[str, str]]:
    """The fields of the table, for programmes."""
    return [
        {
            "name": kind.name,
            "summary": kind.summary,
            "per": kind.per.value,
            "papers": _papers(kind),
            "made": kind.offer.value,
        }
        for kind in (
            *map(kinds.of, kinds.names),
            *(kind for kind in kinds if kind.offer is Offer.OF_CONTROL),
        )
    ]


def _papers(kind: SheetKind[Any]) -> str:
    choice = kind.papers
    if choice.names:
        return ", ".join(choice.names)
    return f"all of {choice.least_side:g} mm and wider" if choice.least_side else "all"
