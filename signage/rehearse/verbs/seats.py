"""A seat and whoever sits on it: they act on each other as long as the contact lasts."""

from __future__ import annotations

from signage.rehearse.rules.places import SEAT_CROSSED
from signage.rehearse.state.body import SEAT_SITES
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Person
from signage.rehearse.state.scene import FixtureState, Scene


def rest_on_seat(scene: Scene, person: Person) -> None:
    """Seat and the sitter's outermost garments on trunk and legs take the higher level (rule FX-2).

    Called when a person sits down, after each removal while seated, and at standing up; told once for one
    stay on the seat. Nothing happens to who stands.
    """
    if person.seat is None:
        return
    state = scene.fixtures[person.seat]
    touching = {g for site in SEAT_SITES for g in scene.layers.outermost_at(site, person.worn)}
    mine = max((person.worn[item].outside for item in touching), default=Level.CLEAN)
    if not person.was_told_of_seat:
        _judge_seat(scene, person, state, mine)
    for item in touching:
        person.worn[item].join(state.level)
    state.level = max(state.level, mine)


def get_up(scene: Scene, person: Person) -> None:
    """The contact with the seat ends."""
    rest_on_seat(scene, person)
    person.seat, person.was_told_of_seat = None, False


def _judge_seat(scene: Scene, person: Person, state: FixtureState, mine: Level) -> None:
    """Rule FX-2, in both directions."""
    name = scene.name(state.fixture.id)
    if state.fixture.designated == "clean" and mine is Level.CONTAMINATED:
        message = f"Contaminated kit on a seat that is meant to stay clean: {name}."
    elif state.level is Level.CONTAMINATED and not _is_protected(person):
        message = f"Trunk or legs without protective kit on a contaminated seat: {name}."
    else:
        return
    person.was_told_of_seat = True
    scene.report(SEAT_CROSSED, message, item=state.fixture.id, person=person, field="chair")


def _is_protected(person: Person) -> bool:
    """Whether protective kit covers both trunk and legs."""
    covered = {site for worn in person.worn.values() if worn.garment.barrier for site in worn.sites}
    return covered.issuperset(SEAT_SITES)
