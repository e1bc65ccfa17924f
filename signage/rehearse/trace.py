"""The state after each step, frozen, for reports and body maps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from signage.model.choices import PersonRole
from signage.rehearse.state.body import HANDS, SITES, SKIN
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Exposure, Person, Worn
from signage.rehearse.state.scene import Scene
from signage.rehearse.techniques import Surface


@dataclass(frozen=True, slots=True)
class WornState:
    """A garment on a person: the level of its four surfaces, and fasteners that are open.

    ``covers`` is what it covers with its parts where they are; ``parts`` are these with their positions.
    """

    garment: str
    outside: Level
    inside: Level
    back: Level
    straps: Level
    open_fasteners: tuple[str, ...]
    covers: tuple[str, ...] = ()
    parts: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class PersonState:
    """A person after a step. ``hands`` run from the skin outwards; ``worn`` in the order of putting on.

    ``bare`` are the parts of the body that nothing covers; ``exposures`` all that happened until now.
    ``hygiene_due`` names what was last removed or handled, if hands were not cleaned since.
    """

    person: str
    role: PersonRole
    zone: str
    hands: tuple[tuple[str, Level], ...]
    worn: tuple[WornState, ...]
    bare: tuple[str, ...]
    exposures: tuple[Exposure, ...]
    soles: Level
    seat: str | None
    held: tuple[str, ...]
    hygiene_due: str | None

    def as_json(self) -> dict[str, Any]:
        """Plain values, levels as words."""
        return {
            "person": self.person,
            "role": self.role,
            "zone": self.zone,
            "hands": [{"layer": layer, "level": level.word} for layer, level in self.hands],
            "worn": [
                {
                    "garment": worn.garment,
                    "outside": worn.outside.word,
                    "inside": worn.inside.word,
                    "back": worn.back.word,
                    "straps": worn.straps.word,
                    "open": list(worn.open_fasteners),
                    **({"parts": dict(worn.parts)} if worn.parts else {}),
                }
                for worn in self.worn
            ],
            "bare": list(self.bare),
            "exposures": [{"step": e.step, "site": e.site, "source": e.source} for e in self.exposures],
            "soles": self.soles.word,
            "seat": self.seat,
            "held": list(self.held),
            "hygiene_due": self.hygiene_due,
        }


@dataclass(frozen=True, slots=True)
class StepState:
    """Everybody after one step, and the fixtures that it used.

    ``fixture_levels`` are the fixtures, waste bags and things that are not clean by now; ``things`` are all
    carried things and tied bags, each with its level and who carries it or where it lies.
    """

    step: str
    people: tuple[PersonState, ...]
    fixtures: tuple[str, ...]
    fixture_levels: tuple[tuple[str, Level], ...]
    things: tuple[tuple[str, Level, str | None], ...] = ()

    def of(self, person: str) -> PersonState:
        """The state of one person; ``KeyError`` if the protocol has no such person."""
        for state in self.people:
            if state.person == person:
                return state
        raise KeyError(person)

    def as_json(self) -> dict[str, Any]:
        """The first person's state with the step; further persons under ``others``."""
        reader, *others = [state.as_json() for state in self.people] or [{}]
        return {
            "step": self.step,
            **reader,
            "fixtures": list(self.fixtures),
            "fixture_levels": {key: level.word for key, level in self.fixture_levels},
            "things": {key: {"level": level.word, "at": place} for key, level, place in self.things},
            "others": others,
        }


def freeze(scene: Scene, step: str) -> StepState:
    """The scene as it is now."""
    fixtures = ((key, state.level) for key, state in scene.fixtures.items())
    things = (
        *((key, bag.level, bag.zone) for key, bag in scene.bags.items()),
        *((key, thing.level, thing.holder or thing.zone) for key, thing in scene.things.items()),
    )
    levels = (*fixtures, *((key, level) for key, level, _place in things))
    unclean = tuple(each for each in levels if each[1])
    people = tuple(_person(person) for person in scene.people.values())
    return StepState(step, people, tuple(dict.fromkeys(scene.used_fixtures)), unclean, things)


def _person(person: Person) -> PersonState:
    covered = {site for worn in person.worn.values() for site in worn.sites}
    gloves = tuple((w.id, w.outside) for w in person.worn.values() if HANDS in w.garment.covers)
    return PersonState(
        person.id,
        person.role,
        person.zone,
        ((SKIN, person.skin), *gloves),
        tuple(_worn(worn) for worn in person.worn.values()),
        tuple(site for site in SITES if site not in covered),
        tuple(person.exposures),
        person.soles,
        person.seat,
        tuple(item for held in person.held for item in held.items),
        person.pending.item if person.pending else None,
    )


def _worn(worn: Worn) -> WornState:
    levels = worn.levels
    return WornState(
        worn.id,
        levels[Surface.OUTSIDE],
        levels[Surface.INSIDE],
        levels[Surface.BACK],
        levels[Surface.STRAPS],
        tuple(sorted(worn.open_fasteners)),
        worn.covered,
        tuple(worn.positions.items()),
    )
