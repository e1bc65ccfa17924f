"""References to phases: where the hazards of a protocol lead, and which hand technique a step follows."""

from __future__ import annotations

from collections.abc import Iterator

from signage.ground.problem import Problem
from signage.load import faults
from signage.load.declared import Declared
from signage.load.suggestion import shorten, suggest
from signage.load.yaml.nodes import Node, Table, Text, child, entries_of, items_of, text_of


def hazard_problems(protocol: Node, declared: Declared) -> Iterator[Problem]:
    """Hazards that lead nowhere, or to two places, and branches that are no phase and no protocol."""
    hazards = child(protocol, "hazards")
    for name, hazard in entries_of(protocol, "hazards").items():
        branch, document = text_of(hazard, "branch"), text_of(hazard, "local-policy")
        if isinstance(hazard, Table) and isinstance(hazards, Table) and bool(branch) is bool(document):
            found = "both 'branch' and 'local-policy'" if branch else "neither 'branch' nor 'local-policy'"
            yield faults.MISFIT_KEY.problem(
                f"The hazard '{shorten(name)}' has {found}; one of them was wanted.",
                hazards.key_place(name),
                hint="Name the phase that says what is then done, or the local document that does.",
            )
        elif branch is not None:
            yield from _branch_problems(branch, protocol, declared)


def _branch_problems(branch: Text, protocol: Node, declared: Declared) -> Iterator[Problem]:
    """A branch to what is not there, or to a phase that is done in every run anyway."""
    own = {name.text: phase for phase in items_of(protocol, "phases") if (name := text_of(phase, "phase"))}
    if branch.text in own:
        steps = items_of(own[branch.text], "steps")
        if any((when := text_of(step, "when")) is None or when.text == "always" for step in steps):
            yield faults.MISFIT_KEY.problem(
                f"The phase '{branch.text}' is a branch, and steps of it are done in every run.",
                branch.place,
                hint="Give each of its steps a 'when', or move the phase to a protocol of its own.",
            )
        return
    known = {*declared.protocols, *_phases(declared), *own}
    if declared.is_complete and branch.text not in known:
        yield faults.UNKNOWN_REFERENCE.problem(
            f"'{shorten(branch.text)}' is no protocol, no phase of this one and no 'protocol/phase'.",
            branch.place,
            hint=suggest(branch.text, known, "There are"),
        )


def _phases(declared: Declared) -> Iterator[str]:
    for name, phases in declared.protocols.items():
        yield from (f"{name}/{phase}" for phase in sorted(phases))


def technique_problems(technique: Text | None, declared: Declared) -> Iterator[Problem]:
    """A hand technique that no protocol tells."""
    if technique is not None and declared.is_complete and technique.text not in declared.techniques:
        yield faults.UNKNOWN_REFERENCE.problem(
            f"'{shorten(technique.text)}' is not 'protocol/phase' of a phase with 'layout: hand-technique'.",
            technique.place,
            hint=suggest(technique.text, declared.techniques, "There are"),
        )
