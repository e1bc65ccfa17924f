"""Whether what a zone asks for holds at this moment: kit, closed fasteners, covered skin, breathing."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from signage.ground.rule import Rule
from signage.model.choices import ZoneClass
from signage.model.library import Zone
from signage.rehearse.rules.conduct import NOT_COVERED, PROTECTION_LOST
from signage.rehearse.state.people import Person, Worn
from signage.rehearse.state.scene import Scene

RESPIRATOR = "respirator"
"""The kind of garment that protects breathing."""


@dataclass(frozen=True, slots=True)
class Gap:
    """Something that the zone asks for and that does not hold.

    ``items`` are what it is told by: a garment, or bare parts of the body. ``sites`` are the parts of the
    body that are bare through it.
    """

    items: tuple[str, ...]
    what: str
    sites: tuple[str, ...] = ()


def judge_protection(scene: Scene, person: Person) -> None:
    """Rule EN-9 for a person where that person is now; each item once while the person stays there.

    What an older rule has told of an item in this stay is in ``person.stay.told`` and is not told again.
    """
    if person.zone in scene.setting.asking_zones:
        _judge(scene, person, scene.zone(person), PROTECTION_LOST)


def judge_cover_on_entry(scene: Scene, person: Person, zone: Zone) -> None:
    """Rule EN-4: kit that is missing on the way into a zone, and bare parts that no missing kit explains."""
    _judge(scene, person, zone, NOT_COVERED)


def _judge(scene: Scene, person: Person, zone: Zone, rule: Rule) -> None:
    for gap in _gaps(scene, person, zone, rule):
        if zone.zone_class is ZoneClass.CONTAMINATED:
            for site in gap.sites:
                if site not in person.stay.bare:
                    person.stay.bare.add(site)
                    scene.expose(person, site, zone.id)
        if not person.stay.told.issuperset(gap.items):
            person.stay.told.update(gap.items)
            _tell(scene, person, rule, gap, _path(person, gap) if rule is PROTECTION_LOST else "")


def _tell(scene: Scene, person: Person, rule: Rule, gap: Gap, path: str) -> None:
    """A gap at the present moment, or, before any step, at the place where the person starts."""
    message = f"{gap.what}{path}."
    if scene.moment is None:
        place = person.start.at("starts_in")
        scene.report_form(rule, message, place, person=person.id, item=gap.items[0])
    else:
        scene.report(rule, message, item=gap.items[0], others=gap.items[1:], person=person)


def _path(person: Person, gap: Gap) -> str:
    """What led there: since which steps the person is there and the item off or open."""
    entered = person.stay.entered
    there = f"in this zone since step {entered.step.id}" if entered else "in this zone from the start"
    gone = person.record.gone.get(gap.items[0])
    return f"; {f'{gone.how} at step {gone.moment.step.id}, ' if gone else ''}{there}"


def _gaps(scene: Scene, person: Person, zone: Zone, rule: Rule) -> Iterator[Gap]:
    """Kit, then breathing and open fasteners, which no rule of entry looks at by zone, then bare parts."""
    on_entry = "on entry to" if rule is NOT_COVERED else "in"
    explained: set[str] = set()
    for item in zone.requires:
        if item not in person.worn:
            sites = scene.layers.sites.get(item, frozenset())
            explained |= sites
            what = f"{scene.name(item)} not worn {on_entry} zone {zone.name}"
            yield Gap((item,), what, tuple(site for site in sorted(sites) if person.is_bare(site)))
    if rule is PROTECTION_LOST:
        breathing = _breathing(scene, person, zone)
        if breathing is not None:
            explained.update(breathing.sites)
            yield breathing
        yield from _open_kit(scene, person, zone)
    bare = tuple(site for site in zone.no_skin if person.is_bare(site) and site not in explained)
    if bare:
        untold = tuple(site for site in bare if site not in person.stay.told) or bare
        yield Gap(untold, f"Bare {on_entry} zone {zone.name}: {', '.join(untold)}", bare)


def _breathing(scene: Scene, person: Person, zone: Zone) -> Gap | None:
    """Hazardous air, and no respirator; where the zone requires one by name, that is told instead."""
    if zone.air != "hazardous":
        return None
    garments = scene.setting.garments
    if any(worn.garment.kind == RESPIRATOR for worn in person.worn.values()):
        return None
    known = {*zone.requires, *person.stay.told} & set(garments)
    if any(garments[item].kind == RESPIRATOR for item in known):
        return None
    of_kit = [key for key, garment in garments.items() if garment.kind == RESPIRATOR]
    gone = [key for key in of_kit if key in person.record.gone]
    item = min(gone or of_kit, default=RESPIRATOR)
    sites = scene.layers.sites.get(item, frozenset())
    if sites and person.stay.told >= sites:
        return None
    bare = tuple(site for site in sorted(sites) if person.is_bare(site))
    return Gap((item,), f"{scene.name(item)} not worn in zone {zone.name}, where the air is hazardous", bare)


def _open_kit(scene: Scene, person: Person, zone: Zone) -> Iterator[Gap]:
    """Required kit that is open, and other kit that is open over skin which must not be bare."""
    for worn in person.worn.values():
        if not worn.open_fasteners:
            continue
        bare = tuple(site for site in zone.no_skin if _is_bare_through(person, worn, site))
        if worn.id in zone.requires or bare:
            parts = ", ".join(sorted(worn.open_fasteners))
            known = {
                site for part in worn.open_fasteners for site in worn.garment.fastener_sites.get(part, ())
            }
            exposed = tuple(site for site in bare if site in known)
            yield Gap((worn.id,), f"{scene.name(worn.id)} open in zone {zone.name}: {parts}", exposed)


def _is_bare_through(person: Person, worn: Worn, site: str) -> bool:
    """Whether an open fastener is at a part of the body that nothing else covers."""
    if not any(site in worn.garment.sites_of_fastener(part) for part in worn.open_fasteners):
        return False
    return not any(site in other.sites for other in person.worn.values() if other is not worn)
