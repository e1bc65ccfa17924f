"""What a zone does to whoever is in it."""

from __future__ import annotations

from collections.abc import Collection

from signage.model.choices import ZoneClass
from signage.rehearse.state.body import HANDS
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Person
from signage.rehearse.state.scene import Scene
from signage.rehearse.techniques import Surface


def take_on_the_room(scene: Scene, person: Person, only: str | None = None) -> None:
    """In a contaminated zone every exposed outside is contaminated, its edges and straps are ``reduced``.

    Straps that are declared to lie under another garment are spared while something is worn over them.
    ``only`` limits this to a garment that was just put on. Bare hands are contaminated as an outside is.
    """
    if scene.zone(person).zone_class is not ZoneClass.CONTAMINATED:
        return
    for worn in person.worn.values():
        if only is not None and worn.id != only:
            continue
        if not scene.layers.is_exposed(worn.id, person.worn):
            continue
        worn.join(Level.CONTAMINATED)
        worn.join(Level.REDUCED, Surface.BACK)
        if not (worn.garment.strap_under and scene.layers.covering(worn.id, person.worn)):
            worn.join(Level.REDUCED, Surface.STRAPS)
    if only is None and person.is_bare(HANDS):
        person.skin = Level.CONTAMINATED


def hidden_from_the_room(scene: Scene, person: Person) -> tuple[str, ...]:
    """What a contaminated zone does not reach, because something is worn over all of it."""
    if scene.zone(person).zone_class is not ZoneClass.CONTAMINATED:
        return ()
    return tuple(item for item in person.worn if not scene.layers.is_exposed(item, person.worn))


def bare_to_the_room(scene: Scene, person: Person, hidden: Collection[str]) -> None:
    """Of what was hidden, the room reaches what no longer is; what it had reached before stays as it is."""
    for item in hidden:
        if item in person.worn:
            take_on_the_room(scene, person, only=item)


def stand_on_the_floor(scene: Scene, person: Person) -> None:
    """A dirty floor contaminates the soles."""
    if scene.zone(person).floor == "dirty":
        person.soles = Level.CONTAMINATED
