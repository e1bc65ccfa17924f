"""What a step has to do with: hand layers, parts of the body, kit, fixtures, zones, duties and checks."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from signage.model.choices import ActionVerb, PersonRole
from signage.model.library import Action, Step
from signage.rehearse.state.body import HANDS, SEAT_SITES, SKIN
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Person, Worn
from signage.rehearse.state.scene import Scene


class Kind(StrEnum):
    """The kinds of things that two steps can share."""

    HANDS = "hand layer"
    SITE = "body site"
    GARMENT = "garment"
    FIXTURE = "fixture or thing"
    ZONE = "zone change"
    DUTY = "pending duty"
    CHECK = "check"


@dataclass(frozen=True, slots=True)
class Shared:
    """One thing that a step has to do with. ``aspect`` tells apart whether kit is worn and how it is."""

    kind: Kind
    person: str
    name: str = ""
    aspect: str = ""

    def words(self) -> str:
        """The thing as a report calls it."""
        return self.name.replace("-", " ") if self.name else f"{self.kind} of {self.person}"


_HANDS_FREE = frozenset(
    {
        ActionVerb.NEED,
        ActionVerb.SAY,
        ActionVerb.WAIT,
        ActionVerb.BRANCH,
        ActionVerb.MOVE,
        ActionVerb.SIT,
        ActionVerb.STAND,
        ActionVerb.MAT,
    }
)
_DUTY_DOES_NOT_MATTER = frozenset(
    {
        ActionVerb.NEED,
        ActionVerb.INSPECT,
        ActionVerb.SAY,
        ActionVerb.WAIT,
        ActionVerb.STAND,
        ActionVerb.BRANCH,
        ActionVerb.HYGIENE,
    }
)
_CHANGES_KIT = frozenset(
    {
        ActionVerb.DON,
        ActionVerb.DOFF,
        ActionVerb.FASTEN,
        ActionVerb.UNFASTEN,
        ActionVerb.ADJUST,
        ActionVerb.TOUCH,
        ActionVerb.RAISE,
        ActionVerb.LOWER,
        ActionVerb.CHANGE_CLOTHES,
    }
)
_SEATING = frozenset({ActionVerb.SIT, ActionVerb.STAND, ActionVerb.MOVE})
_OBSERVED = "observer-check"
_FIRST_KIT = "protective-kit-worn-yet"
"""Whether any protective kit is on yet, which needs must come before."""
_WET = "wet"
_OUTERMOST = "outermost"
"""What lies outermost on a part of the body, beside the level that is met there."""


def footprint(scene: Scene, step: Step) -> frozenset[Shared]:
    """Everything that a step done in this scene has to do with, whether it changes or only needs it."""
    return frozenset(each for action in step.actions for each in _of_action(scene, action))


def changed_unawares(scene: Scene) -> frozenset[Shared]:
    """What steps can change without needing it to be so or so.

    These are what is on the hands, hygiene that is due, and the first kit that anybody puts on.
    """
    return frozenset(
        each
        for person in scene.people
        for each in (
            Shared(Kind.HANDS, person),
            Shared(Kind.DUTY, person),
            Shared(Kind.CHECK, person, _FIRST_KIT),
        )
    )


def _of_action(scene: Scene, action: Action) -> Iterator[Shared]:
    by = scene.people[action.by]
    on = scene.people[action.on] if action.on else by
    yield Shared(Kind.ZONE, by.id)
    if on is not by:
        yield Shared(Kind.ZONE, on.id)
    if action.verb not in _DUTY_DOES_NOT_MATTER:
        yield Shared(Kind.DUTY, by.id)
    if action.verb is ActionVerb.HYGIENE:
        yield Shared(Kind.HANDS, on.id, aspect=_OUTERMOST)
    elif action.verb not in _HANDS_FREE and not (action.verb is ActionVerb.INSPECT and by is on):
        yield Shared(Kind.HANDS, by.id)
    yield from _kit(scene, action, on)
    yield from _body(scene, action, by, on)
    yield from _fixtures(scene, action, by, on)
    yield from _checks(scene, action, by, on)


def _kit(scene: Scene, action: Action, on: Person) -> Iterator[Shared]:
    """The item, the parts of the body where it is handled, and what lies beneath or over it."""
    changed = tuple(on.worn) if action.verb is ActionVerb.CHANGE_CLOTHES else ()
    for item in (action.item, action.together, action.target, *changed):
        garment = scene.setting.garments.get(item or "")
        if garment is None:
            continue
        yield Shared(Kind.GARMENT, on.id, garment.id, "worn")
        yield Shared(Kind.GARMENT, on.id, garment.id, "state")
        sites = garment.fastener_sites.get(action.part or "") or sorted(scene.layers.sites[garment.id])
        yield from _sites(on, sites)
        yield from (Shared(Kind.SITE, on.id, site, _OUTERMOST) for site in sites)
        if action.verb is ActionVerb.DON and HANDS in garment.covers:
            yield Shared(Kind.HANDS, on.id, aspect=_WET)
        if action.verb in (ActionVerb.DON, ActionVerb.DOFF):
            others = {*garment.needs_under, *garment.over, *scene.layers.coverers[garment.id]}
            yield from (Shared(Kind.GARMENT, on.id, other, "worn") for other in others)


def _body(scene: Scene, action: Action, by: Person, on: Person) -> Iterator[Shared]:
    if action.target in scene.setting.sites:
        yield from _sites(on, (action.target or "",))
    if action.verb is ActionVerb.MAT:
        yield from _sites(by, ("feet",))
    if action.verb is ActionVerb.DRINK:
        yield from _sites(by, ("mouth-nose",))
    if action.verb in (ActionVerb.SIT, ActionVerb.STAND):
        yield from _sites(by, SEAT_SITES)
    if action.verb is ActionVerb.MOVE or (action.verb is ActionVerb.INSPECT and on is not by):
        yield from _sites(on, sorted(scene.setting.sites))
        yield from (Shared(Kind.GARMENT, on.id, item, "state") for item in on.worn)


def _sites(person: Person, sites: Iterable[str]) -> Iterator[Shared]:
    return (Shared(Kind.SITE, person.id, site) for site in sites)


def _fixtures(scene: Scene, action: Action, by: Person, on: Person) -> Iterator[Shared]:
    """Fixtures that it names, the mats of the zone, and the seat where it makes another contact."""
    named = [action.bin, action.chair, action.fixture, action.target, *action.any_of]
    if action.verb is ActionVerb.MAT and action.fixture is None:
        named += [each.id for each in scene.setting.fixtures_of_zone[by.zone] if each.kind == "mat"]
    if action.verb in _SEATING and by.seat is not None:
        named.append(by.seat)
    if _changes_contact_with_seat(scene, action, on):
        named.append(on.seat)
    yield from (Shared(Kind.FIXTURE, "", name) for name in named if name in scene.fixtures)
    carried = [each for each in (action.thing, action.target, action.item) if each is not None]
    yield from (Shared(Kind.FIXTURE, "", each) for each in carried if each in {*scene.things, *scene.bags})
    garment = scene.setting.garments.get(action.item or "")
    needs_seat = action.verb is ActionVerb.DOFF and garment is not None and garment.needs_seat
    if needs_seat or action.verb in _SEATING:
        yield Shared(Kind.FIXTURE, by.id, "seat")


def _changes_contact_with_seat(scene: Scene, action: Action, on: Person) -> bool:
    """Whether, seated, something comes off and leaves on the seat what is not as clean or dirty as it."""
    if on.seat not in scene.fixtures or action.verb is not ActionVerb.DOFF:
        return False
    staying = {key: worn for key, worn in on.worn.items() if key not in (action.item, action.together)}
    left = {worn.outside for site in SEAT_SITES for worn in _outermost(scene, staying, site)}
    return left != {scene.fixtures[on.seat].level}


def _outermost(scene: Scene, worn: dict[str, Worn], site: str) -> list[Worn]:
    return [worn[item] for item in scene.layers.outermost_at(site, worn)]


def _checks(scene: Scene, action: Action, by: Person, on: Person) -> Iterator[Shared]:
    """Needs, inspections, checks of kit, and the observer's look, which a change of kit makes void."""
    if action.need is not None:
        yield Shared(Kind.CHECK, by.id, action.need)
        yield Shared(Kind.CHECK, by.id, _FIRST_KIT)
    if action.verb is ActionVerb.CHECK:
        yield Shared(Kind.CHECK, on.id, f"{action.check} of {action.item}")
    if action.verb in (ActionVerb.INSPECT, ActionVerb.DON):
        yield Shared(Kind.CHECK, on.id, "inspection")
    if action.verb in _CHANGES_KIT or action.verb is ActionVerb.INSPECT:
        yield Shared(Kind.CHECK, on.id, _OBSERVED)
    if action.verb is ActionVerb.DOFF:
        watching = (p for p in scene.people.values() if p.role is PersonRole.OBSERVER)
        yield from (Shared(Kind.ZONE, person.id) for person in watching)
    if action.verb is ActionVerb.MOVE:
        yield Shared(Kind.CHECK, on.id, _OBSERVED)


