"""Steps of two states of a protocol: added, removed, renamed, moved, changed."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from signage.control.comparison.edition import Edition
from signage.control.comparison.values import ValueChange, value_changes
from signage.control.comparison.words import TextChange, text_changes
from signage.model.library import Protocol, Step
from signage.model.messages import step_context
from signage.model.revision import plain

TEXT_FIELDS = ("text", "detail", "posture", "pace", "why", "caution")
"""The fields of a step that readers see as words."""


class Change(StrEnum):
    """What became of something."""

    ADDED = "added"
    REMOVED = "removed"
    RENAMED = "renamed"
    MOVED = "moved"
    CHANGED = "changed"


@dataclass(frozen=True, slots=True)
class Position:
    """Where a step stands: its phase, and its number in it from 1."""

    phase: str
    number: int

    def __str__(self) -> str:
        """Such as ``take-off 7``."""
        return f"{self.phase} {self.number}"


@dataclass(frozen=True)
class StepChange:
    """What became of one step; ``was`` is the name that it had, ``headline`` its source text.

    ``old`` and ``new`` are its positions, None where it is not. A step that only stands elsewhere because
    others came or went is not moved.
    """

    step: str
    was: str
    headline: str
    changes: tuple[Change, ...]
    old: Position | None = None
    new: Position | None = None
    values: tuple[ValueChange, ...] = ()
    texts: tuple[TextChange, ...] = ()

    def as_json(self) -> dict[str, object]:
        """The fields of the contract."""
        return {
            "step": self.step,
            "was": self.was,
            "text": self.headline,
            "changes": [change.value for change in self.changes],
            "old": _position_json(self.old),
            "new": _position_json(self.new),
            "fields": [each.as_json() for each in self.values],
            "texts": [each.as_json() for each in self.texts],
        }


def _position_json(position: Position | None) -> dict[str, str | int] | None:
    return None if position is None else {"phase": position.phase, "number": position.number}


def compare_steps(old: Edition, new: Edition, before: Protocol, after: Protocol) -> tuple[StepChange, ...]:
    """The steps that differ, in the order of the new protocol, each removed one before what followed it."""
    there = {step.id: step for step in before.steps}
    here = {step.id: step for step in after.steps}
    names = _names(there, here)
    moved = _moved(before, after, names)
    old_places, new_places = positions(before), positions(after)
    found: list[StepChange] = []
    for step in after.steps:
        if step.id not in names:
            texts = _new_texts(new, after, step)
            found.append(
                StepChange(step.id, step.id, step.text, (Change.ADDED,), new=new_places[step.id], texts=texts)
            )
            continue
        was = there[names[step.id]]
        contexts = (
            []
            if step.again is not None or was.again is not None
            else [(f, step_context(before, was, f), step_context(after, step, f)) for f in TEXT_FIELDS]
        )
        texts = text_changes(old, new, contexts)
        values = value_changes(was, step, without=("id", *TEXT_FIELDS))
        changes = (
            *((Change.RENAMED,) if was.id != step.id else ()),
            *((Change.MOVED,) if step.id in moved else ()),
            *((Change.CHANGED,) if texts or values else ()),
        )
        if changes:
            found.append(
                StepChange(
                    step.id,
                    was.id,
                    step.text,
                    changes,
                    old_places[was.id],
                    new_places[step.id],
                    values,
                    texts,
                )
            )
    kept = set(names.values())
    for step in before.steps:
        if step.id not in kept:
            gone = StepChange(step.id, step.id, step.text, (Change.REMOVED,), old=old_places[step.id])
            found.insert(_place_of_removed(before, step, names, found), gone)
    return tuple(found)


def _new_texts(new: Edition, protocol: Protocol, step: Step) -> tuple[TextChange, ...]:
    """The words of a step that was not there, in its source language; other languages are told of as gaps."""
    source = new.library.source_locale
    fields = ((name, getattr(step, name)) for name in TEXT_FIELDS)
    return tuple(
        TextChange(source, name, None, new.text(source, step_context(protocol, step, name)) or text)
        for name, text in fields
        if text is not None
    )


def _place_of_removed(
    before: Protocol, step: Step, names: Mapping[str, str], found: Sequence[StepChange]
) -> int:
    """Before the first change of a step that followed it."""
    followers = [each.id for each in before.steps]
    followers = followers[followers.index(step.id) + 1 :]
    places = [
        index
        for index, each in enumerate(found)
        if names.get(each.step) in followers or (Change.REMOVED in each.changes and each.step in followers)
    ]
    return min(places, default=len(found))


def positions(protocol: Protocol) -> dict[str, Position]:
    """Where each step stands."""
    return {
        step.id: Position(phase.id, number)
        for phase in protocol.phases
        for number, step in enumerate(phase.steps, start=1)
    }


def _names(there: Mapping[str, Step], here: Mapping[str, Step]) -> dict[str, str]:
    """The old name of every step that was there before.

    A step under a new name is the first of those that are gone whose source text, or else whose movements
    and picture, it has.
    """
    names = {name: name for name in here if name in there}
    gone = [step for name, step in there.items() if name not in here]
    for is_alike in (_says_the_same, _does_the_same):
        for step in here.values():
            if step.id in names:
                continue
            like = next((each for each in gone if is_alike(each, step)), None)
            if like is not None:
                names[step.id] = like.id
                gone.remove(like)
    return names


def _says_the_same(one: Step, other: Step) -> bool:
    return one.text == other.text and one.actions[0].verb is other.actions[0].verb


def _does_the_same(one: Step, other: Step) -> bool:
    return one.picture == other.picture and bool(plain(one.actions) == plain(other.actions))


def _moved(before: Protocol, after: Protocol, names: Mapping[str, str]) -> frozenset[str]:
    """The fewest steps that must have moved: those beside the longest row that kept its order.

    A step of another phase has moved whatever its order (longest increasing subsequence, patience sorting).
    """
    order = {step.id: number for number, step in enumerate(before.steps)}
    phase_before = {step.id: phase.id for phase in before.phases for step in phase.steps}
    renamed_phases = _phases_renamed(before, after, names, phase_before)
    stayed, moved = [], set()
    for phase in after.phases:
        for step in phase.steps:
            if step.id not in names:
                continue
            was = phase_before[names[step.id]]
            if was != phase.id and renamed_phases.get(was) != phase.id:
                moved.add(step.id)
            else:
                stayed.append(step.id)
    row = _longest_rising([order[names[name]] for name in stayed])
    return frozenset(moved | {name for index, name in enumerate(stayed) if index not in row})


def _phases_renamed(
    before: Protocol, after: Protocol, names: Mapping[str, str], phase_before: Mapping[str, str]
) -> dict[str, str]:
    """Phases that are gone, by the new phase that all of their steps that are left stand in."""
    known = {phase.id for phase in after.phases}
    old = {phase.id for phase in before.phases}
    into: dict[str, set[str]] = {}
    for phase in after.phases:
        for step in phase.steps:
            if step.id in names:
                into.setdefault(phase_before[names[step.id]], set()).add(phase.id)
    return {
        was: next(iter(now))
        for was, now in into.items()
        if was not in known and len(now) == 1 and not now & old
    }


def _longest_rising(values: Sequence[int]) -> frozenset[int]:
    """The indices of a longest row of rising values."""
    ends: list[int] = []
    places: list[int] = []
    before: list[int] = []
    for index, value in enumerate(values):
        at = bisect_left(ends, value)
        before.append(places[at - 1] if at else -1)
        if at == len(ends):
            ends.append(value)
            places.append(index)
        else:
            ends[at], places[at] = value, index
    row, index = set(), places[-1] if places else -1
    while index >= 0:
        row.add(index)
        index = before[index]
    return frozenset(row)
