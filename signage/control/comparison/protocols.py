"""Protocols of two states of a library: which came, went or changed, and how."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from signage.control.comparison.edition import Edition
from signage.control.comparison.steps import Change, StepChange, compare_steps
from signage.control.comparison.values import ValueChange, value_changes
from signage.control.comparison.words import TextChange, text_changes
from signage.model.library import Phase, Protocol


@dataclass(frozen=True)
class ProtocolChange:
    """What became of one protocol; ``was`` is the id that it had, ``title`` its source text."""

    protocol: str
    was: str
    code: str
    title: str
    changes: tuple[Change, ...]
    values: tuple[ValueChange, ...] = ()
    texts: tuple[TextChange, ...] = ()
    steps: tuple[StepChange, ...] = ()

    def as_json(self) -> dict[str, object]:
        """The fields of the contract."""
        return {
            "id": self.protocol,
            "was": self.was,
            "title": self.title,
            "changes": [change.value for change in self.changes],
            "fields": [each.as_json() for each in self.values],
            "texts": [each.as_json() for each in self.texts],
            "steps": [each.as_json() for each in self.steps],
        }


def compare_protocols(old: Edition, new: Edition) -> tuple[ProtocolChange, ...]:
    """The protocols that differ: in the order of the new library, then those that are gone."""
    pairs = protocol_pairs(old, new)
    found = [_compared(old, new, pairs.get(each.id), each) for each in new.library.protocols.values()]
    kept = {each.id for each in pairs.values()}
    gone = [
        ProtocolChange(each.id, each.id, each.code, each.title, (Change.REMOVED,))
        for each in old.library.protocols.values()
        if each.id not in kept
    ]
    return (*(each for each in found if each is not None), *gone)


def protocol_pairs(old: Edition, new: Edition) -> dict[str, Protocol]:
    """The old protocol of each new one, by its id: the same id, or else the same code."""
    there, here = old.library.protocols, new.library.protocols
    pairs = {name: there[name] for name in here if name in there}
    by_code = {each.code: each for name, each in there.items() if name not in here}
    for name, protocol in here.items():
        if name not in pairs and protocol.code in by_code:
            pairs[name] = by_code[protocol.code]
    return pairs


def _compared(old: Edition, new: Edition, before: Protocol | None, after: Protocol) -> ProtocolChange | None:
    if before is None:
        return ProtocolChange(after.id, after.id, after.code, after.title, (Change.ADDED,))
    values = (*value_changes(before, after, without=("id", "title", "phases")), *_phase_values(before, after))
    texts = text_changes(old, new, _contexts(before, after))
    steps = compare_steps(old, new, before, after)
    changes = (
        *((Change.RENAMED,) if before.id != after.id else ()),
        *((Change.CHANGED,) if values or texts or steps else ()),
    )
    if not changes:
        return None
    return ProtocolChange(after.id, before.id, after.code, after.title, changes, values, texts, steps)


def _phase_values(before: Protocol, after: Protocol) -> Iterator[ValueChange]:
    """Phases that came or went, and what changed in them beside texts and steps."""
    there = {phase.id: phase for phase in before.phases}
    here = {phase.id: phase for phase in after.phases}
    for name in dict.fromkeys((*there, *here)):
        if name not in here or name not in there:
            yield ValueChange("phase", name if name in there else None, name if name in here else None)
            continue
        without = ("id", "title", "steps", "rule", "rules", "notes")
        for each in value_changes(there[name], here[name], without):
            yield ValueChange(f"phase {name} {each.path}", each.old, each.new)
    if [name for name in there if name in here] != [name for name in here if name in there]:
        yield ValueChange("order of phases", ", ".join(there), ", ".join(here))


def _contexts(before: Protocol, after: Protocol) -> Iterator[tuple[str, str, str]]:
    """The texts of a protocol beside those of its steps: what they are, and where they stood and stand."""
    for name in ("title", "owner"):
        yield name, f"{before.id}/{name}", f"{after.id}/{name}"
    there = {phase.id: phase for phase in before.phases}
    for phase in after.phases:
        for name in dict.fromkeys((*_texts_of(phase), *_texts_of(there.get(phase.id)))):
            where = f"phase/{phase.id}/{name}"
            told = f"phase {phase.id} {name.replace('/', ' ')}"
            yield told, f"{before.id}/{where}", f"{after.id}/{where}"


def _texts_of(phase: Phase | None) -> tuple[str, ...]:
    if phase is None:
        return ()
    return (
        "title",
        *(("rule",) if phase.rule is not None else ()),
        *(f"rules/{number}" for number in range(1, len(phase.rules) + 1)),
        *(f"note/{zone}" for zone in phase.notes),
    )
