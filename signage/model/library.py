"""The content of a hospital's library: protocols, kit, policy, wards and glossary, as frozen values.

Every value knows its place: ``thing.at("text")`` is where its field ``text`` stands in its file.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from signage.model.choices import ActionVerb, PersonRole, PhaseTheme, RuleKind, StepCondition, ZoneClass
from signage.model.garment import Garment
from signage.model.located import LATER, Located
from signage.model.people import Role
from signage.model.vocabulary import Vocabulary
from signage.model.waiver import Waiver


class LocaleState(StrEnum):
    """``in-use``: a gap is a fault. ``in-work``: a gap is progress; proofs only."""

    IN_USE = "in-use"
    IN_WORK = "in-work"


@dataclass(frozen=True, kw_only=True)
class Locale(Located):
    """A language of the library. ``numerals`` is a CLDR numbering system or None for the locale's own.

    ``protocols`` are the ids of those that an ``in-use`` language is in use for; it is in work for all
    others. Empty means all.
    """

    tag: str
    owner: str
    state: LocaleState
    numerals: str | None = None
    register: str | None = None
    protocols: tuple[str, ...] = ()

    def is_in_use_for(self, protocol: str) -> bool:
        """Whether sheets of the protocol with this id are printed in this language."""
        return self.state is LocaleState.IN_USE and (not self.protocols or protocol in self.protocols)


PolicyScalar = bool | int | float | str


@dataclass(frozen=True, kw_only=True)
class PolicyValue(Located):
    """A local decision, with the source it rests on and the role that owns it."""

    id: str
    value: PolicyScalar | tuple[str, ...]
    source: str
    owner: str


@dataclass(frozen=True, kw_only=True)
class Term(Located):
    """A glossary entry; ``approved`` and ``forbidden`` hold surface forms by locale."""

    id: str
    source: str
    note: str = ""
    approved: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False)
    forbidden: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False)


@dataclass(frozen=True, kw_only=True)
class Zone(Located):
    """A part of the ward. Floor: clean, transition or dirty. ``sees``: zones that are seen from it."""

    id: str
    name: str
    zone_class: ZoneClass
    floor: str
    air: str = "ok"
    requires: tuple[str, ...] = ()
    no_skin: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    observer_check: bool = False
    sees: tuple[str, ...] = field(default=(), metadata=LATER)

    def __post_init__(self) -> None:
        """Refuse a class that is none: ValueError."""
        object.__setattr__(self, "zone_class", ZoneClass(self.zone_class))


@dataclass(frozen=True, kw_only=True)
class Door(Located):
    """A way from one zone to another, in this direction only. A ``window`` lets both sides see."""

    start: str
    end: str
    window: bool = field(default=False, metadata=LATER)
    opening: str | None = field(default=None, metadata=LATER)


@dataclass(frozen=True, kw_only=True)
class Fixture(Located):
    """A thing in a zone. ``code`` is the letter on its label, data and never translated.

    ``name`` is what readers call it; sheets print it where there is no code.
    """

    id: str
    kind: str
    zone: str
    code: str | None = None
    name: str | None = None
    designated: str | None = None
    accepts: tuple[str, ...] = ()
    capacity: int | None = None
    opening: str | None = None
    contact_seconds: int | None = None
    charged: bool = True
    agent: str | None = None


@dataclass(frozen=True, kw_only=True)
class Slot(Located):
    """A piece of wall for sheets. Lengths in millimetres, light in lux."""

    id: str
    zone: str
    width: float
    height: float
    reading_distance: float
    light: float
    centre_height: float
    sheets: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Printer(Located):
    """A printer the ward can use. Margins in millimetres."""

    id: str
    papers: tuple[str, ...]
    margin: float
    colour: bool
    duplex: bool


@dataclass(frozen=True, kw_only=True)
class Ward(Located):
    """A ward: zones, doors, fixtures, wall slots, readers by locale and printers.

    ``models`` are garments with the model that this ward has, where that is not the one of the kit.
    """

    id: str
    name: str
    zones: Mapping[str, Zone] = field(hash=False)
    doors: tuple[Door, ...] = ()
    fixtures: Mapping[str, Fixture] = field(default_factory=dict, hash=False)
    slots: tuple[Slot, ...] = ()
    readers: Mapping[str, int] = field(default_factory=dict, hash=False)
    printers: tuple[Printer, ...] = ()
    models: Mapping[str, str] = field(default_factory=dict, hash=False, metadata=LATER)


@dataclass(frozen=True, kw_only=True)
class Actor(Located):
    """Somebody in a protocol, by role only.

    ``comes_from`` is the zone whose marks kit, soles and hands carry at the start; ``carries`` are things.
    """

    id: str
    role: PersonRole
    starts_in: str
    wears: tuple[str, ...] = ()
    comes_from: str | None = field(default=None, metadata=LATER)
    carries: tuple[str, ...] = field(default=(), metadata=LATER)

    def __post_init__(self) -> None:
        """Refuse a role that is none: ValueError."""
        object.__setattr__(self, "role", PersonRole(self.role))


@dataclass(frozen=True, kw_only=True)
class Action(Located):
    """One movement. ``verb`` is the value of ``do``; the other fields are those of the step grammar.

    ``fresh``: what is put on comes straight out of a closed pack, so it may be put on over a dirty floor.
    ``any_of`` are fixtures of which any one will do. ``technique_of`` is ``protocol/phase`` of the hand
    technique that the movement follows. ``mouth``: the need is met through the mouth.
    """

    verb: ActionVerb
    by: str = "wearer"
    on: str | None = None
    item: str | None = None
    technique: str | None = None
    together: str | None = None
    bin: str | None = None
    layer: str | None = None
    agent: str | None = None
    seconds: int | None = None
    part: str | None = None
    check: str | None = None
    to: str | None = None
    chair: str | None = None
    need: str | None = None
    fixture: str | None = None
    amount: str | None = None
    target: str | None = None
    fresh: bool = False
    thing: str | None = field(default=None, metadata=LATER)
    any_of: tuple[str, ...] = field(default=(), metadata=LATER)
    technique_of: str | None = field(default=None, metadata=LATER)
    mouth: bool = field(default=False, metadata=LATER)

    def __post_init__(self) -> None:
        """Refuse a verb that is none: ValueError."""
        object.__setattr__(self, "verb", ActionVerb(self.verb))


@dataclass(frozen=True, kw_only=True)
class Step(Located):
    """One step: its words in the source language, its picture and what it does.

    ``posture`` and ``pace`` are texts that sheets print behind the detail. ``again`` is the step of the same
    protocol whose texts, picture and movements this one repeats.
    """

    id: str
    text: str
    picture: str
    actions: tuple[Action, ...]
    detail: str | None = None
    why: str | None = None
    caution: str | None = None
    when: StepCondition = StepCondition.ALWAYS
    critical: bool = False
    negation: bool = False
    rationale: str | None = None
    posture: str | None = field(default=None, metadata=LATER)
    pace: str | None = field(default=None, metadata=LATER)
    again: str | None = field(default=None, metadata=LATER)

    @property
    def told_as(self) -> str:
        """The step whose texts it shows: the one that it repeats, else itself."""
        return self.again or self.id

    def __post_init__(self) -> None:
        """Refuse a condition that is none: ValueError."""
        object.__setattr__(self, "when", StepCondition(self.when))

    @property
    def action(self) -> Action:
        """The first movement, which gives the step its kind."""
        return self.actions[0]


@dataclass(frozen=True, kw_only=True)
class Phase(Located):
    """A part of a protocol that is printed as one poster.

    ``layout``: steps or hand-technique. ``rule`` is the sentence of the key box and ``rule_kind`` its word;
    ``rules`` are further sentences that hold for the whole phase. ``notes`` are by zone. ``seconds`` is the
    time that the partial hand movements of a hand-technique phase share.
    """

    id: str
    title: str
    theme: PhaseTheme
    steps: tuple[Step, ...]
    layout: str = "steps"
    seconds: int | None = None
    rule: str | None = None
    rule_kind: RuleKind = RuleKind.CAUTION
    notes: Mapping[str, str] = field(default_factory=dict, hash=False)
    rules: tuple[str, ...] = field(default=(), metadata=LATER)

    def __post_init__(self) -> None:
        """Refuse a theme or a kind of rule that is none: ValueError."""
        object.__setattr__(self, "theme", PhaseTheme(self.theme))
        object.__setattr__(self, "rule_kind", RuleKind(self.rule_kind))


@dataclass(frozen=True, kw_only=True)
class Source(Located):
    """A publication that a protocol rests on."""

    title: str
    publisher: str
    year: int


@dataclass(frozen=True, kw_only=True)
class Thing(Located):
    """Something that people carry and never wear, such as a phone.

    ``surface``: ``hard`` or ``soft``. ``stays_in`` is the zone that it does not leave; None where it may go
    with whoever carries it.
    """

    id: str
    surface: str
    stays_in: str | None = None


@dataclass(frozen=True, kw_only=True)
class Hazard(Located):
    """Something unforeseen, and what then holds: a ``branch``, or a document of ``local_policy``.

    ``branch`` is a protocol, ``protocol/phase``, or a phase of the same protocol. ``local_policy`` is the
    line that readers see, such as ``Fire alarm: fire plan``.
    """

    id: str
    branch: str | None = None
    local_policy: str | None = None


@dataclass(frozen=True, kw_only=True)
class Protocol(Located):
    """A protocol: phases of steps, its people, its ward and its duties (owner, review)."""

    id: str
    code: str
    title: str
    revision: int
    owner: str
    review_by: date
    ward: str
    people: tuple[Actor, ...]
    ends_in: str
    phases: tuple[Phase, ...]
    sources: tuple[Source, ...] = ()
    things: Mapping[str, Thing] = field(default_factory=dict, hash=False, metadata=LATER)
    hazards: Mapping[str, Hazard] = field(default_factory=dict, hash=False, metadata=LATER)

    @property
    def steps(self) -> tuple[Step, ...]:
        """All steps of all phases in order."""
        return tuple(step for phase in self.phases for step in phase.steps)

    @property
    def pointers(self) -> tuple[Hazard, ...]:
        """The hazards for which a local document says what to do; each is told to readers."""
        return tuple(hazard for hazard in self.hazards.values() if hazard.local_policy)


@dataclass(frozen=True, kw_only=True)
class Library(Located):
    """All content. Mappings keep the order of the files.

    ``is_demo``: everything is invented, and nothing that is signed is for clinical use.
    """

    name: str
    source_locale: str
    locales: Mapping[str, Locale] = field(hash=False)
    training_address: str
    papers: tuple[str, ...]
    garments: Mapping[str, Garment] = field(hash=False)
    policy: Mapping[str, PolicyValue] = field(hash=False)
    terms: tuple[Term, ...]
    wards: Mapping[str, Ward] = field(hash=False)
    protocols: Mapping[str, Protocol] = field(hash=False)
    scene_files: tuple[str, ...] = ()
    waivers: tuple[Waiver, ...] = ()
    vocabulary: Vocabulary = field(default_factory=Vocabulary)
    people: Mapping[str, Role] = field(default_factory=dict, hash=False, metadata=LATER)
    is_demo: bool = field(default=False, metadata=LATER)
