"""The stage of one rehearsal: persons and fixtures as they are now, and what was found so far."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field

from signage.ground.place import Place
from signage.ground.problem import Severity
from signage.ground.rule import Rule
from signage.model.choices import ZoneClass
from signage.model.library import Action, Fixture, Thing, Zone
from signage.rehearse.finding import Finding
from signage.rehearse.local_policy import LocalPolicy
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Exposure, LaidDown, Moment, Person, Worn
from signage.rehearse.state.setting import Setting
from signage.rehearse.state.snapshot import copy_of, is_alike

BAG = "waste"
"""The kind of an item that is a waste bag."""

_SEATS_AND_SURFACES = frozenset({"chair", "surface", "bench", "shelf"})


_SHARED_BY_COPIES = frozenset({"setting", "layers", "moment", "_without"})
_NO_PART_OF_THE_STATE = _SHARED_BY_COPIES | {"used_fixtures", "_found"}


@dataclass(slots=True)
class FixtureState:
    """A fixture as it is now. ``last_user`` is who used it since it was disinfected."""

    fixture: Fixture
    level: Level
    is_charged: bool
    holds: int = field(default=0, compare=False)
    last_user: str | None = None


@dataclass(slots=True)
class BagState:
    """A waste bag as it is now: the level of its outside, and the zone in which it lies or is held."""

    level: Level
    zone: str


@dataclass(slots=True)
class ThingState:
    """A thing that people carry: who carries it, else the zone in which it lies, or None where unknown.

    ``is_soiled`` is since it was taken or touched in a contaminated zone, until it is disinfected.
    ``was_told`` is since it was found to be carried out of there.
    """

    holder: str | None
    zone: str | None
    level: Level = Level.CLEAN
    is_soiled: bool = False
    was_told: bool = False

    def soil(self) -> None:
        """A contaminated zone reaches it."""
        self.level, self.is_soiled, self.was_told = Level.CONTAMINATED, True, False


@dataclass(slots=True)
class Act:
    """One movement under rehearsal: who does it, and on whom."""

    moment: Moment
    by: Person
    on: Person
    seconds: int | None

    @property
    def action(self) -> Action:
        """The movement as it is written."""
        return self.moment.action

    @property
    def fixtures(self) -> tuple[str, ...]:
        """The fixtures that it names: one, or those of which any will do, which must all be fit for it."""
        named = (self.action.fixture,) if self.action.fixture is not None else ()
        return (*named, *self.action.any_of)

    @property
    def item(self) -> str:
        """The item of the movement; the references were looked at before, so it is there."""
        assert self.moment.action.item is not None
        return self.moment.action.item


class Scene:
    """Everything that changes during one rehearsal. ``without`` are codes of rules that are switched off.

    ``door_levels`` are those of the handles of doors, by the two zones between. ``laid_down`` is what was
    taken off and put away, by who wore it and what it is. ``bags`` are those that were handled so far.
    """

    def __init__(self, setting: Setting, without: Collection[str] = ()) -> None:
        self.setting = setting
        self.layers = setting.layers
        self.policy = LocalPolicy(setting.policy)
        self.people = {actor.id: self._person(actor.id) for actor in setting.protocol.people}
        self.fixtures = {key: _fixture_at_start(setting, f) for key, f in setting.ward.fixtures.items()}
        self.door_levels: dict[frozenset[str], Level] = {}
        self.bags: dict[str, BagState] = {}
        self.things = {key: _thing_at_start(setting, thing) for key, thing in setting.protocol.things.items()}
        self.laid_down: dict[tuple[str, str], LaidDown] = {}
        self.moment: Moment | None = None
        self.used_fixtures: list[str] = []
        self.zones_of_removal: set[str] = set()
        self.contaminated_zones: set[str] = set()
        self.undressed: set[str] = set()
        self.was_told_of_observer = False
        self._without = frozenset(without)
        self._found: list[tuple[Moment | None, Finding]] = []

    def _person(self, key: str) -> Person:
        """A person in the state of the start: kit clean, fasteners closed."""
        actor = next(actor for actor in self.setting.protocol.people if actor.id == key)
        person = Person(key, actor.role, actor.starts_in, actor)
        for item in actor.wears:
            if item in self.setting.garments:
                person.worn[item] = Worn(self.setting.garments[item], None)
        return person

    def report(
        self,
        rule: Rule,
        message: str,
        *,
        item: str | None = None,
        others: tuple[str, ...] = (),
        person: Person | None = None,
        severity: Severity | None = None,
        moment: Moment | None = None,
        field: str = "",
    ) -> None:
        """A finding at a moment, by default the present one; ``field`` is the part of the step at fault."""
        at = moment or self.moment
        if rule.code in self._without:
            return
        finding = Finding(
            rule,
            message,
            self.setting.protocol.id,
            at.step.id if at else None,
            person.id if person else None,
            item,
            others,
            _place(at, field) if at else self.setting.protocol.place,
            own_severity=severity,
        )
        self._found.append((at, finding))

    def report_form(
        self,
        rule: Rule,
        message: str,
        place: Place,
        *,
        step: str | None = None,
        person: str | None = None,
        item: str | None = None,
    ) -> None:
        """A finding about how something is written, or about no step; it comes before all others."""
        if rule.code not in self._without:
            protocol = self.setting.protocol.id
            finding = Finding(rule, message, protocol, step, person, item, place=place)
            self._found.append((None, finding))

    def found_since(self, count: int) -> list[tuple[Moment | None, Finding]]:
        """What was found after the first ``count`` findings, as it was found, each with its moment."""
        return self._found[count:]

    @property
    def found_count(self) -> int:
        """How much was found so far."""
        return len(self._found)

    def copy(self) -> Scene:
        """The scene as it is now, to be walked on without changing this one."""
        new = Scene.__new__(Scene)
        for name, value in vars(self).items():
            setattr(new, name, value if name in _SHARED_BY_COPIES else copy_of(value))
        return new

    def is_alike(self, other: Scene) -> bool:
        """Whether whatever is done next has the same effect and the same findings as in another scene.

        Exposures are a record by which nothing is judged. How full bins are is not compared.
        """
        return all(
            is_alike(value, getattr(other, name))
            for name, value in vars(self).items()
            if name not in _NO_PART_OF_THE_STATE
        )

    def find_also(self, found: Collection[tuple[Moment | None, Finding]]) -> None:
        """Adds what is known to follow from the present state."""
        self._found.extend(found)

    def expose(self, person: Person, site: str, source: str) -> None:
        """A bare part of the body met contamination; this stays on record."""
        step = self.moment.step.id if self.moment else ""
        person.exposures.append(Exposure(step, person.id, site, source))

    def findings(self, order: Mapping[str, int] | None = None) -> tuple[Finding, ...]:
        """What was found, in the order of the steps, which is that of the walk unless ``order`` is given."""

        def position(found: tuple[Moment | None, Finding]) -> int:
            moment = found[0]
            if moment is None:
                return -1
            return moment.index if order is None else order[moment.step.id]

        return tuple(finding for _moment, finding in sorted(self._found, key=position))

    def zone(self, person: Person) -> Zone:
        """The zone in which a person is."""
        return self.setting.ward.zones[person.zone]

    def is_here(self, fixture: str, person: Person) -> bool:
        """Whether a fixture stands in the zone of a person."""
        return self.fixtures[fixture].fixture.zone == person.zone

    def is_bag(self, item: str | None) -> bool:
        """Whether an item of the kit is a waste bag."""
        return item is not None and item in self.setting.garments and self.setting.garments[item].kind == BAG

    def use(self, fixture: str) -> FixtureState:
        """A fixture that this step uses; it goes into the trace."""
        self.used_fixtures.append(fixture)
        return self.fixtures[fixture]

    def name(self, item: str | None) -> str:
        """How a thing is called in a message."""
        return self.setting.name(item)


def _place(moment: Moment, field: str) -> Place:
    """Where the faulty part of a step stands, or the step itself."""
    return moment.action.places.get(field, moment.step.place) if field else moment.step.place


def _fixture_at_start(setting: Setting, fixture: Fixture) -> FixtureState:
    """Dirty seats, and seats and surfaces of a contaminated zone, are contaminated from the start."""
    zone = setting.ward.zones.get(fixture.zone)
    in_contaminated = zone is not None and zone.zone_class is ZoneClass.CONTAMINATED
    is_dirty = fixture.designated == "dirty" or (in_contaminated and fixture.kind in _SEATS_AND_SURFACES)
    return FixtureState(fixture, Level.CONTAMINATED if is_dirty else Level.CLEAN, fixture.charged)


def _thing_at_start(setting: Setting, thing: Thing) -> ThingState:
    """A thing is where it is carried, else where it is to stay; a contaminated zone has reached it there."""
    holder = next((actor for actor in setting.protocol.people if thing.id in actor.carries), None)
    state = ThingState(holder.id, None) if holder is not None else ThingState(None, thing.stays_in)
    starts = (thing.stays_in,) if holder is None else (holder.starts_in, holder.comes_from)
    zones = (setting.ward.zones.get(start or "") for start in starts)
    if any(zone is not None and zone.zone_class is ZoneClass.CONTAMINATED for zone in zones):
        state.soil()
    return state
