"""The content of a hospital's library: protocols, kit, policy, wards and glossary, as frozen values.

Every value knows its place: ``thing.at("text")`` is where its field ``text`` stands in its file.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from signage.model.choices import ActionVerb, PersonRole, PhaseTheme, RuleKind, StepCondition, ZoneClass
from signage.model.located import Located
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


@dataclass(frozen=True, kw_only=True)
class Garment(Located):
    """An item of kit and the physical facts about it (sites, what it lies over, how it comes off)."""

    id: str
    name: str
    kind: str
    covers: tuple[str, ...] = ()
    over: tuple[str, ...] = ()
    needs_under: tuple[str, ...] = ()
    fasteners: tuple[str, ...] = ()
    open_when_donned: bool = False
    technique: str | None = None
    checks: tuple[str, ...] = ()
    inspect: bool = False
    face: bool = False
    needs_seat: bool = False
    strap_under: bool = False
    barrier: bool = True
    reusable: bool = False
    protects: tuple[str, ...] = ()
    parallel: bool = False
    pictures: Mapping[str, str] = field(default_factory=dict, hash=False)


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
class Verb(Located):
    """An act by the words for it. ``acts`` are what it is said of, such as ``don``, ``rub`` or ``enter``.

    ``approved`` holds forms by locale; ``opposite`` is the id of the verb that turns the act round.
    """

    id: str
    source: str
    acts: tuple[str, ...]
    opposite: str | None = None
    note: str = ""
    approved: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False)


@dataclass(frozen=True, kw_only=True)
class Negation(Located):
    """How one language says no.

    ``markers`` deny, ``softer`` ones ("without", "away from") keep apart, ``idioms`` hold a marker and
    deny nothing. ``either_way`` are words, such as "stay", that another language may well put with a
    negation; ``hinges`` ("until") join clauses, one of which another language may deny.
    """

    markers: tuple[str, ...]
    softer: tuple[str, ...] = ()
    idioms: tuple[str, ...] = ()
    either_way: tuple[str, ...] = ()
    hinges: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Vocabulary:
    """The words of terms.yaml that carry the meaning of a step; all but ``verbs`` by locale.

    ``restriction`` are the words for "only", ``bare_hands`` those that speak of hands or skin.
    """

    verbs: tuple[Verb, ...] = ()
    negation: Mapping[str, Negation] = field(default_factory=dict, hash=False)
    restriction: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False)
    bare_hands: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False)


@dataclass(frozen=True, kw_only=True)
class Zone(Located):
    """A part of the ward. Floor: clean, transition or dirty."""

    id: str
    name: str
    zone_class: ZoneClass
    floor: str
    air: str = "ok"
    requires: tuple[str, ...] = ()
    no_skin: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    observer_check: bool = False

    def __post_init__(self) -> None:
        """Refuse a class that is none: ValueError."""
        object.__setattr__(self, "zone_class", ZoneClass(self.zone_class))


@dataclass(frozen=True, kw_only=True)
class Door(Located):
    """A way from one zone to another, in this direction only."""

    start: str
    end: str


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
    """A ward: zones, doors, fixtures, wall slots, readers by locale and printers."""

    id: str
    name: str
    zones: Mapping[str, Zone] = field(hash=False)
    doors: tuple[Door, ...] = ()
    fixtures: Mapping[str, Fixture] = field(default_factory=dict, hash=False)
    slots: tuple[Slot, ...] = ()
    readers: Mapping[str, int] = field(default_factory=dict, hash=False)
    printers: tuple[Printer, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Actor(Located):
    """Somebody in a protocol, by role only."""

    id: str
    role: PersonRole
    starts_in: str
    wears: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        """Refuse a role that is none: ValueError."""
        object.__setattr__(self, "role", PersonRole(self.role))


@dataclass(frozen=True, kw_only=True)
class Action(Located):
    """One movement. ``verb`` is the value of ``do``; the other fields are those of the step grammar.

    ``fresh``: what is put on comes straight out of a closed pack, so it may be put on over a dirty floor.
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

    def __post_init__(self) -> None:
        """Refuse a verb that is none: ValueError."""
        object.__setattr__(self, "verb", ActionVerb(self.verb))


@dataclass(frozen=True, kw_only=True)
class Step(Located):
    """One step: its words in the source language, its picture and what it does."""

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

    ``layout``: steps or hand-technique. ``rule`` is the sentence of the key box and ``rule_kind`` its word.
    ``notes`` are by zone. ``seconds`` is the time that the partial hand movements of a hand-technique phase
    share.
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

    @property
    def steps(self) -> tuple[Step, ...]:
        """All steps of all phases in order."""
        return tuple(step for phase in self.phases for step in phase.steps)


@dataclass(frozen=True, kw_only=True)
class Library(Located):
    """All content. Mappings keep the order of the files."""

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
