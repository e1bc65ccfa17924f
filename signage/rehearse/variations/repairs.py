"""Single edits that would clear a finding: suggestions to an author, never applied by themselves."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from itertools import islice

from signage.ground.problem import Severity
from signage.model.choices import ActionVerb
from signage.model.library import Action, Library, Protocol, Step
from signage.rehearse.finding import Finding, Identity
from signage.rehearse.local_policy import LocalPolicy
from signage.rehearse.rehearsal import find
from signage.rehearse.state.setting import Setting, prepare, schedule_of
from signage.rehearse.variations.edits import Edit, add_step, change_action, delete_step, move_step
from signage.rehearse.variations.missing_movements import (
    fixtures_in_order,
    hand_layers,
    least_seconds,
    missing_movements,
    words_of,
)

_MOST_TRIED = 400
"""How many edits are rehearsed for one finding before the search ends."""

_DELETION_CURES = frozenset({"LY-5", "LY-6", "RO-1", "RP-3", "CT-5", "EN-7"})


@dataclass(frozen=True)
class Repair:
    """One edit after which the finding is gone and no new S1 or S2 has come."""

    finding: Finding
    kind: str
    description: str
    protocol: Protocol


def suggest_repairs(
    library: Library, protocol: Protocol, finding: Finding, limit: int = 3
) -> tuple[Repair, ...]:
    """At most ``limit`` single edits that clear a finding, nearest first, each proved by rehearsing it.

    Of all edits that clear it, those are given that leave the fewest other findings. The tool does not
    know which of them local policy wants; the author chooses, or does something else.
    """
    setting = prepare(library, protocol)
    known = {each.identity for each in find(setting, schedule_of(protocol)).findings}
    search = _Search(library, protocol, setting, finding)
    cures: dict[int, list[Repair]] = {}
    for edit in islice(search.edits(), _MOST_TRIED):
        left = find(prepare(library, edit.protocol), schedule_of(edit.protocol)).findings
        if _is_cured(left, finding, known):
            repair = Repair(finding, edit.kind, edit.description, edit.protocol)
            cures.setdefault(len(left), []).append(repair)
    return tuple(cures[min(cures)][:limit]) if cures else ()


def _is_cured(left: Sequence[Finding], finding: Finding, known: Collection[Identity]) -> bool:
    """Whether the finding is gone and nothing of weight is new."""
    return all(
        each.identity != finding.identity and (each.identity in known or each.severity is Severity.S3)
        for each in left
    )


def _nearest_first(start: int, count: int) -> list[int]:
    """The positions other than ``start``, by distance."""
    others = (position for position in range(count) if position != start)
    return sorted(others, key=lambda position: (abs(position - start), position))


class _Search:
    """The edits that are worth a try for one finding, the smallest first."""

    def __init__(self, library: Library, protocol: Protocol, setting: Setting, finding: Finding) -> None:
        self.protocol = protocol
        self.setting = setting
        self.finding = finding
        self.policy = LocalPolicy(library.policy)
        self.steps = protocol.steps
        names = [step.id for step in self.steps]
        self.position = names.index(finding.step) if finding.step in names else len(names)
        self.step = self.steps[self.position] if self.position < len(names) else None

    def edits(self) -> Iterator[Edit]:
        """All of them, lazily."""
        if self.step is not None:
            yield from self._changes(self.step)
            if self.finding.code in _DELETION_CURES:
                yield delete_step(self.protocol, self.position)
            yield from self._moves()
        yield from self._additions()

    def _changes(self, step: Step) -> Iterator[Edit]:
        """Other values in the fields of the step."""
        for index, action in enumerate(step.actions):
            for field, values in self._values(action).items():
                for value in values:
                    if value != getattr(action, field):
                        yield change_action(self.protocol, step, index, **{field: value})

    def _values(self, action: Action) -> dict[str, tuple[object, ...]]:
        """Values that a field of this movement could have instead."""
        fixtures = fixtures_in_order(self.setting)
        garment = self.setting.garments.get(action.item or "")
        if action.verb is ActionVerb.HYGIENE:
            return {
                "layer": hand_layers(self.setting),
                "seconds": (least_seconds(self.policy, action.agent),),
                "agent": ("rub", "wash"),
            }
        if action.verb is ActionVerb.DOFF and garment is not None:
            bins = tuple(f.id for f in fixtures if garment.id in f.accepts)
            return {"bin": bins, "technique": (garment.technique,) if garment.technique else ()}
        if action.verb is ActionVerb.SIT:
            return {"chair": tuple(f.id for f in fixtures if f.kind == "chair")}
        if action.verb in (ActionVerb.MAT, ActionVerb.DISINFECT):
            times = {f.contact_seconds for f in fixtures if f.contact_seconds is not None}
            return {"seconds": tuple(sorted(times))}
        if action.verb is ActionVerb.DON:
            return {"fresh": (True,)}
        return {}

    def _moves(self) -> Iterator[Edit]:
        """The step, or the one before it, at other positions, the nearest first."""
        for start in (self.position, self.position - 1):
            if start < 0:
                continue
            for end in _nearest_first(start, len(self.steps)):
                yield move_step(self.protocol, start, end)

    def _additions(self) -> Iterator[Edit]:
        """A new step, first at the place of the finding, then further and further from it."""
        last = len(self.steps)
        positions = sorted(range(last + 1), key=lambda p: (abs(p - self.position), p != self.position + 1))
        for action in missing_movements(self.setting, self.finding, self.policy):
            for position in positions:
                yield add_step(self.protocol, position, action, words_of(self.setting, action))
