"""Taking off."""

from __future__ import annotations

from collections.abc import Sequence

from signage.model.choices import PersonRole
from signage.rehearse import local_policy
from signage.rehearse.judging.sight import judge_watching
from signage.rehearse.rules.contact import (
    BARE_SITE_CONTAMINATED,
    HAND_AT_FACE,
    INNERMOST_GLOVE_HANDLES_OUTSIDE,
    RESPIRATOR_OFF_IN_HAZARDOUS_AIR,
    RESPIRATOR_OFF_TOO_EARLY,
)
from signage.rehearse.rules.hands import REMOVAL_BEFORE_HYGIENE
from signage.rehearse.rules.layering import FASTENER_CLOSED, NOT_WORN, STILL_COVERED, TECHNIQUE_MISFIT
from signage.rehearse.rules.places import NO_SEAT, STILL_SEATED
from signage.rehearse.state.body import HAND_SITES, HANDS
from signage.rehearse.state.level import Level
from signage.rehearse.state.meeting import hand_meets
from signage.rehearse.state.people import Held, Pending, Person, Worn
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.techniques import TECHNIQUES, UNSPECIFIED, Surface, Technique
from signage.rehearse.verbs.discarding import discard_held
from signage.rehearse.verbs.seats import rest_on_seat
from signage.rehearse.verbs.touching import report_moved_respirator


def take_off(scene: Scene, act: Act) -> None:
    """A garment comes off, perhaps ``together`` with a second one; then hygiene is due to who did it."""
    person = act.on
    named = dict.fromkeys(item for item in (act.item, act.action.together) if item is not None)
    leaving = [person.worn[item] for item in named if item in person.worn]
    for item in named:
        if item not in person.worn:
            message = f"Not worn at this step: {scene.name(item)}."
            scene.report(NOT_WORN, message, item=item, person=person, field="item")
    if not leaving:
        return
    scene.undressed.add(person.id)
    _judge_moment(scene, act, leaving)
    _judge_posture(scene, act, leaving)
    for worn in leaving:
        _judge_garment(scene, person, worn, leaving)
        if worn.garment.kind == "respirator":
            _judge_respirator(scene, person, worn, leaving)
    _judge_technique(scene, act, leaving[0])
    _let_surfaces_meet(scene, act, leaving)
    for worn in leaving:
        report_moved_respirator(scene, person, worn)
        del person.worn[worn.id]
    rest_on_seat(scene, person)
    act.by.pending = Pending(leaving[0].id, act.moment)
    items = tuple(worn.id for worn in leaving)
    level, surfaces = max(worn.outside for worn in leaving), tuple(worn.surfaces for worn in leaving)
    grip = leaving[0].levels[_gripped(act, leaving[0])]
    layer = act.by.top_layer()
    act.by.held.append(Held(items, level, act.moment, surfaces, person.id, grip, layer))
    if act.action.bin is not None:
        discard_held(scene, act, act.by.held[-1], act.action.bin)


def _judge_moment(scene: Scene, act: Act, leaving: Sequence[Worn]) -> None:
    """Rules HH-9, RO-3 and RO-4: whether this is the time to take anything off."""
    person, item = act.on, leaving[0].id
    if person.fresh_from_contaminated:
        person.fresh_from_contaminated = False
        message = f"{scene.name(item)} taken off; hands not cleaned since leaving the contaminated zone."
        scene.report(REMOVAL_BEFORE_HYGIENE, message, item=item, person=person)
    if person.role is PersonRole.WEARER and any(worn.garment.barrier for worn in leaving):
        scene.zones_of_removal.add(person.zone)
        judge_watching(scene, person)


def _judge_garment(scene: Scene, person: Person, worn: Worn, leaving: Sequence[Worn]) -> None:
    """Rules LY-1, LY-4 and FX-5."""
    name = scene.name(worn.id)
    gone = {other.id for other in leaving}
    over = tuple(g for g in scene.layers.covering(worn.id, person.worn) if g not in gone)
    if over:
        message = f"{name} taken off while still under: {scene.setting.names(over)}."
        scene.report(STILL_COVERED, message, item=worn.id, others=over, person=person)
    closed = [part for part in worn.garment.fasteners if part not in worn.open_fasteners]
    if closed:
        message = f"{name} taken off with its fastener closed: {', '.join(closed)}."
        scene.report(FASTENER_CLOSED, message, item=worn.id, person=person)
    if worn.garment.needs_seat and person.seat is None:
        message = f"{name} taken off while standing; wanted: sit down first."
        scene.report(NO_SEAT, message, item=worn.id, person=person)


def _judge_posture(scene: Scene, act: Act, leaving: Sequence[Worn]) -> None:
    """Rule FX-6 for what cannot be done on a chair."""
    named = technique_name(act, leaving[0])
    if act.on.seat is not None and TECHNIQUES.get(named, TECHNIQUES[UNSPECIFIED]).needs_standing:
        message = (
            f"{scene.name(leaving[0].id)} taken off ({named}) while seated on {scene.name(act.on.seat)}; "
            "wanted: stand up first."
        )
        scene.report(STILL_SEATED, message, item=leaving[0].id, person=act.on)


