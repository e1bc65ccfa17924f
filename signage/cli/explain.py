"""``signage explain CODE``: what a rule looks at, why, an example and the cure."""

from __future__ import annotations

import difflib
from textwrap import fill
from typing import Annotated

import typer

from signage.cli.application import Format, FormatOption, typer_application
from signage.cli.report import print_json, say
from signage.ground.errors import WrongUsageError


def further_lists(code: str) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """All keys, words, forms or pictures that a code is about, whole, as titles with their lines."""
    from signage.load import faults
    from signage.load.fields.lists import lists_for
    from signage.pictograms.shipped import shipped_names

    if code == faults.UNKNOWN_PICTURE.code:
        return (("Pictures ('signage draw --sheet pictures' shows them)", (", ".join(shipped_names()),)),)
    return lists_for(code)


@typer_application.command()
def explain(
    code: Annotated[str | None, typer.Argument(help="A code such as SH-3; none lists all codes.")] = None,
    form: FormatOption = Format.TEXT,
) -> None:
    """Explain a code that a report named."""
    from dataclasses import asdict

    from signage.check.registry import all_rules, rule_of

    if code is None:
        if form is Format.JSON:
            print_json({"rules": [asdict(rule) for rule in all_rules().values()]})
            return
        for rule in all_rules().values():
            say(f"{rule.code:6} {rule.severity.value}  {rule.name}")
        return
    rule_found = rule_of(code.upper())
    if rule_found is None:
        near = difflib.get_close_matches(code.upper(), all_rules(), n=3)
        hint = f" Did you mean {', '.join(near)}?" if near else ""
        raise WrongUsageError(f"There is no code {code}.{hint} 'signage explain' lists all codes.")
    if form is Format.JSON:
        print_json({**asdict(rule_found), "lists": dict(further_lists(rule_found.code))})
        return
    say(f"{rule_found.code} {rule_found.name} ({rule_found.severity.value})")
    for title, text in (
        ("What it looks at", rule_found.what),
        ("Why", rule_found.why),
        ("Example", rule_found.example),
        ("What to do", rule_found.cure),
    ):
        say(f"\n{title}\n  {text}")
    for title, lines in further_lists(rule_found.code):
        say(f"\n{title}")
        for line in lines:
            say(fill(line, width=100, initial_indent="  ", subsequent_indent="    ", break_on_hyphens=False))
