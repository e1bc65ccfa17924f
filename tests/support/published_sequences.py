"""Published orders of putting on and taking off, as lists of short words, each with its source.

Only orders that were read in a page of the named publisher or in a page that credits it are here. The
facts about kit, zones and policy are those that each list takes for granted; they are the tests' own.
"""

from dataclasses import dataclass, field, replace
from datetime import date
from graphlib import TopologicalSorter

from signage.model.garment import Garment
from signage.model.library import (
    Action,
    Actor,
    Door,
    Fixture,
    Library,
    Phase,
    PolicyValue,
    Protocol,
    Step,
    Ward,
    Zone,
)
from signage.rehearse.rehearsal import rehearse

GARMENTS = {
    "scrubs": {"kind": "clothes", "covers": ("trunk", "legs"), "barrier": False},
    "gown": {"kind": "gown", "covers": ("trunk", "arms", "legs"), "over": ("scrubs", "coverall")},
    "coverall": {"kind": "coverall", "covers": ("trunk", "arms", "legs"), "over": ("scrubs", "cap")},
    "apron": {"kind": "apron", "covers": ("trunk",), "over": ("scrubs", "gown", "coverall")},
    "respirator": {"kind": "respirator", "covers": ("mouth-nose",), "face": True},
    "eye-protection": {"kind": "goggles", "covers": ("eyes",), "over": ("respirator",), "face": True},
    "face-shield": {
        "kind": "face-shield",
        "covers": ("eyes",),
        "over": ("respirator", "eye-protection", "hood"),
        "face": True,
    },
    "hood": {"kind": "hood", "covers": ("hair", "neck"), "over": ("respirator", "eye-protection")},
    "cap": {"kind": "cap", "covers": ("hair",)},
    "boots": {"kind": "boots", "covers": ("feet",)},
    "inner-gloves": {"kind": "glove", "covers": ("hands",)},
    "outer-gloves": {
        "kind": "glove",
        "covers": ("hands",),
        "over": ("inner-gloves", "gown", "coverall"),
    },
}
TECHNIQUES = {
    "gown": "peel-inside-out",
    "coverall": "peel-inside-out",
    "apron": "straps-back",
    "respirator": "straps-back",
    "eye-protection": "straps-back",
    "face-shield": "straps-back",
    "hood": "lift-back",
    "cap": "lift-back",
    "boots": "pull-down",
    "inner-gloves": "glove-in-glove",
    "outer-gloves": "glove-in-glove",
}


@dataclass(frozen=True)
class Published:
    """An order with what it takes for granted: ``room`` is fields of the zone, ``kit`` of garments."""

    id: str
    source: str
    order: tuple[str, ...]
    policy: dict = field(default_factory=dict)
    kit: dict = field(default_factory=dict)
    room: dict = field(default_factory=dict)
    has_observer: bool = False
    published: tuple[str, ...] = ()
    """The order before it was changed by a test; empty where it was not."""

    @property
    def items(self):
        """The items of the published list in its order, without hygiene and other steps."""
        order = self.published or self.order
        return tuple(part for word in order for part in word.split("+") if part in GARMENTS)

    def without(self, index):
        return self._with(self.order[:index] + self.order[index + 1 :])

    def exchanged(self, one, other):
        """The list with two of its words in each other's place."""
        order = list(self.order)
        first, second = order.index(one), order.index(other)
        order[first], order[second] = order[second], order[first]
        return self._with(tuple(order))

    def _with(self, order):
        return replace(self, order=order, published=self.published or self.order)

    @property
    def initially_worn(self):
        """Everything that the list takes off, from the inside outwards."""
        over = {key: {**GARMENTS[key], **self.kit.get(key, {})}.get("over", ()) for key in GARMENTS}
        inside_out = TopologicalSorter({key: sorted(over[key]) for key in GARMENTS}).static_order()
        return tuple(key for key in inside_out if key == "scrubs" or key in self.items)


POLICY = {
    "hygiene-each": False,
    "respirator-last": True,
    "soil-needs-wash": True,
    "chlorine-on-skin": False,
    "observer-for-removal": False,
    "min-rub": 20,
    "min-wash": 40,
    "glove-hygiene-limit": 8,
    "agents-on-glove": ("rub",),
    "agents-on-skin": ("rub", "wash"),
}
ROOM = {"zone_class": "contaminated", "floor": "clean"}
OUTSIDE = {"zone_class": "transition", "floor": "clean"}


