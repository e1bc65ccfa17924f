"""What a zone does to whoever is in it."""

from __future__ import annotations

from signage.model.choices import ZoneClass
from signage.rehearse.state.body import HANDS
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Person, Worn
from signage.rehearse.state.scene import Scene
from signage.rehearse.techniques import Surface


def take_on_the_room(scene: Scene, person: Person, only: str | None = None) -> None:
    """In a contaminated zone every exposed outside is contaminated, its edges and straps are ``reduced``.

    ``only`` limits this to a garment that was just put on. Bare hands are contaminated as an outside is.
    """
    if scene.zone(person).zone_class is not ZoneClass.CONTAMINATED:
        return
    if only is None:
        take_on(scene, person, Level.CONTAMINATED)
        person.exposed = _exposed(scene, person)
    elif scene.layers.is_exposed(only, person.worn):
        _soil(scene, person, person.worn[only], Level.CONTAMINATED)


def take_on(scene: Scene, person: Person, level: Level) -> None:
    """Exposed kit, or bare hands, meet a surrounding of that level."""
    for item in _exposed(scene, person):
        _soil(scene, person, person.worn[item], level)
    if person.is_bare(HANDS):
        person.skin = max(person.skin, level)


def take_on_what_was_bared(scene: Scene, person: Person) -> None:
    """In a contaminated zone, kit that lay under something else is contaminated once it is bared.

    What was exposed before and was cleaned since is not contaminated anew.
    """
    if scene.zone(person).zone_class is not ZoneClass.CONTAMINATED:
        return
    exposed = _exposed(scene, person)
    for item in exposed - person.exposed:
        _soil(scene, person, person.worn[item], Level.CONTAMINATED)
    person.exposed = exposed


def _exposed(scene: Scene, person: Person) -> frozenset[str]:
    return frozenset(item for item in person.worn if scene.layers.is_exposed(item, person.worn))


def _soil(scene: Scene, person: Person, worn: Worn, level: Level) -> None:
    """Straps that are declared to lie under another garment are spared while something is worn over them."""
    worn.join(level)
    edges = min(level, Level.REDUCED)
    worn.join(edges, Surface.BACK)
    if not (worn.garment.strap_under and scene.layers.covering(worn.id, person.worn)):
        worn.join(edges, Surface.STRAPS)


def stand_on_the_floor(scene: Scene, person: Person) -> None:
    """A dirty floor contaminates the soles."""
    if scene.zone(person).floor == "dirty":
        person.soles = Level.CONTAMINATED
