"""What nobody would argue about: exposures stay, strict policy finds more, names of zones mean nothing."""

from collections import Counter
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from rehearsal_edits import demo_library, layered_protection, new_step
from rehearsal_mutations import WARD, mutated_protocols

from signage.model.choices import PersonRole, ZoneClass
from signage.model.library import Actor
from signage.rehearse import local_policy
from signage.rehearse.rehearsal import find, rehearse
from signage.rehearse.state.setting import prepare, schedule_of

MANY = settings(max_examples=80)
STEPS = layered_protection().steps


def with_step_at(protocol, position, step):
    """The protocol with a further step before the one at a position, in that one's phase."""
    schedule = list(schedule_of(protocol))
    phase = schedule[min(position, len(schedule) - 1)][0]
    schedule.insert(position, (phase, step))
    phases = tuple(replace(p, steps=tuple(s for owner, s in schedule if owner is p)) for p in protocol.phases)
    return replace(protocol, phases=phases)


@MANY
@given(st.data(), mutated_protocols(), st.sampled_from(STEPS))
def test_no_step_after_an_exposure_removes_it(data, protocol, further):
    setting = prepare(demo_library(), protocol)
    schedule = schedule_of(protocol)
    before = find(setting, schedule)
    happened = [name for name, _count in Counter(each.step for each in before.exposures).items()]
    if not happened:
        return
    names = [step.id for _phase, step in schedule]
    last = max(names.index(name) for name in happened if name in names)
    position = data.draw(st.integers(last + 1, len(names)))
    phase = schedule[last][0]
    order = (*schedule[:position], (phase, replace(further, id="further")), *schedule[position:])
    assert {(each.person, each.site, each.source, each.step) for each in before.exposures} <= {
        (each.person, each.site, each.source, each.step) for each in find(setting, order).exposures
    }


STRICTER = {
    local_policy.RESPIRATOR_LAST: (False, True),
    local_policy.SOIL_NEEDS_WASH: (False, True),
    local_policy.CHLORINE_ON_SKIN: (True, False),
    local_policy.OBSERVER_FOR_REMOVAL: (False, True),
    local_policy.NEEDS_BEFORE_KIT: (False, True),
    local_policy.HYGIENE_EACH: (False, True),
    local_policy.MINIMUM_RUB: (10, 40),
    local_policy.MINIMUM_WASH: (20, 90),
    local_policy.GLOVE_HYGIENE_LIMIT: (9, 1),
    local_policy.DRYING_SECONDS: (0, 30),
    local_policy.AGENTS_ON_GLOVE: (("rub", "wash"), ("rub",)),
    local_policy.AGENTS_ON_SKIN: (("rub", "wash"), ("wash",)),
    local_policy.MINIMUM_WIPE: (10, 90),
    local_policy.AGENTS_ON_KIT: (("wipe", "chlorine"), ("wipe",)),
}
"""Each decision of policy.yaml as a mild and as a strict hospital may take it."""


@MANY
@given(mutated_protocols(), st.sampled_from(sorted(STRICTER)))
def test_a_stricter_policy_never_finds_less(protocol, key):
    mild, strict = (
        find(prepare(library_with(key, value), protocol), schedule_of(protocol)) for value in STRICTER[key]
    )
    assert len(strict.findings) + len(strict.withheld) >= len(mild.findings) + len(mild.withheld)


def test_every_decision_that_rules_read_can_be_stricter():
    assert set(STRICTER) == set(local_policy.STRICTEST)


def library_with(key, value):
    library = demo_library()
    decision = replace(next(iter(library.policy.values())), id=key, value=value)
    return replace(library, policy={**library.policy, key: decision})


@MANY
@given(mutated_protocols(), st.permutations(sorted(WARD.zones)))
def test_other_identifiers_of_zones_change_nothing(protocol, order):
    names = {zone: f"zone-{order.index(zone)}" for zone in WARD.zones}
    ours = rehearse(demo_library(), protocol)
    theirs = rehearse(with_zones_called(names), called_otherwise(protocol, names))
    assert Counter(map(told, theirs.findings)) == Counter(map(told, ours.findings))
    assert [len(state.people) for state in theirs.trace] == [len(state.people) for state in ours.trace]


def told(finding):
    """A finding without the identifier of a zone, which may be what it is about."""
    item = None if finding.item in WARD.zones or (finding.item or "").startswith("zone-") else finding.item
    return finding.code, finding.severity, finding.step, finding.person, item


def with_zones_called(names):
    library = demo_library()
    zones = {
        names[key]: replace(zone, id=names[key], sees=tuple(names[each] for each in zone.sees))
        for key, zone in WARD.zones.items()
    }
    ward = replace(
        WARD,
        zones=zones,
        doors=tuple(replace(d, start=names[d.start], end=names[d.end]) for d in WARD.doors),
        fixtures={key: replace(each, zone=names[each.zone]) for key, each in WARD.fixtures.items()},
    )
    return replace(library, wards={**library.wards, ward.id: ward})


def called_otherwise(protocol, names):
    def step(each):
        actions = (replace(action, to=names.get(action.to, action.to)) for action in each.actions)
        return replace(each, actions=tuple(actions))

    def zone(name):
        return names.get(name, name)

    return replace(
        protocol,
        ends_in=zone(protocol.ends_in),
        people=tuple(
            replace(a, starts_in=zone(a.starts_in), comes_from=zone(a.comes_from)) for a in protocol.people
        ),
        things={key: replace(thing, stays_in=zone(thing.stays_in)) for key, thing in protocol.things.items()},
        phases=tuple(replace(p, steps=tuple(map(step, p.steps))) for p in protocol.phases),
    )


HANDS_FREE = {f.zone for f in WARD.fixtures.values() if f.kind == "dispenser" and f.opening == "sensor"}


@MANY
@given(mutated_protocols(), st.integers(0, 60), st.integers(0, 60))
def test_hygiene_at_a_dispenser_by_sensor_makes_no_hand_dirtier(protocol, at, seconds):
    rub = new_step("further-rub", "hygiene", agent="rub", seconds=seconds)
    edited = with_step_at(protocol, min(at, len(protocol.steps)), rub)
    trace = rehearse(demo_library(), edited).trace
    place = next(index for index, state in enumerate(trace) if state.step == "further-rub")
    if not place or trace[place].of("wearer").zone not in HANDS_FREE:
        return
    before, after = (dict(trace[index].of("wearer").hands) for index in (place - 1, place))
    assert all(after[layer] <= level for layer, level in before.items())


@MANY
@given(
    mutated_protocols(),
    st.sampled_from([key for key, zone in WARD.zones.items() if zone.zone_class is ZoneClass.CLEAN]),
)
def test_whoever_does_nothing_in_a_clean_zone_and_wears_no_kit_has_no_finding(protocol, zone):
    idle = Actor(id="visitor", role=PersonRole.ASSISTANT, starts_in=zone, wears=("scrubs", "shoes"))
    found = rehearse(demo_library(), replace(protocol, people=(*protocol.people, idle)))
    assert [
        each for each in (*found.findings, *found.withheld) if "visitor" in (each.person, each.item)
    ] == []