def library_of(published, protocol):
    garments = {}
    for key, usual in GARMENTS.items():
        facts = {"technique": TECHNIQUES.get(key), **usual, **published.kit.get(key, {})}
        garments[key] = Garment(id=key, name=key, **facts)
    policy = {**POLICY, **published.policy}
    zones = {
        "room": {**ROOM, **published.room},
        "outside": OUTSIDE,
        "window": {**OUTSIDE, "zone_class": "clean", "sees": ("room", "outside")},
    }
    ward = Ward(
        id="ward",
        name="ward",
        zones={key: Zone(id=key, name=key, **facts) for key, facts in zones.items()},
        doors=(Door(start="room", end="outside"), Door(start="outside", end="room")),
        fixtures={f.id: f for zone in ("room", "outside") for f in _fixtures(zone)},
    )
    return Library(
        name="published",
        source_locale="en",
        locales={},
        training_address="",
        papers=(),
        garments=garments,
        policy={key: PolicyValue(id=key, value=v, source="list", owner="test") for key, v in policy.items()},
        terms=(),
        wards={"ward": ward},
        protocols={"published": protocol},
    )


def _fixtures(zone):
    yield Fixture(id=f"rub-{zone}", kind="dispenser", zone=zone, agent="rub")
    yield Fixture(id=f"chlorine-{zone}", kind="sink", zone=zone, agent="chlorine")
    yield Fixture(id=f"bin-{zone}", kind="bin", zone=zone, accepts=tuple(GARMENTS), opening="pedal")


def put_on(published):
    """Findings of putting on in this order outside, and going in with everything that the list names."""
    wanted = tuple(dict.fromkeys(published.items))
    whole = replace(published, room={"requires": wanted, **published.room})
    return _found(whole, _steps(published, "don", "outside"), "outside", (), "room")


def take_off(published):
    """Findings of taking off in this order, with everything that the list names worn in the room."""
    end = "outside" if "leave" in published.order or "start-outside" in published.order else "room"
    return _found(published, _steps(published, "doff", "room"), "room", published.initially_worn, end)


def _found(published, steps, start, worn, end):
    origin = "room" if worn else "window"
    people = [Actor(id="wearer", role="wearer", starts_in=start, wears=worn, comes_from=origin)]
    if published.has_observer:
        people.append(Actor(id="observer", role="observer", starts_in="window"))
    theme = "doff" if worn else "don"
    protocol = Protocol(
        id="published",
        code="P1",
        title=published.id,
        revision=1,
        owner="test",
        review_by=date(2030, 1, 1),
        ward="ward",
        people=tuple(people),
        ends_in=end,
        phases=(Phase(id="phase", title="phase", theme=theme, steps=tuple(steps)),),
    )
    findings = rehearse(library_of(published, protocol), protocol).findings
    return {(finding.code, finding.step.rsplit("/")[0] if finding.step else None) for finding in findings}


def _steps(published, verb, zone):
    """A step for each word; its identifier is the word, made unique by its position."""
    for position, word in enumerate(published.order):
        actions = _actions(word, verb, zone)
        if word in ("leave", "start-outside"):
            zone = "outside"
        yield Step(id=f"{word}/{position}", text=word, picture=word, actions=actions)
    if verb == "don" and "enter" not in published.order:
        yield Step(id="enter", text="enter", picture="enter", actions=(Action(verb="move", to="room"),))


_RUB = Action(verb="hygiene", agent="rub", seconds=20)
_ACTION_OF = {
    "hygiene": _RUB,
    "glove-hygiene": _RUB,
    "chlorine": Action(verb="hygiene", agent="chlorine", seconds=60),
    "seal-check": Action(verb="check", item="respirator", check="seal"),
    "inspect": Action(verb="inspect"),
    "remove-jewellery": Action(verb="need", need="remove-jewellery"),
    "tuck": Action(verb="adjust", item="coverall"),
    "leave": Action(verb="move", to="outside"),
    "start-outside": Action(verb="move", to="outside"),
    "enter": Action(verb="move", to="room"),
    "observer": Action(verb="say", by="observer"),
}


def _actions(word, verb, zone):
    if word in _ACTION_OF:
        return (_ACTION_OF[word],)
    if word.startswith("new-"):
        return (Action(verb="don", item=word.removeprefix("new-"), fresh=True),)
    if word.startswith("change-"):
        item = word.removeprefix("change-")
        return (
            Action(verb="doff", item=item, bin=f"bin-{zone}"),
            Action(verb="don", item=item, fresh=True),
        )
    item, _plus, partner = word.partition("+")
    if verb == "don":
        return (Action(verb="don", item=item),)
    return (Action(verb="doff", item=item, together=partner or None, bin=f"bin-{zone}"),)


