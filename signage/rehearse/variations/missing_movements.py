"""The movements whose absence may be the cause of a finding."""

from __future__ import annotations

from collections.abc import Iterator

from signage.model.choices import ActionVerb, PersonRole
from signage.model.library import Action, Fixture
from signage.rehearse import local_policy
from signage.rehearse.finding import Finding
from signage.rehearse.local_policy import LocalPolicy
from signage.rehearse.state.body import HANDS, SKIN
from signage.rehearse.state.setting import Setting

_NEED_HYGIENE = frozenset({"HH-1", "HH-6", "HH-8", "HH-9", "CT-3", "CT-4"})
_NEED_KIT = frozenset({"LY-3", "EN-4"})
_WORDS = {
    ActionVerb.DON: "put on",
    ActionVerb.DOFF: "take off",
    ActionVerb.FASTEN: "close",
    ActionVerb.UNFASTEN: "open",
    ActionVerb.NEED: "meet the need",
    ActionVerb.MOVE: "go to zone",
    ActionVerb.SIT: "sit on",
    ActionVerb.STAND: "stand up",
    ActionVerb.MAT: "stand on",
    ActionVerb.INSPECT: "inspect",
    ActionVerb.RAISE: "raise",
    ActionVerb.LOWER: "lower",
    ActionVerb.WIPE: "wipe",
}
_NEED_DISINFECTION = frozenset({"FX-2", "FX-3"})


def missing_movements(setting: Setting, finding: Finding, policy: LocalPolicy) -> Iterator[Action]:
    """Movements that could be added; where they must stand, and whether they help, is for others to try."""
    person = finding.person or setting.protocol.people[0].id
    if finding.code in _NEED_HYGIENE:
        seconds = least_seconds(policy, "rub")
        for layer in hand_layers(setting):
            yield Action(verb=ActionVerb.HYGIENE, by=person, agent="rub", layer=layer, seconds=seconds)
    elif finding.code in _NEED_KIT:
        for item in (finding.item, *finding.others):
            if item in setting.garments:
                yield Action(verb=ActionVerb.DON, by=person, item=item)
    elif finding.code in _NEED_DISINFECTION:
        fixture = setting.ward.fixtures.get(finding.item or "")
        if fixture is not None:
            seconds_needed = fixture.contact_seconds
            yield Action(verb=ActionVerb.DISINFECT, by=person, fixture=fixture.id, seconds=seconds_needed)
    else:
        yield from _about_an_item(setting, finding, person)
        yield from _about_a_place(setting, finding, person)


def _about_an_item(setting: Setting, finding: Finding, person: str) -> Iterator[Action]:
    """Opening, closing, checking, inspecting and taking off."""
    garment = setting.garments.get(finding.item or "")
    if garment is None:
        return
    if finding.code == "LY-7":
        for fixture in fixtures_in_order(setting):
            if garment.id in fixture.accepts:
                yield Action(verb=ActionVerb.DOFF, by=person, item=garment.id, bin=fixture.id)
    elif finding.code in ("LY-4", "EN-3"):
        verb = ActionVerb.UNFASTEN if finding.code == "LY-4" else ActionVerb.FASTEN
        for part in garment.fasteners:
            yield Action(verb=verb, by=person, item=garment.id, part=part)
    elif finding.code == "EN-9":
        yield Action(verb=ActionVerb.DON, by=person, item=garment.id)
        for part in garment.fasteners:
            yield Action(verb=ActionVerb.FASTEN, by=person, item=garment.id, part=part)
    elif finding.code in ("EN-2", "RP-3", "EN-11"):
        for check in garment.checks:
            yield Action(verb=ActionVerb.CHECK, by=person, item=garment.id, check=check)
    elif finding.code == "EN-1":
        yield Action(verb=ActionVerb.INSPECT, by=person, item=garment.id)


def _about_a_place(setting: Setting, finding: Finding, person: str) -> Iterator[Action]:
    """Seats, mats, ways, needs and the observer."""
    if finding.code == "FX-5":
        for fixture in fixtures_in_order(setting):
            if fixture.kind == "chair":
                yield Action(verb=ActionVerb.SIT, by=person, chair=fixture.id)
    elif finding.code == "FX-6":
        yield Action(verb=ActionVerb.STAND, by=person)
    elif finding.code == "FX-7":
        yield Action(verb=ActionVerb.REPLACE, by=person, fixture=finding.item)
    elif finding.code == "ZN-4":
        for fixture in fixtures_in_order(setting):
            if fixture.kind == "mat":
                yield Action(
                    verb=ActionVerb.MAT, by=person, fixture=fixture.id, seconds=fixture.contact_seconds
                )
    elif finding.code == "ST-3":
        yield Action(verb=ActionVerb.MOVE, by=finding.item or person, to=setting.protocol.ends_in)
    elif finding.code == "EN-5":
        yield Action(verb=ActionVerb.NEED, by=person, need=finding.item)
    elif finding.code in ("EN-6", "EN-11"):
        for actor in setting.protocol.people:
            if actor.role is PersonRole.OBSERVER:
                yield Action(verb=ActionVerb.INSPECT, by=actor.id, on=person)


def fixtures_in_order(setting: Setting) -> list[Fixture]:
    """All fixtures of the ward by identifier."""
    return sorted(setting.ward.fixtures.values(), key=lambda fixture: fixture.id)


def hand_layers(setting: Setting) -> tuple[str, ...]:
    """Skin, and everything that covers the hands."""
    return (SKIN, *(key for key, garment in setting.garments.items() if HANDS in garment.covers))


def least_seconds(policy: LocalPolicy, agent: str | None) -> int:
    """The time that local policy wants for an agent."""
    return policy.number(local_policy.MINIMUM_WASH if agent == "wash" else local_policy.MINIMUM_RUB)


def words_of(setting: Setting, action: Action) -> str:
    """What an added movement does, in a few words."""
    thing = action.layer or action.item or action.chair or action.fixture or action.to or action.need
    words = [action.agent or _WORDS.get(action.verb, action.verb), setting.name(thing) if thing else ""]
    details = {"bin": setting.name(action.bin) if action.bin else None, "seconds": action.seconds}
    words += [f"({name}: {value})" for name, value in details.items() if value is not None]
    return " ".join(word for word in words if word)
