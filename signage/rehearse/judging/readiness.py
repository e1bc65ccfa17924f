"""Getting ready: needs before kit, fasteners within reach, and checks that later changes undo."""

from __future__ import annotations

from signage.model.choices import ActionVerb, PersonRole
from signage.model.library import Zone
from signage.rehearse import local_policy
from signage.rehearse.rules.conduct import CHECK_UNDONE, NEED_AFTER_KIT, NO_OBSERVER_CHECK
from signage.rehearse.rules.layering import FASTENER_OUT_OF_REACH
from signage.rehearse.state.body import HEAD
from signage.rehearse.state.people import OBSERVERS_CHECK, Change, Check, Person, Worn
from signage.rehearse.state.scene import Act, Scene

_CHANGED_BY = {
    ActionVerb.FASTEN: "closed",
    ActionVerb.UNFASTEN: "opened",
    ActionVerb.ADJUST: "adjusted",
    ActionVerb.RAISE: "adjusted",
    ActionVerb.LOWER: "adjusted",
    ActionVerb.DON: "put on",
    ActionVerb.DOFF: "taken off",
    ActionVerb.CHANGE_CLOTHES: "put on",
}
"""What undoes a check of a garment, and how it is called in a message."""

_FASTENS = frozenset({ActionVerb.FASTEN, ActionVerb.UNFASTEN})
_PUTS_A_PART = frozenset({ActionVerb.RAISE, ActionVerb.LOWER})


def look_before_change(scene: Scene, act: Act) -> None:
    """Rules EN-10 and LY-8, and what this movement changes of kit that was checked (for rule EN-11)."""
    verb = act.action.verb
    if verb is ActionVerb.NEED:
        _judge_need(scene, act)
    elif verb in _CHANGED_BY:
        if verb in _FASTENS:
            _judge_reach(scene, act)
        elif verb in _PUTS_A_PART:
            _judge_reach_of_part(scene, act)
        _note_change(act, _CHANGED_BY[verb])


def note_check(act: Act) -> None:
    """After a check: what it covered, which heals what was changed before it."""
    verb, person = act.action.verb, act.on
    if verb is ActionVerb.CHECK and act.item in person.worn:
        _cover(person, (f"its check ({act.action.check or 'whole'})", act.item), frozenset({act.item}))
    elif verb is ActionVerb.INSPECT and act.by.role is PersonRole.OBSERVER and person is not act.by:
        _cover(person, OBSERVERS_CHECK, frozenset(person.worn))


def _cover(person: Person, check: Check, items: frozenset[str]) -> None:
    person.record.checked[check] = items
    person.record.undone = {key: change for key, change in person.record.undone.items() if key[0] != check}


def _judge_need(scene: Scene, act: Act) -> None:
    """Rule EN-10."""
    on = tuple(worn.id for worn in act.on.worn.values() if worn.garment.barrier)
    if on and scene.policy.is_yes(local_policy.NEEDS_BEFORE_KIT):
        need = act.action.need or ""
        message = f"{scene.name(need)} after kit is on: {scene.setting.names(on)}."
        scene.report(NEED_AFTER_KIT, message, item=need, others=on, person=act.on, field="need")


def _judge_reach(scene: Scene, act: Act) -> None:
    """Rule LY-8: worn garments over the fastener's own sites, and closed fasteners that lie over it."""
    worn = act.on.worn.get(act.item)
    if worn is None:
        return
    parts = (act.action.part,) if act.action.part else worn.garment.fasteners
    over = tuple(
        other
        for other in scene.layers.covering(worn.id, act.on.worn)
        if any(act.on.worn[other].sites.intersection(worn.garment.sites_of_fastener(p)) for p in parts)
    )
    closed = _closed_over(worn, parts)
    if over or closed:
        names = ", ".join((*(scene.name(each) for each in over), *closed))
        what = f"{scene.name(worn.id)}, {', '.join(parts)}" if parts else scene.name(worn.id)
        message = f"Out of reach: {what}; over it: {names}."
        scene.report(FASTENER_OUT_OF_REACH, message, item=worn.id, others=over, person=act.on, field="part")


def _judge_reach_of_part(scene: Scene, act: Act) -> None:
    """Rule LY-8 for a part: what lies over its garment at the same site, or anywhere on the head with it."""
    worn = act.on.worn.get(act.item)
    if worn is None:
        return
    part = worn.garment.parts[act.action.part or ""]
    sites = {*part.raised, *part.lowered}
    reach = sites | HEAD if sites & HEAD else sites
    over = tuple(
        other
        for other in scene.layers.covering(worn.id, act.on.worn)
        if act.on.worn[other].sites.intersection(reach)
    )
    if over:
        message = f"Held down: {part.id} of {scene.name(worn.id)}; over it: {scene.setting.names(over)}."
        scene.report(FASTENER_OUT_OF_REACH, message, item=worn.id, others=over, person=act.on, field="part")


def _closed_over(worn: Worn, parts: tuple[str, ...]) -> tuple[str, ...]:
    """Fasteners that lie over these, are closed, and are not moved with them."""
    over = {each for part in parts for each in worn.garment.fasteners_under.get(part, ())}
    return tuple(sorted(over - worn.open_fasteners - set(parts)))


def _note_change(act: Act, how: str) -> None:
    person = act.on
    for item in (act.action.item or act.action.target, act.action.together):
        if item is None or (item not in person.worn and act.action.verb is not ActionVerb.DON):
            continue
        for check, covered in person.record.checked.items():
            if item in covered:
                person.record.undone.setdefault((check, item), Change(how, act.moment))


def judge_checks_on_entry(scene: Scene, person: Person, zone: Zone) -> None:
    """Rule EN-6. What was worn at the check and was changed since falls under EN-11."""
    seen = person.record.checked.get(OBSERVERS_CHECK)
    if zone.observer_check and (seen is None or not seen.issuperset(person.worn)):
        message = f"No observer check after the last item, before entry to zone {zone.name}."
        scene.report(NO_OBSERVER_CHECK, message, person=person)


def judge_changes_on_entry(scene: Scene, person: Person, zone: Zone) -> None:
    """Rule EN-11, at the step that made the change; entry ends what a check was for."""
    told: set[tuple[str, str]] = set()
    for (check, item), change in sorted(person.record.undone.items(), key=lambda pair: pair[0]):
        if (item, change.moment.step.id) not in told:
            told.add((item, change.moment.step.id))
            message = (
                f"{scene.name(item)} {change.how} after {check[0]} and before entry to zone {zone.name}; "
                "not checked again."
            )
            scene.report(CHECK_UNDONE, message, item=item, person=person, moment=change.moment)
    person.record.checked.clear()
    person.record.undone.clear()
