"""What is opened or worked by hand: lids, taps, dispensers and doors (rule CT-6)."""

from __future__ import annotations

from signage.model.library import Door
from signage.rehearse.rules.contact import CLEAN_FIXTURE_TOUCHED
from signage.rehearse.state.level import Level
from signage.rehearse.state.meeting import hand_meets
from signage.rehearse.state.people import Person
from signage.rehearse.state.scene import Scene

_BY_HAND = "hand"


def operate(scene: Scene, person: Person, fixture: str, field: str) -> None:
    """A hand opens a lid or works a tap or dispenser, unless it opens by something else than the hand.

    The hand meets what earlier hands left. A hand that is not clean leaves contamination for the next one.
    """
    state = scene.fixtures[fixture]
    if state.fixture.opening != _BY_HAND:
        return
    before = state.level
    if not _has_clean_hands(person):
        state.level = Level.CONTAMINATED
        _report(scene, person, fixture, scene.name(fixture), field)
    hand_meets(scene, person, before, fixture)


def open_door(scene: Scene, person: Person, door: Door) -> None:
    """A door that is opened by hand, from either side, as a lid is."""
    if door.opening != _BY_HAND:
        return
    sides = frozenset((door.start, door.end))
    before = scene.door_levels.get(sides, Level.CLEAN)
    name = f"door from {scene.name(door.start)} to {scene.name(door.end)}"
    if not _has_clean_hands(person):
        scene.door_levels[sides] = Level.CONTAMINATED
        _report(scene, person, door.end, name, "to")
    hand_meets(scene, person, before, name)


def _has_clean_hands(person: Person) -> bool:
    """Whether the outermost hand layer is clean and no hygiene is due to it."""
    return person.hand_level() is Level.CLEAN and person.pending is None


def _report(scene: Scene, person: Person, item: str, name: str, field: str) -> None:
    layer = scene.name(person.top_layer())
    message = f"Worked by hand: {name}; the hand is not clean: {layer}."
    scene.report(CLEAN_FIXTURE_TOUCHED, message, item=item, person=person, field=field)
