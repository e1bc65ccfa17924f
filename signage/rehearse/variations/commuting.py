"""Why an order may differ: computed from what the steps that changed places have to do with.

Two steps share a thing where both have to do with it and one of them changes it. Steps that share nothing may
change places. Where they share something that was, for both, as it is in the protocol's own order, they may
too; a reviewer should look at what that is. In either case all that they change must end as it ends there.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from signage.model.choices import ActionVerb
from signage.rehearse.state.scene import Scene
from signage.rehearse.variations.footprint import Kind, Shared, changed_unawares, footprint, value_of
from signage.rehearse.variations.stress import Arrangement, Slip, Stress
from signage.rehearse.variations.walked import Branch, WalkedOrder


class Grounds(StrEnum):
    """The reasons that the model can compute, from the strongest to none."""

    ALIKE = "alike"
    NOTHING_SHARED = "nothing-shared"
    CHANGES_NOTHING = "changes-nothing"
    FURTHER_LOOK = "further-look"
    FURTHER_HYGIENE = "further-hygiene"
    SHARED_AS_BEFORE = "shared-as-before"
    RATIONALE = "rationale"
    NONE = "no-reason-found"


@dataclass(frozen=True, slots=True)
class InCommon:
    """A thing that two steps share: how it is for both, or, where it differs, how it was and is.

    ``was`` and ``now`` are the values before the step named first, in the protocol's order and in this one;
    where ``is_left``, they are the values after all steps that changed places, and ``steps`` the first and
    the last of these.
    """

    kind: Kind
    thing: str
    steps: tuple[str, str]
    was: str
    now: str
    is_left: bool = False

    @property
    def differs(self) -> bool:
        """Whether the step finds it in another state than in the protocol's own order."""
        return self.was != self.now


@dataclass(frozen=True, slots=True)
class Reason:
    """Why nothing is found.

    Of the kinds ``disjoint`` no two steps that changed places have to do with the same thing; of those
    ``unchanged`` they do, and neither changes it.
    """

    grounds: Grounds
    disjoint: tuple[Kind, ...] = ()
    unchanged: tuple[Kind, ...] = ()
    in_common: tuple[InCommon, ...] = ()

    @property
    def telling(self) -> tuple[InCommon, ...]:
        """Of the things in common those that differ in more than the steps that share them."""
        return tuple({(each.thing, each.was, each.now): each for each in self.in_common[::-1]}.values())[::-1]

    def as_json(self) -> dict[str, Any]:
        """Plain values."""
        return {
            "reason": self.grounds.value,
            "disjoint": [kind.value for kind in self.disjoint],
            "unchanged": [kind.value for kind in self.unchanged],
            "in_common": [
                {
                    "kind": each.kind.value,
                    "thing": each.thing,
                    "steps": list(each.steps),
                    "was": each.was,
                    "now": each.now,
                    "when": "after" if each.is_left else "before",
                }
                for each in self.in_common
            ],
        }


@dataclass(frozen=True, slots=True)
class _Seen:
    """A step in one order: what it has to do with, how that is before it, and what of it the step changes."""

    before: Mapping[Shared, object]
    changed: frozenset[Shared]


def reason_of(stress: Stress, arrangement: Arrangement) -> Reason:
    """Why one of the clean orders is clean, as far as the model can tell."""
    step = stress.walked.schedule[arrangement.step][1]
    if arrangement.slip is Slip.DROP:
        return Reason(Grounds.RATIONALE if step.rationale else Grounds.NONE)
    other = stress.walked.schedule[min(arrangement.place, len(stress.steps) - 1)][1]
    if arrangement.slip is Slip.EXCHANGE and step.actions == other.actions:
        return Reason(Grounds.ALIKE)
    tell = _done_again if arrangement.slip is Slip.AGAIN else _changed_places
    walks = [walk for walk in stress.walked.walks if walk.is_done(arrangement.step)]
    reasons = [tell(stress, walk, arrangement) for walk in walks]
    return min(reasons, key=lambda reason: _WEAKEST_FIRST.index(reason.grounds), default=Reason(Grounds.NONE))


_WEAKEST_FIRST = tuple(Grounds)[::-1]


def _walk(walk: WalkedOrder, start: int, order: Sequence[int]) -> tuple[dict[int, _Seen], Scene]:
    """Each step of a part of an order, as it is done there, and the scene after the last of them."""
    branch: Branch = walk.branch(start)
    seen = {}
    for index in order:
        things = footprint(branch.scene, walk.schedule[index][1])
        before = {thing: value_of(branch.scene, thing) for thing in things | changed_unawares(branch.scene)}
        branch.do(index)
        changed = frozenset(thing for thing in before if value_of(branch.scene, thing) != before[thing])
        before = {thing: before[thing] for thing in things}
        seen[index] = _Seen(before, changed)
    return seen, branch.scene


def _changes(walk: WalkedOrder, start: int, order: Sequence[int]) -> bool:
    """Whether the last step of a part of an order changes anything that it has to do with."""
    seen, _scene = _walk(walk, start, order)
    return bool(seen[order[-1]].changed)