def value_of(scene: Scene, shared: Shared) -> object:
    """How a thing is in a scene, as far as the steps that have to do with it could notice."""
    if shared.kind is Kind.FIXTURE:
        return _fixture(scene, shared)
    person = scene.people[shared.person]
    if shared.kind is Kind.HANDS:
        return _hands(person, shared.aspect)
    if shared.kind is Kind.SITE:
        return _site(scene, person, shared)
    if shared.kind is Kind.GARMENT:
        return _garment(person, shared)
    if shared.kind is Kind.ZONE:
        return person.zone
    if shared.kind is Kind.DUTY:
        held = [item for each in person.held for item in each.items]
        return ("hand hygiene" if person.pending else None, *held)
    return _check(person, shared.name)


def _hands(person: Person, aspect: str) -> object:
    """The outermost hand layer, whether it is still wet from a rub, or its level."""
    if aspect == _OUTERMOST:
        return person.top_layer()
    if aspect == _WET:
        return "dry" if person.wet is None else "wet"
    return person.hand_level().word


def _fixture(scene: Scene, shared: Shared) -> object:
    if shared.person:
        return scene.people[shared.person].seat
    if shared.name in scene.things:
        thing = scene.things[shared.name]
        return thing.level.word, thing.holder, thing.zone
    if shared.name not in scene.fixtures:
        bag = scene.bags.get(shared.name)
        return (bag.level.word, bag.zone) if bag is not None else "no bag"
    state = scene.fixtures[shared.name]
    return state.level.word, state.is_charged, state.last_user


