"""What must be true when the last step is done."""

from __future__ import annotations

from signage.ground.place import Place
from signage.model.choices import PersonRole, PhaseTheme
from signage.rehearse.rules.conduct import ENDS_ELSEWHERE, POLICY_VALUE_MISSING
from signage.rehearse.rules.hands import ENDS_WITHOUT_HYGIENE, NO_HYGIENE_AFTER_REMOVAL
from signage.rehearse.rules.layering import NEVER_REMOVED
from signage.rehearse.rules.places import NEVER_DISCARDED, STILL_SEATED
from signage.rehearse.state.people import Moment, Person
from signage.rehearse.state.scene import Scene
from signage.rehearse.verbs.touching import report_moved_respirator


def look_at_the_end(scene: Scene, last: Moment | None) -> None:
    """Rules HH-6, BN-1, LY-7, ST-3 and FX-6 for every person, and ST-5 for the policy.

    A finding points to the step that left the matter open, so that it is found where it is mended.
    """
    scene.moment = last
    for person in scene.people.values():
        _hands_and_held(scene, person)
        _still_worn(scene, person)
        _place(scene, person)
    for key in sorted(scene.policy.missing):
        message = f"policy.yaml decides nothing usable for '{key}'; the strictest reading was used."
        scene.report_form(POLICY_VALUE_MISSING, message, scene.setting.protocol.place, item=key)


def _hands_and_held(scene: Scene, person: Person) -> None:
    """Hygiene that is still due, and things that are still in the hand."""
    pending = person.pending
    if pending is not None:
        rule = ENDS_WITHOUT_HYGIENE if person.role is PersonRole.WEARER else NO_HYGIENE_AFTER_REMOVAL
        message = f"No hand hygiene between this step ({scene.name(pending.item)}) and the end."
        scene.report(rule, message, item=pending.item, person=person, moment=pending.moment)
    for held in person.held:
        message = f"Taken off and put nowhere: {scene.setting.names(held.items)}; wanted: the name of a bin."
        scene.report(NEVER_DISCARDED, message, item=held.items[0], person=person, moment=held.moment)


def _still_worn(scene: Scene, person: Person) -> None:
    """Rule LY-7, where the protocol takes kit off this person at all."""
    has_removal = any(phase.theme is PhaseTheme.DOFF for phase in scene.setting.protocol.phases)
    undresses = (has_removal and person.role is PersonRole.WEARER) or person.id in scene.undressed
    for worn in person.worn.values():
        report_moved_respirator(scene, person, worn)
        if undresses and worn.garment.barrier:
            message = f"Still worn at the end: {scene.name(worn.id)}."
            if worn.put_on is not None:
                scene.report(NEVER_REMOVED, message, item=worn.id, person=person, moment=worn.put_on)
            else:
                place = person.start.at("wears")
                scene.report_form(NEVER_REMOVED, message, place, person=person.id, item=worn.id)


def _place(scene: Scene, person: Person) -> None:
    """Where a person ends: on the feet, and wearers in the zone that the protocol names."""
    if person.seat is not None:
        message = f"Still seated at the end: {scene.name(person.seat)}."
        scene.report(STILL_SEATED, message, item=person.seat, person=person)
    protocol = scene.setting.protocol
    if person.id in _readers(scene) and person.zone != protocol.ends_in:
        message = f"Ends in zone {scene.name(person.zone)}; 'ends-in' says {scene.name(protocol.ends_in)}."
        place: Place = protocol.at("ends_in")
        scene.report_form(ENDS_ELSEWHERE, message, place, item=person.id)


def _readers(scene: Scene) -> set[str]:
    """Whose way the protocol describes: every wearer, or the first person where there is no wearer."""
    wearers = {person.id for person in scene.people.values() if person.role is PersonRole.WEARER}
    return wearers or set(tuple(scene.people)[:1])
