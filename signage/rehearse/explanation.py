"""Why something is found: what was where since which step, and who did it, read from the trace."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from signage.model.choices import PersonRole
from signage.rehearse.finding import Finding
from signage.rehearse.rules.conduct import ENDS_ELSEWHERE, NO_OBSERVER, OUT_OF_SIGHT
from signage.rehearse.rules.layering import NEVER_REMOVED
from signage.rehearse.rules.places import CONTAMINATED_SOLES
from signage.rehearse.state.body import SITES, SKIN
from signage.rehearse.state.level import Level
from signage.rehearse.state.setting import Setting
from signage.rehearse.trace import PersonState, StepState, WornState

_OF_HANDS = ("CT-", "HH-", "RO-1")
"""Codes, or their beginnings, of rules for which it counts what is on the hands."""

_AT_THE_END = frozenset({NEVER_REMOVED.code, ENDS_ELSEWHERE.code})
_OF_SIGHT = frozenset({NO_OBSERVER.code, OUT_OF_SIGHT.code})

_OF_PLACES = ("ZN-", "BN-", "FX-", "RP-", "RO-", "EN-", "OR-")
"""Codes of rules for which it counts where somebody is."""


@dataclass(frozen=True, slots=True)
class Fact:
    """One thing that was so at a finding: ``state`` is since ``step``, which ``by`` did.

    ``step`` is None for what was so from the start. ``name`` is how a message calls the thing.
    """

    thing: str
    name: str
    state: str
    step: str | None
    by: tuple[str, ...] = ()

    def __str__(self) -> str:
        """Such as ``hood: contaminated outside since step enter-room (wearer)``."""
        if self.step is None:
            return f"{self.name}: {self.state} from the start"
        return f"{self.name}: {self.state} since step {self.step} ({', '.join(self.by)})"

    def as_json(self) -> dict[str, Any]:
        """Plain values; ``since`` is null for what was so from the start."""
        return {
            "thing": self.thing,
            "name": self.name,
            "state": self.state,
            "since": self.step,
            "by": list(self.by),
        }


@dataclass(frozen=True)
class History:
    """The states of one rehearsal, the first of them before any step."""

    setting: Setting
    states: tuple[StepState, ...]

    def explain(self, finding: Finding) -> tuple[Fact, ...]:
        """What led to a finding; nothing where no step was rehearsed or it is about nobody."""
        end = self._position(finding)
        if end is None or (finding.step is finding.person is None and finding.item not in self._people):
            return ()
        return tuple(dict.fromkeys(self._facts(finding, end)))

    def _position(self, finding: Finding) -> int | None:
        """Where the state after a step stands; the first, or the last, for what is found at no step."""
        if not self.states:
            return None
        if finding.step is None:
            return len(self.states) - 1 if finding.code in _AT_THE_END else 0
        places = (place for place, state in enumerate(self.states) if place and state.step == finding.step)
        return next(places, None)

    def _facts(self, finding: Finding, end: int) -> Iterator[Fact]:
        before = max(0, end - 1)
        if finding.person is not None:
            yield from self._hands_and_place(finding, finding.person, before)
        for thing in dict.fromkeys(each for each in (finding.item, *finding.others) if each is not None):
            yield from self._of_thing(finding, thing, before, end)

    def _hands_and_place(self, finding: Finding, person: str, before: int) -> Iterator[Fact]:
        """The outermost hand layer and hygiene that is due, or the zone and the seat."""
        if finding.code.startswith(_OF_HANDS):
            layer = self.states[before].of(person).hands[-1][0]
            name = self.setting.name(layer)
            yield self._since(layer, name, before, person, _is_outermost_on_hands(layer))
            yield self._since(layer, name, before, person, _level_of_hand(layer))
            if self.states[before].of(person).hygiene_due is not None:
                yield self._since(person, person, before, person, self._hygiene_due)
        if finding.code.startswith(_OF_PLACES):
            yield self._since(person, person, before, person, self._zone)
            if self.states[before].of(person).seat is not None:
                yield self._since(person, person, before, person, self._seat)
        if finding.code in _OF_SIGHT:
            watching = (each for each in self.setting.protocol.people if each.role is PersonRole.OBSERVER)
            yield from (self._since(each.id, each.id, before, each.id, self._zone) for each in watching)
        if finding.code == CONTAMINATED_SOLES.code:
            yield self._since("soles", "soles", before, person, _soles)

    def _of_thing(self, finding: Finding, thing: str, before: int, end: int) -> Iterator[Fact]:
        """A garment, a fixture or a part of the body, before the step and, if it changed, after it."""
        if thing in self._handled:
            places = dict.fromkeys((before, end))
            yield from (self._since_of_fixture(thing, place) for place in places)
        elif thing in self.setting.garments:
            person = self._wearer(finding, thing, before, end)
            yield from self._thing_or_bag(thing, before)
            if person is None:
                return
            of_worn = (_is_worn(thing), _outside_of(thing), _open_at(thing))
            is_wearable = bool(self.setting.garments[thing].covers)
            aspects = (*(of_worn if is_wearable else ()), _in_hand(thing))
            yield from self._before_and_after(thing, before, end, person, aspects)
        elif thing in self.setting.ward.fixtures:
            yield self._since_of_fixture(thing, before)
        elif any(thing == key for key, _level, _place in self.states[before].things):
            yield from self._thing_or_bag(thing, before)
        elif thing in self._people:
            yield self._since(thing, thing, end, thing, self._zone)
        elif thing in SITES and finding.person is not None:
            yield from self._before_and_after(thing, before, end, finding.person, (_bare_at(thing),))

    def _wearer(self, finding: Finding, item: str, before: int, end: int) -> str | None:
        """Who wears an item before or after the step; else whom the finding is about."""
        for state in (self.states[before], self.states[end]):
            for person in state.people:
                if any(worn.garment == item for worn in person.worn):
                    return person.person
        return finding.person

    def _before_and_after(
        self, thing: str, before: int, end: int, person: str, aspects: Sequence[Aspect]
    ) -> Iterator[Fact]:
        name = self.setting.name(thing)
        for place in dict.fromkeys((before, end)):
            facts = (self._since(thing, name, place, person, aspect) for aspect in aspects)
            yield from (fact for fact in facts if fact.state)

    def _since(self, thing: str, name: str, place: int, person: str, aspect: Aspect) -> Fact:
        """Since when an aspect of a person is as it is at a place."""
        return self._fact(thing, name, place, lambda state: aspect(state.of(person)))

    def _since_of_fixture(self, fixture: str, place: int) -> Fact:
        def level(state: StepState) -> str:
            return dict(state.fixture_levels).get(fixture, Level.CLEAN).word

        return self._fact(fixture, self.setting.name(fixture), place, level)

    def _thing_or_bag(self, thing: str, place: int) -> Iterator[Fact]:
        """Where a thing or a tied bag is, and its level."""

        def where(state: StepState) -> str:
            at = next((at for key, _level, at in state.things if key == thing), None)
            return f"with {at}" if at in self._people else f"in zone {self.setting.name(at)}" if at else ""

        def level(state: StepState) -> str:
            return next((level.word for key, level, _at in state.things if key == thing), "")

        facts = (self._fact(thing, self.setting.name(thing), place, value) for value in (where, level))
        yield from (fact for fact in facts if fact.state)

    def _fact(self, thing: str, name: str, place: int, value: Callable[[StepState], str]) -> Fact:
        now = value(self.states[place])
        while place and value(self.states[place - 1]) == now:
            place -= 1
        if not place:
            return Fact(thing, name, now, None)
        step = self.states[place].step
        return Fact(thing, name, now, step, self._actors.get(step, ()))

    @property
    def _handled(self) -> frozenset[str]:
        """Bags and things, which nobody wears and which have one surface only."""
        never_worn = (key for key, garment in self.setting.garments.items() if not garment.covers)
        return frozenset((*never_worn, *self.setting.protocol.things))

    @property
    def _people(self) -> frozenset[str]:
        return frozenset(actor.id for actor in self.setting.protocol.people)

    @property
    def _actors(self) -> Mapping[str, tuple[str, ...]]:
        """Who does each step."""
        return {
            step.id: tuple(dict.fromkeys(action.by for action in step.actions))
            for step in self.setting.protocol.steps
        }

    def _zone(self, person: PersonState) -> str:
        return f"in zone {self.setting.name(person.zone)}"

    def _seat(self, person: PersonState) -> str:
        return f"on {self.setting.name(person.seat)}" if person.seat is not None else "standing"

    def _hygiene_due(self, person: PersonState) -> str:
        return f"hand hygiene due after {self.setting.name(person.hygiene_due)}" if person.hygiene_due else ""


Aspect = Callable[[PersonState], str]
"""What is told of a person; empty where there is nothing to tell."""


def _worn_state(person: PersonState, item: str) -> WornState | None:
    return next((worn for worn in person.worn if worn.garment == item), None)


def _is_worn(item: str) -> Aspect:
    return lambda person: "not worn" if _worn_state(person, item) is None else "worn"


def _outside_of(item: str) -> Aspect:
    """The level of the outside; nothing for what is not worn or clean."""

    def told(person: PersonState) -> str:
        worn = _worn_state(person, item)
        return f"{worn.outside.word} outside" if worn is not None and worn.outside else ""

    return told


def _open_at(item: str) -> Aspect:
    def told(person: PersonState) -> str:
        worn = _worn_state(person, item)
        return f"{', '.join(worn.open_fasteners)} open" if worn is not None and worn.open_fasteners else ""

    return told


def _in_hand(item: str) -> Aspect:
    return lambda person: "in the hand" if item in person.held else ""


def _soles(person: PersonState) -> str:
    return person.soles.word


def _bare_at(site: str) -> Aspect:
    return lambda person: "bare" if site in person.bare else "covered"


def _is_outermost_on_hands(layer: str) -> Aspect:
    def told(person: PersonState) -> str:
        is_outermost = person.hands[-1][0] == layer
        return "bare" if is_outermost and layer == SKIN else "outermost on the hands" if is_outermost else ""

    return told


def _level_of_hand(layer: str) -> Aspect:
    def told(person: PersonState) -> str:
        levels = dict(person.hands)
        return levels[layer].word if layer in levels else ""

    return told


def told_facts(facts: Sequence[Fact]) -> list[str]:
    """The facts as lines, those of one thing on one line."""
    by_name: dict[str, list[str]] = {}
    for fact in facts:
        by_name.setdefault(fact.name, []).append(str(fact).removeprefix(f"{fact.name}: "))
    return [f"{name}: {'; '.join(states)}" for name, states in by_name.items()]
