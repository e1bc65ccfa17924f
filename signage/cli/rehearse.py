"""``signage rehearse PROTOCOL``: a protocol is walked step by step before it is printed."""

from __future__ import annotations

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
from signage.cli.report import print_json, status_of

if TYPE_CHECKING:
    from signage.model.library import Library, Protocol
    from signage.rehearse.finding import Finding
    from signage.rehearse.rehearsal import Rehearsal
    from signage.rehearse.study import Study


@typer_application.command()
def rehearse(
    protocol: Annotated[str, typer.Argument(help="The id or code of a protocol, such as P1.")],
    steps: Annotated[bool, typer.Option("--steps", help="Also print the state after each step.")] = False,
    repairs: Annotated[
        bool, typer.Option("--repairs", help="Also suggest single edits; none is applied.")
    ] = False,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
) -> int:
    """Walk a protocol against the declared facts of kit, ward and policy."""
    from signage.build import open_project
    from signage.cli.choice import chosen
    from signage.rehearse.study import study_protocol

    project = open_project(content, locales)
    (name,) = chosen(project, [protocol], None, None, None, "colour").protocols
    walked = project.library.protocols[name]
    study = study_protocol(project.library, walked)
    if form is Format.JSON:
        print_json(study.as_json())
    else:
        _print_findings(project.library, walked, study, with_repairs=repairs)
        if steps:
            _print_steps(walked, study.rehearsal)
        _print_summary(walked, study)
    return status_of(study.problems())


def _print_findings(library: Library, protocol: Protocol, study: Study, *, with_repairs: bool) -> None:
    from signage.rehearse.causes import group_findings

    for group in group_findings(study.findings):
        _print_finding(group.cause, "")
        for consequence in group.consequences:
            _print_finding(consequence, "    then ")
        if with_repairs:
            _print_repairs(library, protocol, group.cause)
    if not study.findings:
        print(f"{protocol.code} {protocol.title}: no findings.")


def _print_finding(finding: Finding, indent: str) -> None:
    where = f"{finding.place}: " if finding.place.path else ""
    step = f" [step {finding.step}]" if finding.step else ""
    print(f"{indent}{where}{finding.severity.value} {finding.code} {finding.message}{step}")
    if not indent:
        print(f"    {finding.hint}")


def _print_repairs(library: Library, protocol: Protocol, finding: Finding) -> None:
    from signage.rehearse.repairs import suggest_repairs

    for repair in suggest_repairs(library, protocol, finding):
        print(f"    It would be gone with this edit (not applied): {repair.description}")


def _print_steps(protocol: Protocol, rehearsal: Rehearsal) -> None:
    from rich.console import Console
    from rich.table import Table

    texts = {step.id: step.text for step in protocol.steps}
    table = Table(box=None, pad_edge=False)
    for heading in ("Step", "Who", "Zone", "Hands, from the skin outwards", "Worn outside", "Due"):
        table.add_column(heading, overflow="fold")
    for state in rehearsal.trace:
        for number, person in enumerate(state.people):
            hands = ", ".join(f"{layer} {level.word}" for layer, level in person.hands)
            worn = ", ".join(f"{worn.garment} {worn.outside.word}" for worn in person.worn)
            due = f"hygiene after {person.hygiene_due}" if person.hygiene_due else ""
            headline = texts.get(state.step, state.step) if number == 0 else ""
            table.add_row(headline, person.person, person.zone, hands, worn, due)
    Console(highlight=False).print(table)


def _print_summary(protocol: Protocol, study: Study) -> None:
    from signage.rehearse.rehearsal import SIMPLIFICATIONS

    total = len(protocol.steps)
    print(f"\n{len(study.steps.load_bearing)} of {total} steps carry load: without one of them, a finding.")
    if study.steps.unexplained:
        print(f"Without effect and without a rationale: {', '.join(study.steps.unexplained)}")
    print(f"{len(study.steps.critical)} steps are critical: without one of them, an S1 finding.")
    print(f"{len(study.free_swaps)} pairs of neighbours may be exchanged.")
    print("\nWhat this model leaves out:")
    for sentence in SIMPLIFICATIONS:
        print(f"  {sentence}")
