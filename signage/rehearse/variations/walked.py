"""A protocol walked once, with the scene before every step kept, so that other orders share what they can.

An order that differs from step 20 on begins with a copy of the scene before step 20; once its scene is alike
the one that was kept at the same step, all that follows is known.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass

from signage.model.choices import ActionVerb, StepCondition
from signage.rehearse.finding import Finding, Identity
from signage.rehearse.movements import Last, Movement, continues, plan_step
from signage.rehearse.references import setting_faults
from signage.rehearse.rehearsal import ALWAYS_SHOWN, Found, conditions_of, find, merge
from signage.rehearse.state.people import Exposure, Moment
from signage.rehearse.state.scene import Scene
from signage.rehearse.state.setting import Schedule, Setting
from signage.rehearse.walkthrough import Walk, begin, do_step, exposures_of, finish


@dataclass(frozen=True, slots=True)
class _Kept:
    """The scene before a step, the movement before it, and how much was found until then."""

    scene: Scene
    before: Last | None
    found_count: int


@dataclass(frozen=True, slots=True)
class _Known:
    """What follows from a state: what is found, and whom it exposes."""

    found: Sequence[tuple[Moment | None, Finding]]
    exposures: Sequence[Exposure]


class WalkedOrder:
    """One walk through a schedule, under some conditions, that others may leave at any step.

    ``skipped`` are the positions of steps that are not done, for their references or their condition.
    """

    def __init__(
        self, setting: Setting, schedule: Schedule, without: Collection[str], conditions: Collection[str]
    ) -> None:
        scene, faulty = begin(setting, schedule, without)
        wanted = {StepCondition.ALWAYS, *conditions}
        self.schedule = schedule
        self.is_well_formed = not any(finding.code in ALWAYS_SHOWN for finding in scene.findings())
        self._done = tuple(
            index not in faulty and step.when in wanted and bool(step.actions)
            for index, (_phase, step) in enumerate(schedule)
        )
        self._planned: dict[tuple[int, bool], tuple[Movement, ...]] = {}
        self._last_done = max((i for i, is_done in enumerate(self._done) if is_done), default=-1)
        self._kept: list[_Kept] = []
        branch = Branch(self, scene, None)
        for index in range(len(schedule)):
            self._kept.append(_Kept(branch.scene.copy(), branch.before, branch.scene.found_count))
            branch.do(index)
        finish(branch.scene)
        self.walk = Walk(branch.scene.findings(), exposures_of(branch.scene), ())
        self._end = branch.scene
        scenes = [kept.scene for kept in self._kept] + [self._end]
        actions = [action for _phase, step in schedule for action in step.actions]
        self._emptied = {each.fixture for each in actions if each.verb is ActionVerb.REPLACE}
        self._most_held = {key: max(each.fixtures[key].holds for each in scenes) for key in scene.fixtures}

    def branch(self, index: int) -> Branch:
        """Another order that begins to differ at this step."""
        if index == len(self.schedule):
            last = self.branch(index - 1)
            last.do(index - 1)
            return last
        kept = self._kept[index]
        return Branch(self, kept.scene.copy(), kept.before)

    def is_done(self, index: int) -> bool:
        """Whether this walk does the step at all."""
        return self._done[index]

    def movements(self, index: int, before: Last | None) -> tuple[Movement, ...]:
        """The movements of a step that is done after ``before``."""
        phase, step = self.schedule[index]
        is_continued = continues(before, phase, step)
        known = self._planned.get((index, is_continued))
        if known is None:
            known = plan_step(index, phase, step, is_continued=is_continued)
            self._planned[index, is_continued] = known
        return known

    def known_after(self, branch: Branch, index: int) -> _Known | None:
        """What will happen from this step on, if the branch has come back to this walk; else None."""
        if index > self._last_done:
            return None
        kept = self._kept[index]
        while not self._done[index]:
            index += 1
        phase, step = self.schedule[index]
        if continues(branch.before, phase, step) != continues(kept.before, phase, step):
            return None
        if not branch.scene.is_alike(kept.scene) or self._may_overflow(branch.scene, kept.scene):
            return None
        later = [
            exposure
            for key, person in self._end.people.items()
            for exposure in person.exposures[len(kept.scene.people[key].exposures) :]
        ]
        return _Known(self._end.found_since(kept.found_count), later)

    def _may_overflow(self, scene: Scene, kept: Scene) -> bool:
        """Whether bins that are not as full as they were could hold too much later, or could have then."""
        for key, state in scene.fixtures.items():
            held, capacity = kept.fixtures[key].holds, state.fixture.capacity
            if capacity is None or state.holds == held:
                continue
            most = self._most_held[key]
            if key in self._emptied or max(most, state.holds + most - held) > capacity:
                return True
        return False


@dataclass(slots=True)
class Branch:
    """An order under way that has left a walk; it does that walk's steps in its own order."""

    walk: WalkedOrder
    scene: Scene
    before: Last | None

    def copy(self) -> Branch:
        """The same order so far, to go on in another way."""
        return Branch(self.walk, self.scene.copy(), self.before)

    def do(self, index: int) -> None:
        """Does one step of the walk."""
        if self.walk.is_done(index):
            do_step(self.scene, self.walk.movements(index, self.before))
            phase, step = self.walk.schedule[index]
            self.before = (phase, step.actions[-1])

    def does(self, indices: Iterable[int], known: Collection[Identity]) -> bool:
        """Does steps of the walk until something is found that is not ``known``; whether nothing was."""
        for index in indices:
            count = self.scene.found_count
            self.do(index)
            if self._is_new_since(count, known):
                return False
        return True

    def passes(self, index: int, known: Collection[Identity]) -> bool:
        """Whether nothing that is not ``known`` is found from this step of the walk to the end."""
        for position in range(index, len(self.walk.schedule)):
            if self.walk.known_after(self, position) is not None:
                return True
            if not self.does((position,), known):
                return False
        count = self.scene.found_count
        finish(self.scene)
        return not self._is_new_since(count, known)

    def _is_new_since(self, count: int, known: Collection[Identity]) -> bool:
        found = self.scene.found_since(count)
        return any(finding.identity not in known for _moment, finding in found)

    def go_on(self, index: int) -> frozenset[Exposure]:
        """Does the steps of the walk from this one to the end, or knows what they would find.

        The result are all exposures of the order, those from before included.
        """
        for position in range(index, len(self.walk.schedule)):
            known = self.walk.known_after(self, position)
            if known is not None:
                self.scene.find_also(known.found)
                return exposures_of(self.scene) | frozenset(known.exposures)
            self.do(position)
        finish(self.scene)
        return exposures_of(self.scene)