def _judge_technique(scene: Scene, act: Act, worn: Worn) -> None:
    """Rule LY-10; where the kit names no technique, any will do that is named at all.

    What leaves ``together`` with something else leaves by the technique of the latter.
    """
    named, possible = technique_name(act, worn), worn.garment.techniques
    if possible and named not in possible:
        message = f"{scene.name(worn.id)} taken off ({named}); it comes off by: {', '.join(possible)}."
    elif named == UNSPECIFIED:
        message = f"Neither step nor kit says how to take off: {scene.name(worn.id)}."
    else:
        return
    scene.report(TECHNIQUE_MISFIT, message, item=worn.id, person=act.on, field="technique")


def _gripped(act: Act, worn: Worn) -> Surface:
    """The surface by which something is held once it is off; what was turned inside out, by its inside."""
    technique = TECHNIQUES.get(technique_name(act, worn), TECHNIQUES[UNSPECIFIED])
    return technique.hands or Surface.INSIDE


def technique_name(act: Act, worn: Worn) -> str:
    """How a garment comes off in a movement."""
    return act.action.technique or worn.garment.technique or UNSPECIFIED


def _judge_respirator(scene: Scene, person: Person, worn: Worn, leaving: Sequence[Worn]) -> None:
    """Rules RP-1 and RP-2."""
    zone = scene.zone(person)
    if zone.air == "hazardous":
        message = f"{scene.name(worn.id)} taken off in zone {zone.name}, where the air is hazardous."
        scene.report(RESPIRATOR_OFF_IN_HAZARDOUS_AIR, message, item=worn.id, person=person)
    gone = {other.id for other in leaving}
    still_on = tuple(
        other.id
        for other in person.worn.values()
        if other.id not in gone and other.garment.barrier and other.outside is Level.CONTAMINATED
    )
    if still_on and scene.policy.is_yes(local_policy.RESPIRATOR_LAST):
        message = (
            f"{scene.name(worn.id)} taken off; contaminated and still worn: {scene.setting.names(still_on)}."
        )
        scene.report(RESPIRATOR_OFF_TOO_EARLY, message, item=worn.id, others=still_on, person=person)


def _let_surfaces_meet(scene: Scene, act: Act, leaving: Sequence[Worn]) -> None:
    """Contact by technique: of the hands, of the face, and of what lies beneath."""
    first = leaving[0]
    named = technique_name(act, first)
    technique = TECHNIQUES.get(named, TECHNIQUES[UNSPECIFIED])
    gone = frozenset(worn.id for worn in leaving)
    _at_the_face(scene, act, leaving, technique, gone)
    if technique.hands is not None:
        met = first.levels[technique.hands]
        glove = act.by.top_glove(gone)
        takes_hold = technique.hands is Surface.OUTSIDE and named != UNSPECIFIED
        is_innermost = glove is not None and act.by.top_glove({*gone, glove.id}) is None
        is_meant = glove is not None and act.action.layer == glove.id
        if glove is not None and is_innermost and takes_hold and met is Level.CONTAMINATED and not is_meant:
            message = f"{scene.name(glove.id)}, next to the skin, take hold of: {scene.name(first.id)}."
            scene.report(INNERMOST_GLOVE_HANDLES_OUTSIDE, message, item=first.id, person=act.by)
        hand_meets(scene, act.by, met, first.id, gone)
    if technique.beneath is not None:
        for worn in leaving:
            _brush_beneath(scene, act, worn, technique.beneath, gone)
            own_hand_has_met_it = act.by is act.on and technique.hands is not None
            if HANDS in worn.garment.covers and not own_hand_has_met_it:
                hand_meets(scene, act.on, worn.levels[technique.beneath], worn.id, gone)


def _at_the_face(
    scene: Scene, act: Act, leaving: Sequence[Worn], technique: Technique, gone: frozenset[str]
) -> None:
    """Rule CT-3 while something worn on the face comes off."""
    for worn in leaving:
        if not worn.garment.face:
            continue
        name = scene.name(worn.id)
        if technique.hands is Surface.OUTSIDE:
            message = f"{name} held by the front."
        elif act.by.hand_level(gone) is Level.CONTAMINATED:
            message = f"{name} taken off with contaminated hands."
        else:
            continue
        scene.report(HAND_AT_FACE, message, item=worn.id, person=act.by)


def _brush_beneath(scene: Scene, act: Act, worn: Worn, surface: Surface, gone: frozenset[str]) -> None:
    """What comes off brushes over the layer beneath, part by part of the body (rule CT-2)."""
    person, level = act.on, worn.levels[surface]
    over = scene.layers.coverers[worn.id]
    staying = {key: w for key, w in person.worn.items() if key not in gone and key not in over}
    for beneath in scene.layers.met_beneath(worn, staying):
        staying[beneath].join(level)
    spared = {site for other in staying.values() for site in other.sites}
    if HANDS in worn.garment.covers:
        spared |= HAND_SITES
    bare = [site for site in worn.covered if site not in spared]
    if bare and level is Level.CONTAMINATED:
        message = f"The {surface} of {scene.name(worn.id)} brushes over bare: {', '.join(bare)}."
        scene.report(BARE_SITE_CONTAMINATED, message, item=worn.id, person=person)
        for site in bare:
            scene.expose(person, site, worn.id)