def _done_again(stress: Stress, walk: WalkedOrder, arrangement: Arrangement) -> Reason:
    """A step that stands twice: what the second time changes, or, done earlier, what it is earlier than."""
    step, place = arrangement.step, arrangement.place
    verbs = {action.verb for action in walk.schedule[step][1].actions}
    if verbs <= _LOOKS:
        return Reason(Grounds.FURTHER_LOOK)
    if verbs <= _LOOKS | {ActionVerb.HYGIENE}:
        return Reason(Grounds.FURTHER_HYGIENE)
    if not _changes(walk, place, arrangement.inside):
        return Reason(Grounds.CHANGES_NOTHING)
    if place < step:
        return _changed_places(stress, walk, Arrangement(Slip.MOVE, step, place))
    if place == step and not _changes(walk, place, (step, step)):
        return Reason(Grounds.CHANGES_NOTHING)
    return Reason(Grounds.NONE)


_LOOKS = frozenset(
    {
        ActionVerb.NEED,
        ActionVerb.INSPECT,
        ActionVerb.CHECK,
        ActionVerb.SAY,
        ActionVerb.WAIT,
        ActionVerb.BRANCH,
    }
)


def _changed_places(stress: Stress, walk: WalkedOrder, arrangement: Arrangement) -> Reason:
    """What the steps share that stand the other way round than in the protocol's own order."""
    start, end = arrangement.window
    own, own_end = _walk(walk, start, range(start, end))
    theirs, their_end = _walk(walk, start, arrangement.inside)
    pairs = _turned_round(arrangement)
    common = [each for pair in pairs for each in _in_common(stress.steps, pair, own, theirs)]
    changed = {thing for seen in (*own.values(), *theirs.values()) for thing in seen.changed}
    names = (stress.steps[arrangement.inside[0]], stress.steps[arrangement.inside[-1]])
    for thing in sorted(changed, key=_order):
        was, now = (_words(value_of(scene, thing)) for scene in (own_end, their_end))
        if was != now:
            common.append(InCommon(thing.kind, thing.words(), names, was, now, is_left=True))
    used_by_both = {thing.kind for pair in pairs for thing in _used_by_both(pair, own, theirs)}
    kinds = {each.kind for each in common}
    unchanged = tuple(k for k in Kind if k in (used_by_both & _CAN_BE_USED_UNCHANGED) - kinds)
    disjoint = tuple(kind for kind in Kind if kind not in {*kinds, *unchanged})
    differing = tuple(dict.fromkeys(each for each in common if each.differs))
    if differing:
        return Reason(Grounds.NONE, disjoint, unchanged, differing)
    grounds = Grounds.SHARED_AS_BEFORE if common else Grounds.NOTHING_SHARED
    return Reason(grounds, disjoint, unchanged, tuple(dict.fromkeys(common)))


def _turned_round(arrangement: Arrangement) -> list[tuple[int, int]]:
    """The pairs of steps that stand the other way round, each as in the protocol's own order."""
    places = {index: place for place, index in enumerate(arrangement.inside)}
    moved = [arrangement.step] if arrangement.slip is Slip.MOVE else [arrangement.step, arrangement.place]
    pairs = {(min(one, other), max(one, other)) for one in moved for other in places if one != other}
    return sorted(pair for pair in pairs if places[pair[0]] > places[pair[1]])


_CAN_BE_USED_UNCHANGED = frozenset({Kind.HANDS, Kind.SITE, Kind.GARMENT, Kind.FIXTURE})
"""Where somebody is, what is due and what was checked count as shared only where a step changes them."""


def _used_by_both(
    pair: tuple[int, int], own: Mapping[int, _Seen], theirs: Mapping[int, _Seen]
) -> set[Shared]:
    one, other = ({*own[index].before, *theirs[index].before} for index in pair)
    return one & other


def _in_common(
    names: tuple[str, ...], pair: tuple[int, int], own: Mapping[int, _Seen], theirs: Mapping[int, _Seen]
) -> Iterator[InCommon]:
    """What two steps share, told of each of them."""
    used = [{*own[index].before, *theirs[index].before} for index in pair]
    changed = [own[index].changed | theirs[index].changed for index in pair]
    both = (used[0] & used[1] & (changed[0] | changed[1])) | (used[0] & changed[1]) | (used[1] & changed[0])
    for thing in sorted(both, key=_order):
        for place, (index, other) in enumerate((pair, pair[::-1])):
            if thing in used[place]:
                was, now = (seen[index].before.get(thing, _NOT_LOOKED_AT) for seen in (own, theirs))
                steps = (names[index], names[other])
                yield InCommon(thing.kind, thing.words(), steps, _words(was), _words(now))


_NOT_LOOKED_AT = "not concerned"


def _order(thing: Shared) -> tuple[str, str, str, str]:
    return thing.kind, thing.person, thing.name, thing.aspect


def _words(value: object) -> str:
    """A value as a report tells it."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, tuple):
        return ", ".join(words for each in value if (words := _words(each))) or "none"
    return "" if value is None else str(value)