def words(line):
    return tuple(line.split())


PUTTING_ON = (
    Published(
        "standard order of four",
        "Centers for Disease Control and Prevention (CDC), standard sequence, read in a page that quotes it",
        words("gown respirator eye-protection outer-gloves"),
    ),
    Published(
        "CDC 2020, hygiene once",
        "CDC recommendations 2020, as a table of the Journal of Nuclear Medicine Technology quotes them",
        words("hygiene gown respirator eye-protection outer-gloves enter"),
    ),
    Published(
        "CDC 2020, hygiene again before gloves",
        "CDC recommendations 2020, as a dental association's notice of 2020-05-19 quotes them",
        words("hygiene gown respirator seal-check eye-protection hygiene outer-gloves"),
        kit={"respirator": {"checks": ("seal",)}},
    ),
    Published(
        "CDC for viral haemorrhagic fevers, pages 06, 09 and 10",
        "CDC, guidance pages for respirator and coverall: boot covers, respirator, hood (part of the list)",
        words("boots hygiene inner-gloves respirator hood"),
    ),
    Published(
        "graphic of 2014",
        "Washington Post graphic of 2014, credited to the CDC; suit as used by Médecins Sans Frontières",
        words("hygiene coverall respirator eye-protection cap boots apron inner-gloves outer-gloves"),
        kit={"coverall": {"over": ("scrubs",)}},
    ),
    Published(
        "United Kingdom, viral haemorrhagic fevers",
        "Slides of a hospital's infection prevention team in the United Kingdom",
        words(
            "remove-jewellery scrubs boots coverall tuck inner-gloves respirator eye-protection "
            "hood gown outer-gloves face-shield"
        ),
        room={"needs": ("remove-jewellery",)},
    ),
    Published(
        "Italy 2020",
        "European Respiratory Review 2020, table of dressing and undressing",
        words("remove-jewellery hygiene inspect inner-gloves gown respirator eye-protection outer-gloves"),
        kit={"inner-gloves": {"inspect": True}, "gown": {"inspect": True}},
        room={"needs": ("remove-jewellery",)},
    ),
)

TAKING_OFF = (
    Published(
        "CDC example 1",
        "CDC instructions of 2014, as HuffPost Canada quoted them on 2014-10-13",
        words("outer-gloves eye-protection gown respirator hygiene"),
    ),
    Published(
        "CDC 2020",
        "CDC recommendations 2020, as a table of the Journal of Nuclear Medicine Technology quotes them",
        words("outer-gloves gown leave hygiene eye-protection respirator hygiene"),
        room={"air": "hazardous"},
    ),
    Published(
        "CDC for viral haemorrhagic fevers, change of inner gloves",
        "CDC guidance pages for ensembles with gown: observer, gown, change of inner gloves (a part)",
        words("observer gown glove-hygiene inner-gloves hygiene new-inner-gloves"),
        policy={"hygiene-each": True, "observer-for-removal": True},
        has_observer=True,
    ),
    Published(
        "graphic of 2014",
        "Washington Post graphic of 2014, credited to the CDC; suit as used by Médecins Sans Frontières",
        words(
            "start-outside chlorine outer-gloves hygiene apron hygiene coverall hygiene boots "
            "hygiene cap hygiene inner-gloves hygiene eye-protection hygiene respirator hygiene"
        ),
        policy={"hygiene-each": True, "agents-on-glove": ("rub", "chlorine")},
        kit={"coverall": {"over": ("scrubs",)}},
    ),
    Published(
        "Italy 2020",
        "European Respiratory Review 2020, table of dressing and undressing",
        words("gown outer-gloves eye-protection respirator inner-gloves hygiene"),
        kit={"outer-gloves": {"over": ("inner-gloves",)}},
    ),
    Published(
        "China 2020",
        "Practice of a hospital in China in 2020, with a gown over the coverall and without a powered unit",
        words(
            "start-outside hygiene change-outer-gloves hygiene gown+outer-gloves hygiene "
            "new-outer-gloves coverall+outer-gloves hygiene eye-protection hygiene respirator "
            "hygiene cap hygiene inner-gloves hygiene"
        ),
        policy={"hygiene-each": True},
        kit={"coverall": {"covers": words("hair neck trunk arms legs"), "over": ("scrubs", "cap")}},
    ),
)


def on(name):
    return next(published for published in PUTTING_ON if published.id == name)


def off(name):
    return next(published for published in TAKING_OFF if published.id == name)