class WalkedProtocol:
    """A schedule walked under each of its conditions, and asked about other orders of its steps.

    Every answer equals that of ``rehearsal.find``, of which it saves the shared part. Where people or ward
    are faulty, a step stands twice or a reference is faulty, nothing is shared.
    """

    def __init__(self, setting: Setting, schedule: Schedule, without: Collection[str] = ()) -> None:
        self.setting, self.schedule = setting, schedule
        self._without = without
        self.walks: tuple[WalkedOrder, ...] = ()
        if schedule and not setting_faults(setting):
            walks = [WalkedOrder(setting, schedule, without, each) for each in conditions_of(schedule)]
            self.found = merge(schedule, [walk.walk for walk in walks])
            if all(walk.is_well_formed for walk in walks):
                self.walks = tuple(walks)
        else:
            self.found = find(setting, schedule, without)
        self._index = {id(step): index for index, (_phase, step) in enumerate(schedule)}

    def find(self, order: Schedule) -> Found:
        """What is found in another order of the steps; some may be missing."""
        own = [self._index.get(id(step)) for _phase, step in order]
        positions = [index for index in own if index is not None]
        has_known_steps_once = len(set(positions)) == len(own)
        if not self.walks or not has_known_steps_once or self._has_other_phase(order, positions):
            return find(self.setting, order, self._without)
        start = _length_of_shared(positions, range(len(self.schedule)))
        rest = len(positions) - start
        end = min(rest, _length_of_shared(positions[::-1], range(len(self.schedule) - 1, start - 1, -1)))
        places = {step.id: place for place, (_phase, step) in enumerate(order)}
        walks = []
        for walk in self.walks:
            branch = walk.branch(start)
            for index in positions[start : len(positions) - end]:
                branch.do(index)
            exposures = branch.go_on(len(self.schedule) - end)
            walks.append(Walk(branch.scene.findings(places), exposures, ()))
        return merge(order, walks)

    def _has_other_phase(self, order: Schedule, positions: Sequence[int]) -> bool:
        """Whether a step stands in another phase than in the protocol."""
        pairs = zip(order, positions, strict=True)
        return any(phase is not self.schedule[index][0] for (phase, _step), index in pairs)


def _length_of_shared(one: Sequence[int], other: Sequence[int]) -> int:
    """How many of the first entries two sequences share."""
    length = 0
    for left, right in zip(one, other, strict=False):
        if left != right:
            break
        length += 1
    return length
