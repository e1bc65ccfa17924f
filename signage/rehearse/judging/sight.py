"""Whether an observer watches while kit comes off."""

from __future__ import annotations

from signage.model.choices import PersonRole, ZoneClass
from signage.rehearse import local_policy
from signage.rehearse.rules.conduct import NO_OBSERVER, OUT_OF_SIGHT
from signage.rehearse.state.people import Person
from signage.rehearse.state.scene import Scene

_SIGHT = "(sight)"
"""What is noted as told for a stay; no garment or part of the body has this name."""


def judge_watching(scene: Scene, person: Person) -> None:
    """Rules RO-3, said once in a protocol, and RO-4, once in each stay of the wearer in a zone."""
    observers = [other for other in scene.people.values() if other.role is PersonRole.OBSERVER]
    if not any(_may_watch(scene, other, person) for other in observers):
        _tell_absence(scene, person)
    is_seen = any(person.zone in scene.setting.seen_from[other.zone] for other in observers)
    if observers and not is_seen and _SIGHT not in person.stay.told:
        person.stay.told.add(_SIGHT)
        zones = ", ".join(dict.fromkeys(scene.name(other.zone) for other in observers))
        message = (
            f"Kit comes off in zone {scene.name(person.zone)}, out of sight of the observer in: {zones}."
        )
        scene.report(OUT_OF_SIGHT, message, person=person)


def _may_watch(scene: Scene, observer: Person, wearer: Person) -> bool:
    """Whether an observer is where one may be: with the wearer, or outside the contaminated zones."""
    return observer.zone == wearer.zone or scene.zone(observer).zone_class is not ZoneClass.CONTAMINATED


def _tell_absence(scene: Scene, person: Person) -> None:
    """Rule RO-3."""
    if not scene.was_told_of_observer and scene.policy.is_yes(local_policy.OBSERVER_FOR_REMOVAL):
        scene.was_told_of_observer = True
        message = f"Kit comes off in zone {scene.name(person.zone)} and no observer is there to watch."
        scene.report(NO_OBSERVER, message, person=person)
