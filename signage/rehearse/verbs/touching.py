"""Touching and adjusting: of the body, of worn kit and of fixtures."""

from __future__ import annotations

from signage.model.choices import ZoneClass
from signage.rehearse.rules.contact import (
    CLEAN_FIXTURE_TOUCHED,
    HAND_AT_FACE,
    MOUTH_IN_ZONE,
    RESPIRATOR_MOVED_AFTER_CHECK,
    TREATED_GLOVE_ON_SKIN,
)
from signage.rehearse.rules.layering import NOT_WORN
from signage.rehearse.rules.places import FIXTURE_ELSEWHERE, SHARED_WITHOUT_DISINFECTION
from signage.rehearse.state.body import HEAD
from signage.rehearse.state.level import Level
from signage.rehearse.state.meeting import hand_and_fixture_meet, hand_and_garment_meet, hand_meets
from signage.rehearse.state.people import Pending, Person, Worn
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.techniques import Surface
from signage.rehearse.verbs.bags import take_hold
from signage.rehearse.verbs.things import touch_thing

_SHARED = frozenset({"chair", "surface", "bench", "shelf"})


def touch(scene: Scene, act: Act) -> None:
    """Hands meet a part of the body, something worn, a fixture, a bag or a thing."""
    target = act.action.target or act.action.item or ""
    if scene.is_bag(target):
        take_hold(scene, act, target)
    elif target in scene.setting.garments:
        handle_garment(scene, act, target)
    elif target in scene.fixtures:
        _touch_fixture(scene, act, target)
    elif target in scene.things:
        touch_thing(scene, act, target)
    else:
        touch_body(scene, act, target)


def touch_body(scene: Scene, act: Act, site: str) -> None:
    """Rules CT-3 and CT-5. Covered parts below the head are touched through what lies outermost there."""
    person, level = act.on, act.by.hand_level()
    is_bare = person.is_bare(site)
    if level is Level.CONTAMINATED and (is_bare or site in HEAD):
        message = f"Contaminated {scene.name(act.by.top_layer())} touch: {site}."
        scene.report(HAND_AT_FACE, message, item=site, person=act.by, field="target")
        if is_bare:
            scene.expose(person, site, act.by.top_layer())
    elif level is Level.REDUCED and is_bare:
        message = f"{scene.name(act.by.top_layer())}, cleaned but not clean, touch bare: {site}."
        scene.report(TREATED_GLOVE_ON_SKIN, message, item=site, person=act.by, field="target")
    for item in scene.layers.outermost_at(site, person.worn):
        _touch_garment(scene, act, person.worn[item])


def handle_garment(scene: Scene, act: Act, item: str) -> None:
    """Hands at something worn; what is worn on the head is handled at the face (rules CT-3 and LY-6)."""
    worn = act.on.worn.get(item)
    if worn is None:
        message = f"Not worn at this step: {scene.name(item)}."
        scene.report(NOT_WORN, message, item=item, person=act.on, field="target")
        return
    if act.action.part is not None and act.action.part in worn.garment.adjusters:
        _adjust_by_band(scene, act, worn)
        return
    hands = act.by.hand_level()
    if worn.garment.face and max(worn.outside, hands) is Level.CONTAMINATED:
        message = f"{scene.name(item)} handled on the face; hands or front are contaminated."
        scene.report(HAND_AT_FACE, message, item=item, person=act.by)
    elif hands is Level.CONTAMINATED and HEAD & worn.sites:
        layer, where = scene.name(act.by.top_layer()), ", ".join(s for s in worn.covered if s in HEAD)
        message = f"Contaminated {layer} at the head: {scene.name(item)}, worn over {where}."
        scene.report(HAND_AT_FACE, message, item=item, person=act.by)
    _touch_garment(scene, act, worn)


def _touch_garment(scene: Scene, act: Act, worn: Worn) -> None:
    """Both take the higher level; another's contaminated kit makes hygiene due. For rule RP-3 it moved."""
    worst = max(worn.outside, act.by.hand_level())
    if worn.checks:
        worn.moved_after_check = act.moment
    hand_and_garment_meet(scene, act.by, act.on, worn.id)
    if act.on is not act.by and worst is Level.CONTAMINATED:
        act.by.pending = Pending(worn.id, act.moment)


def _adjust_by_band(scene: Scene, act: Act, worn: Worn) -> None:
    """The hand holds a band or clip behind the head, not the front: it meets what the straps carry."""
    before, hand = worn.levels[Surface.STRAPS], act.by.hand_level()
    if hand is Level.CONTAMINATED and HEAD & worn.sites:
        message = f"Contaminated {scene.name(act.by.top_layer())} at the head: {scene.name(worn.id)}."
        scene.report(HAND_AT_FACE, message, item=worn.id, person=act.by, field="part")
    worn.join(hand, Surface.STRAPS)
    if worn.checks:
        worn.moved_after_check = act.moment
    hand_meets(scene, act.by, before, worn.id)
    if before is Level.CONTAMINATED:
        act.by.pending = Pending(worn.id, act.moment)


def report_moved_respirator(scene: Scene, person: Person, worn: Worn) -> None:
    """Rule RP-3, once the item comes off, or at the end, without having been checked again."""
    if worn.moved_after_check is not None:
        message = f"{scene.name(worn.id)} touched after its check, and not checked again."
        scene.report(
            RESPIRATOR_MOVED_AFTER_CHECK, message, item=worn.id, person=person, moment=worn.moved_after_check
        )


def _touch_fixture(scene: Scene, act: Act, key: str) -> None:
    """Rules ZN-5, CT-6 and FX-3."""
    state = scene.fixtures[key]
    if not scene.is_here(key, act.by):
        message = f"{scene.name(key)} is not in zone {scene.name(act.by.zone)}."
        scene.report(FIXTURE_ELSEWHERE, message, item=key, person=act.by, field="target")
    zone = scene.setting.ward.zones.get(state.fixture.zone)
    level = act.by.hand_level()
    if level is not Level.CLEAN and zone is not None and zone.floor == "clean":
        hands = scene.name(act.by.top_layer())
        how = f"Contaminated {hands}" if level is Level.CONTAMINATED else f"{hands}, cleaned but not clean,"
        message = f"{how} touch: {scene.name(key)}, over a clean floor."
        scene.report(CLEAN_FIXTURE_TOUCHED, message, item=key, person=act.by, field="target")
    if state.fixture.kind in _SHARED:
        report_shared(scene, act.by, key)
    hand_and_fixture_meet(scene, act.by, key)


def report_shared(scene: Scene, person: Person, key: str) -> None:
    """Rule FX-3: somebody else used this before, and it was not disinfected since."""
    state = scene.fixtures[key]
    if state.last_user not in (None, person.id):
        message = f"{scene.name(key)} was used by {state.last_user} and not disinfected since."
        scene.report(SHARED_WITHOUT_DISINFECTION, message, item=key, person=person)
    state.last_user = person.id


def judge_mouth(scene: Scene, person: Person, what: str) -> None:
    """Rule CT-8."""
    zone = scene.zone(person)
    if zone.zone_class is not ZoneClass.CLEAN:
        message = f"{what} in zone {zone.name}, which is {zone.zone_class}."
        scene.report(MOUTH_IN_ZONE, message, item="mouth-nose", person=person)
