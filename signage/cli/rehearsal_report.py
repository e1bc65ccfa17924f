"""How a report on a rehearsal looks on the terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from signage.cli.report import cell, say
from signage.ground.counting import counted

if TYPE_CHECKING:
    from signage.model.library import Library, Protocol
    from signage.rehearse.equipment import Equipment
    from signage.rehearse.finding import Finding
    from signage.rehearse.rehearsal import Rehearsal
    from signage.rehearse.report import Report


def print_report(library: Library, report: Report, *, with_steps: bool, with_repairs: bool) -> None:
    """Findings by cause, the walk if wanted, what steps carry, what is needed, and what is left out."""
    _print_findings(library, report, with_repairs=with_repairs)
    if with_steps:
        _print_steps(report.protocol, report.study.rehearsal)
    _print_steps_judged(report)
    _print_equipment(library, report.equipment)
    _print_left_out()


def _print_findings(library: Library, report: Report, *, with_repairs: bool) -> None:
    from signage.rehearse.causes import group_findings

    protocol, waived = report.protocol, report.waived
    rehearsal = report.study.rehearsal
    for group in group_findings(waived.standing):
        _print_finding(rehearsal, group.cause, "")
        for consequence in group.consequences:
            _print_finding(rehearsal, consequence, "    then ")
        if with_repairs:
            _print_repairs(library, protocol, group.cause)
    for problem in waived.problems:
        say(f"{problem.place}: {problem.severity.value} {problem.code} {problem.message}")
        say(f"    {problem.hint}")
    for finding, waiver in waived.waived:
        say(f"Waived until {waiver.expires.isoformat()} by the {waiver.role}: {waiver.reason}")
        _print_finding(rehearsal, finding, "    ")
    if not report.problems:
        say(f"{protocol.code} {protocol.title}: no findings{' but those waived' if waived.waived else ''}.")
    elif waived.blocks_release:
        say("Sheets of this protocol are refused, or printed as proofs with 'signage draw --proof'.")
    elif waived.blocks_approval:
        say("This protocol cannot be approved as it is.")


def _print_finding(rehearsal: Rehearsal, finding: Finding, indent: str) -> None:
    from signage.rehearse.explanation import told_facts

    where = f"{finding.place}: " if finding.place.path else ""
    step = f" [step {finding.step}]" if finding.step else ""
    say(f"{indent}{where}{finding.severity.value} {finding.code} {finding.message}{step}")
    inner = " " * (len(indent) + 4)
    for line in told_facts(rehearsal.explain(finding)):
        say(f"{inner}{line}")
    if not indent:
        say(f"{inner}{finding.hint}")


def _print_repairs(library: Library, protocol: Protocol, finding: Finding) -> None:
    from signage.rehearse.variations.repairs import suggest_repairs

    for repair in suggest_repairs(library, protocol, finding):
        say(f"    It would be gone with this edit (not applied): {repair.description}")


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
            table.add_row(*map(cell, (headline, person.person, person.zone, hands, worn, due)))
    Console(highlight=False).print(table)


def _print_steps_judged(report: Report) -> None:
    steps, total = report.study.steps, len(report.protocol.steps)
    say(
        f"\n{len(steps.load_bearing)} of {counted(total, 'step')} carry load: without one of them, a finding."
    )
    if steps.unexplained:
        say(f"Without effect and without a rationale: {', '.join(steps.unexplained)}")
    critical = counted(len(steps.critical), "step is", "steps are")
    say(f"{critical} critical: left out, an S1 finding; or marked by the author.")
    if steps.marked:
        say(f"Sheets mark {len(steps.marked)} of them: {', '.join(steps.marked)}")
    say(f"{counted(len(report.study.free_swaps), 'pair')} of neighbours may be exchanged.")


def _print_equipment(library: Library, equipment: Equipment) -> None:
    """What one run needs; nothing is printed where the rehearsal could not be walked."""
    kit = ", ".join(f"{need.put_on} × {library.garments[need.item].name}" for need in equipment.kit)
    hygiene = ", ".join(f"{times} × {agent}" for agent, times in equipment.hygiene)
    say("\nOne run needs:")
    for heading, needs in (("Kit", kit), ("Hand hygiene", hygiene)):
        say(f"  {heading}: {needs or 'none'}")
    for need in equipment.fixtures:
        say(f"  {need.kind} in {need.zone}: {need.fixture or 'the ward has none'}")


def _print_left_out() -> None:
    from signage.rehearse.rehearsal import SIMPLIFICATIONS

    say("\nWhat this model leaves out:")
    for sentence in SIMPLIFICATIONS:
        say(f"  {sentence}")