def _site(scene: Scene, person: Person, shared: Shared) -> object:
    """What lies outermost there, or the level that is met there; for the feet also that of the soles."""
    there = _outermost(scene, person.worn, shared.name)
    if shared.aspect == _OUTERMOST:
        return tuple(worn.id for worn in there) or SKIN
    met = max((worn.outside for worn in there), default=Level.CLEAN).word if there else SKIN
    return (met, person.soles.word) if shared.name == "feet" else met


def _garment(person: Person, shared: Shared) -> object:
    worn = person.worn.get(shared.name)
    if shared.aspect == "worn" or worn is None:
        return worn is not None
    levels = tuple(level.word for level in worn.levels.values())
    return levels, tuple(sorted(worn.open_fasteners)), tuple(sorted(worn.positions.items()))


def _check(person: Person, name: str) -> object:
    if name == _OBSERVED:
        return person.record.is_checked_by_observer(person.worn)
    if name == _FIRST_KIT:
        return any(worn.garment.barrier for worn in person.worn.values())
    if name == "inspection":
        return person.whole_kit_inspected, tuple(sorted(person.inspected))
    _check_name, _of, item = name.partition(" of ")
    checks = person.worn[item].checks if item in person.worn else ()
    return name in person.needs_met, tuple(sorted(checks))
