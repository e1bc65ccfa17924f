"""What holds for every rehearsal, whatever the steps."""

import random
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from rehearsal_edits import demo_library, layered_protection, step_of
from rehearsal_mutations import WARD, mutated_protocols

from signage.ground.problem import Severity
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.rules.table import RULES
from signage.rehearse.variations.alternatives import free_swaps, judge_order

MANY = settings(max_examples=60)
KIT = demo_library().garments
PUT_ON = ("inner-gloves", "coverall", "boot-covers", "respirator", "goggles", "hood", "apron", "outer-gloves")
INNER_GLOVES_NEEDED = {"apron", "boot-covers", "coverall"}
"""What must come off before the inner gloves, lest bare hands or skin meet an outside."""


def in_layer_order(draw, items, must_precede):
    """A random order in which every item comes after all that ``must_precede`` says."""
    left, order = list(items), []
    while left:
        free = [item for item in left if not any(other in left for other in must_precede(item))]
        order.append(draw(st.sampled_from(free)))
        left.remove(order[-1])
    return order


@st.composite
def respectful_orders(draw):
    """The demo protocol in another order that keeps to layers, hygiene after each removal, zones and bins."""
    protocol = layered_protection()

    def step(name):
        return step_of(protocol, name)

    companions = {"coverall": ["zip-close"], "respirator": ["seal-check"]}
    on = in_layer_order(draw, PUT_ON, lambda item: KIT[item].over)
    don_steps = [step(s.id) for s in protocol.phases[0].steps[:5]]
    for item in on:
        don_steps += [step(f"{item}-on"), *(step(name) for name in companions.get(item, ()))]
    don_steps += [step("observer-check"), step("enter-room")]

    def outer_first(item):
        over = {other for other in PUT_ON if item in KIT[other].over}
        return over | (INNER_GLOVES_NEEDED if item == "inner-gloves" else set())

    off = in_layer_order(draw, [item for item in PUT_ON if item != "respirator"], outer_first)
    gloves = [glove for glove in off if glove in ("outer-gloves", "inner-gloves")]
    doff_steps = [step("to-dirty-side"), step("rub-outer-first")]
    for position, item in enumerate(off):
        layer = next((glove for glove in gloves if off.index(glove) > position), "skin")
        before_layer = next((glove for glove in gloves if off.index(glove) >= position), "skin")
        if item == "coverall":
            doff_steps += [step("zip-open"), _rub(step("rub-after-zip"), before_layer, position)]
        doff_steps += [step("sit-dirty-chair")] if item == "boot-covers" else []
        doff_steps += [step(f"{item}-off"), _rub(step("rub-after-apron"), layer, position)]
        doff_steps += [step("stand-up")] if item == "boot-covers" else []
    doff_steps += protocol.phases[1].steps[-5:]
    don, doff = protocol.phases
    return replace(
        protocol, phases=(replace(don, steps=tuple(don_steps)), replace(doff, steps=tuple(doff_steps)))
    )


def _rub(step, layer, position):
    return replace(step, id=f"{step.id}-{position}", actions=(replace(step.action, layer=layer),))


@MANY
@given(respectful_orders())
def test_orders_that_keep_to_layers_hygiene_zones_and_bins_have_no_grave_finding(protocol):
    findings = rehearse(demo_library(), protocol).findings
    assert [finding for finding in findings if finding.severity is Severity.S1] == []


@MANY
@given(mutated_protocols())
def test_an_exposure_never_disappears(protocol):
    before = {}
    for state in rehearse(demo_library(), without_conditions(protocol)).trace:
        for person in state.people:
            known = before.get(person.person, ())
            assert person.exposures[: len(known)] == known
            before[person.person] = person.exposures


def without_conditions(protocol):
    phases = tuple(
        replace(phase, steps=tuple(replace(step, when="always") for step in phase.steps))
        for phase in protocol.phases
    )
    return replace(protocol, phases=phases)


@MANY
@given(mutated_protocols(), st.integers(0, 2**32))
def test_the_order_of_kit_ward_and_policy_in_their_files_changes_nothing(protocol, shuffle):
    def shuffled(mapping):
        items = list(mapping.items())
        random.Random(shuffle).shuffle(items)
        return dict(items)

    library = demo_library()
    ward = replace(WARD, zones=shuffled(WARD.zones), fixtures=shuffled(WARD.fixtures), doors=WARD.doors[::-1])
    other = replace(
        library, garments=shuffled(library.garments), policy=shuffled(library.policy), wards={ward.id: ward}
    )
    assert rehearse(other, protocol).findings == rehearse(library, protocol).findings


@MANY
@given(mutated_protocols(), st.sampled_from([rule.code for rule in RULES if rule.code != "ST-2"]))
def test_a_rule_switched_off_changes_no_other_finding(protocol, code):
    everything = rehearse(demo_library(), protocol).findings
    rest = rehearse(demo_library(), protocol, without={code}).findings
    assert list(rest) == [finding for finding in everything if finding.code != code]


@settings(max_examples=8)
@given(st.data())
def test_free_swaps_far_apart_may_be_done_together(data):
    """Two pairs that share no step: exchanging both is accepted as exchanging each is."""
    pairs = free_swaps(demo_library(), layered_protection())
    first, second = data.draw(st.lists(st.sampled_from(pairs), min_size=2, max_size=2, unique=True))
    if set(first) & set(second):
        return
    order = [step.id for step in layered_protection().steps]
    for one, other in (first, second):
        at = order.index(one)
        order[at : at + 2] = [other, one]
    assert judge_order(demo_library(), layered_protection(), order).is_accepted
