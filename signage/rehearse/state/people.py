"""Persons of a rehearsal, what they wear and what is on their hands, as it changes step by step."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, field

from signage.model.choices import PersonRole
from signage.model.garment import Garment
from signage.model.library import Action, Actor, Phase, Step
from signage.rehearse.state.body import HANDS, SKIN
from signage.rehearse.state.level import Level
from signage.rehearse.techniques import Surface


@dataclass(frozen=True, slots=True)
class Moment:
    """One movement of one step, counted from 0 through the protocol."""

    index: int
    phase: Phase
    step: Step
    action: Action


@dataclass(slots=True)
class Worn:
    """A garment on a person. ``put_on`` is None where it was worn from the start.

    ``positions`` are those of its parts, raised or lowered; ``covered``, in the order of the kit, and
    ``sites`` are what it covers in these positions.
    """

    garment: Garment
    put_on: Moment | None
    levels: dict[Surface, Level] = field(default_factory=lambda: dict.fromkeys(Surface, Level.CLEAN))
    open_fasteners: set[str] = field(default_factory=set)
    checks: set[str] = field(default_factory=set)
    moved_after_check: Moment | None = None
    times_cleaned: int = 0
    positions: dict[str, str] = field(default_factory=dict)
    covered: tuple[str, ...] = ()
    sites: frozenset[str] = frozenset()

    def __post_init__(self) -> None:
        """Parts are where they are when it goes on."""
        if self.garment.parts:
            self.positions = {key: part.starts for key, part in self.garment.parts.items()}
        self._cover()

    def put_part(self, part: str, position: str) -> None:
        """A part is raised or lowered."""
        self.positions[part] = position
        self._cover()

    def _cover(self) -> None:
        own = self.garment.covers
        if self.positions:
            parts = self.garment.parts
            more = (site for key, at in self.positions.items() for site in parts[key].covers(at))
            own = (*own, *sorted(set(more).difference(own)))
        self.covered, self.sites = own, frozenset(own)

    def reaches_over(self, inner: str) -> bool:
        """Whether it lies over a garment by more than a part that is out of the way."""
        if not self.positions:
            return True
        through = [key for key, part in self.garment.parts.items() if inner in part.over]
        if not through or inner in self.garment.over:
            return True
        return any(self.garment.parts[key].covers(self.positions[key]) for key in through)

    @property
    def id(self) -> str:
        """The identifier of the garment."""
        return self.garment.id

    @property
    def outside(self) -> Level:
        """The level of the outside, which is what hands and seats meet."""
        return self.levels[Surface.OUTSIDE]

    @property
    def worst(self) -> Level:
        """The highest level of its four surfaces."""
        return max(self.levels.values())

    @property
    def surfaces(self) -> Surfaces:
        """The levels of its four surfaces."""
        return tuple(self.levels[surface] for surface in Surface)

    def join(self, level: Level, surface: Surface = Surface.OUTSIDE) -> None:
        """A surface of this garment meets something of that level."""
        self.levels[surface] = max(self.levels[surface], level)

    def lower(self) -> None:
        """The outside is cleaned while worn: ``reduced`` at best, or still clean if it was clean."""
        self.levels[Surface.OUTSIDE] = min(self.outside, Level.REDUCED)


Surfaces = tuple[Level, ...]
"""The levels of the four parts of a garment, in the order of ``Surface``."""


@dataclass(frozen=True, slots=True)
class Exposure:
    """Contamination met a bare part of the body. Nothing removes it again."""

    step: str
    person: str
    site: str
    source: str


@dataclass(slots=True)
class Held:
    """What was taken off together and is still in the hand.

    ``level`` is that of its outside, ``grip`` that of the surface by which it is held, and ``layer`` the hand
    layer that holds it. ``surfaces`` are the levels of each garment as it came off, ``owner`` is who wore it.
    ``carried_in`` is the moment when it came into a clean zone while contaminated.
    """

    items: tuple[str, ...]
    level: Level
    moment: Moment
    surfaces: tuple[Surfaces, ...] = ()
    owner: str = ""
    grip: Level = Level.CLEAN
    layer: str = SKIN
    was_told: bool = False
    carried_in: Moment | None = None


@dataclass(frozen=True, slots=True)
class LaidDown:
    """A garment as it lies where it was put: in a bin or tub."""

    surfaces: Surfaces
    place: str


@dataclass(frozen=True, slots=True)
class Pending:
    """Hands have removed or handled something and were not cleaned since."""

    item: str
    moment: Moment


@dataclass(frozen=True, slots=True)
class Change:
    """What was done to a garment, such as ``opened``, and when."""

    how: str
    moment: Moment


Check = tuple[str, str]
"""A check by its name and the garment that it is about, which is empty where it is about all kit."""

OBSERVERS_CHECK: Check = ("the observer's check", "")


@dataclass(slots=True)
class Stay:
    """A person in one zone, since ``entered``, which is None where the person starts there.

    ``told`` are garments and parts of the body of which was told that they are amiss, ``bare`` the parts that
    were exposed because they were bare.
    """

    entered: Moment | None = None
    told: set[str] = field(default_factory=set)
    bare: set[str] = field(default_factory=set)


@dataclass(slots=True)
class Record:
    """What happened to a person's kit that later findings refer to.

    ``checked`` are the garments that each check covered, ``undone`` what was changed of them since, ``gone``
    since when something is off or open.
    """

    checked: dict[Check, frozenset[str]] = field(default_factory=dict)
    undone: dict[tuple[Check, str], Change] = field(default_factory=dict)
    gone: dict[str, Change] = field(default_factory=dict)

    def is_checked_by_observer(self, worn: Collection[str]) -> bool:
        """Whether the observer saw all that is worn now, and nothing of it was changed since."""
        seen = self.checked.get(OBSERVERS_CHECK)
        is_undone = any(check == OBSERVERS_CHECK for check, _item in self.undone)
        return seen is not None and seen.issuperset(worn) and not is_undone


@dataclass(slots=True)
class Wet:
    """A hand layer that was rubbed, and how many seconds local policy still wants it to dry."""

    layer: str
    seconds: int


@dataclass(slots=True)
class Person:
    """A person at one moment. ``worn`` keeps the order of putting on.

    ``exposed`` are the garments that a contaminated zone has reached.
    """

    id: str
    role: PersonRole
    zone: str
    start: Actor
    worn: dict[str, Worn] = field(default_factory=dict)
    skin: Level = Level.CLEAN
    soles: Level = Level.CLEAN
    seat: str | None = None
    was_told_of_seat: bool = False
    held: list[Held] = field(default_factory=list)
    exposures: list[Exposure] = field(default_factory=list, compare=False)
    needs_met: set[str] = field(default_factory=set)
    inspected: set[str] = field(default_factory=set)
    whole_kit_inspected: bool = False
    has_cleaned_hands: bool = False
    fresh_from_contaminated: bool = False
    pending: Pending | None = None
    wet: Wet | None = None
    stay: Stay = field(default_factory=Stay)
    record: Record = field(default_factory=Record)
    exposed: frozenset[str] = frozenset()

    def enter(self, zone: str, moment: Moment | None) -> None:
        """The person comes into a zone, where everything may be told anew."""
        if zone != self.zone:
            self.zone, self.stay = zone, Stay(moment)

    def top_glove(self, without: Collection[str] = ()) -> Worn | None:
        """The outermost glove, leaving some out; None where hands are bare. Gloves cover the hands."""
        for worn in reversed(self.worn.values()):
            if HANDS in worn.garment.covers and worn.id not in without:
                return worn
        return None

    def top_layer(self) -> str:
        """The identifier of the outermost hand layer: a garment, or ``skin``."""
        glove = self.top_glove()
        return glove.id if glove else SKIN

    def hand_level(self, without: Collection[str] = ()) -> Level:
        """The level of the outermost hand layer."""
        glove = self.top_glove(without)
        return glove.outside if glove else self.skin

    def join_hand(self, level: Level, without: Collection[str] = ()) -> None:
        """The outermost hand layer meets something of that level."""
        glove = self.top_glove(without)
        if glove is not None:
            glove.join(level)
        else:
            self.skin = max(self.skin, level)

    def is_bare(self, site: str) -> bool:
        """Whether nothing that is worn covers this part of the body."""
        return not any(site in worn.sites for worn in self.worn.values())
